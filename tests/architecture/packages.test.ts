/**
 * Each outside package stays in its own corner: gl-matrix in one file, JSCAD in its adapter, zod where documents are
 * read, and Node's modules in the command line, so that the rest runs in browsers and workers.
 */
import { readFileSync } from "node:fs";
import { glMatrix } from "gl-matrix";
import { describe, expect, it } from "vitest";
import { parseModule, readSources, type SourceModule } from "./sources.js";

/** Which files may import which package; a package that is not named here is imported nowhere. */
const CORNERS: readonly { readonly name: RegExp; readonly where: RegExp }[] = [
  { name: /^gl-matrix(\/|$)/, where: /^kernel\/vec\.ts$/ },
  { name: /^zod$/, where: /^(layout|shop|checks|cli)\// },
  { name: /^@jscad\/(modeling|stl-serializer)$/, where: /^export\/adapters\/jscad\// },
  { name: /^node:/, where: /^cli\// },
];

function strayPackages(modules: readonly SourceModule[]): string[] {
  return modules.flatMap(({ path, bare }) =>
    bare
      .filter((name) => !CORNERS.some((corner) => corner.name.test(name) && corner.where.test(path)))
      .map((name) => `${path} -> ${name}`),
  );
}

describe("outside packages", () => {
  const modules = readSources();

  it("are imported only in their own corner", () => {
    expect(strayPackages(modules)).toEqual([]);
  });

  it("are seen when they stray", () => {
    const stray = (path: string, name: string) => strayPackages([parseModule(path, `import "${name}";`)]);
    expect(stray("kernel/frame.ts", "gl-matrix")).toHaveLength(1);
    expect(stray("kernel/vec.ts", "gl-matrix")).toHaveLength(0);
    expect(stray("export/stl.ts", "node:fs")).toHaveLength(1);
    expect(stray("export/stl.ts", "fs")).toHaveLength(1);
    expect(stray("export/adapters/jscad/index.ts", "@jscad/modeling/src/geometries/types")).toHaveLength(1);
  });

  it("keep gl-matrix's process-wide number type as they found it", async () => {
    // gl-matrix's documented default is Float32Array; setMatrixArrayType would change it for every library in the page.
    for (const { path } of modules.filter((m) => !m.path.startsWith("cli/") && !m.path.endsWith(".d.ts"))) {
      await import(/* @vite-ignore */ new URL(`../../src/${path}`, import.meta.url).href);
    }
    expect(glMatrix.ARRAY_TYPE).toBe(Float32Array);
    // `vec.ts` takes one of its ES modules, whose switch is another variable.
    const common = "gl-matrix/esm/common.js";
    expect((await import(common)).ARRAY_TYPE).toBe(Float32Array);
  });

  it("that the build takes in have their licences beside it", () => {
    // Both are MIT: the notice goes with every copy.
    const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
    const bundled = /noExternal: (\[.*\])/.exec(read("tsup.config.ts"))?.[1] ?? "";
    expect(JSON.parse(bundled)).toEqual(["gl-matrix", "zod"]);
    for (const licence of ["gl-matrix/LICENSE.md", "zod/LICENSE"]) {
      expect(read("THIRD-PARTY.md")).toContain(read(`node_modules/${licence}`).trim());
    }
    expect(JSON.parse(read("package.json")).files).toContain("THIRD-PARTY.md");
  });
});
