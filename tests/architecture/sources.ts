/**
 * Reads the source tree as a graph of modules, for the tests of this folder.
 *
 * Import statements are found by the TypeScript compiler's own scanner (`preProcessFile`), so `import type`,
 * `export … from` and dynamic `import()` all count. Paths are relative to `src` with forward slashes.
 */
import { readdirSync, readFileSync } from "node:fs";
import { posix } from "node:path";
import ts from "typescript";

/** One source file with the modules it asks for. */
export interface SourceModule {
  /** Path below `src`, e.g. `kernel/vec.ts`. */
  readonly path: string;
  readonly text: string;
  /** Paths below `src` of the sibling modules it imports; a path that leaves `src` starts with `../`. */
  readonly local: readonly string[];
  /** Bare specifiers: packages and `node:` modules. */
  readonly bare: readonly string[];
}

const SRC = new URL("../../src/", import.meta.url);

/** Parses one module; exported so that the checks can be tried on small made-up trees. */
export function parseModule(path: string, text: string): SourceModule {
  const names = ts.preProcessFile(text, true, true).importedFiles.map((file) => file.fileName);
  const local = names
    .filter((name) => name.startsWith("."))
    .map((name) => posix.join(posix.dirname(path), name).replace(/\.js$/, ".ts"));
  return { path, text, local, bare: names.filter((name) => !name.startsWith(".")) };
}

/** Every `.ts` file below `src`, sorted by path; ambient declaration files included. */
export function readSources(): SourceModule[] {
  return readdirSync(SRC, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => path.endsWith(".ts"))
    .sort()
    .map((path) => parseModule(path, readFileSync(new URL(path, SRC), "utf8")));
}

/** The room a file belongs to: its first folder, or `root` for `src/index.ts`. */
export function roomOf(path: string): string {
  const slash = path.indexOf("/");
  return slash < 0 ? "root" : path.slice(0, slash);
}
