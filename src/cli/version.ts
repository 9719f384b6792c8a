/**
 * The version of the package this file is part of, from its own package.json.
 *
 * The manifest is looked for upwards from this file, so that it is found from the sources and from the built package.
 *
 * @packageDocumentation
 */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** `rakewright` and its version, e.g. `rakewright 1.2.3`. */
export function generator(): string {
  return `rakewright ${version()}`;
}

/** Version of the package; `unknown` when its manifest is not beside it. */
export function version(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const path = join(folder, "package.json");
    if (existsSync(path)) {
      const manifest = JSON.parse(readFileSync(path, "utf8")) as { name?: string; version?: string };
      if (manifest.name === "rakewright") return manifest.version ?? "unknown";
    }
    const parent = dirname(folder);
    if (parent === folder) return "unknown";
    folder = parent;
  }
}
