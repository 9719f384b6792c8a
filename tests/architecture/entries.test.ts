/**
 * The entries that package.json promises, the ones tsup builds and the sources behind them are the same list, and each
 * has the nested conditions that Node's and TypeScript's resolvers read (types first; .d.ts for import, .d.cts for require).
 */
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import configs from "../../tsup.config.js";

const ROOT = new URL("../../", import.meta.url);
const manifest = JSON.parse(readFileSync(new URL("package.json", ROOT), "utf8")) as {
  exports: Record<string, unknown>;
  bin: Record<string, string>;
};
const [library, command] = (configs as { entry: Record<string, string> }[]).map(({ entry }) => entry);

describe("package entries", () => {
  it("are declared for exactly what is built", () => {
    const expected: Record<string, unknown> = { "./package.json": "./package.json" };
    for (const name of Object.keys(library ?? {})) {
      expected[name === "index" ? "." : `./${name.replace(/\/index$/, "")}`] = {
        import: { types: `./dist/${name}.d.ts`, default: `./dist/${name}.js` },
        require: { types: `./dist/${name}.d.cts`, default: `./dist/${name}.cjs` },
      };
    }
    expect(Object.keys(expected).length).toBeGreaterThan(5);
    expect(manifest.exports).toEqual(expected);
    expect(Object.values(manifest.bin)).toEqual(Object.keys(command ?? {}).map((name) => `dist/${name}.js`));
  });

  it("have a source file each", () => {
    const sources = Object.values({ ...library, ...command });
    expect(sources.filter((path) => !existsSync(new URL(path, ROOT)))).toEqual([]);
  });
});
