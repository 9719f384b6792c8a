/**
 * Small files with a header, and indexes that only re-export: the shape of the tree that lets a reader find things.
 */
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { parseModule, readSources, type SourceModule } from "./sources.js";

const MOST_LINES = 400;

const lineCount = (text: string): number => text.trimEnd().split("\n").length;

/** Statements of an index that are anything but `export … from`. */
function strayStatements({ path, text }: SourceModule): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022);
  return file.statements
    .filter((statement) => !(ts.isExportDeclaration(statement) && statement.moduleSpecifier !== undefined))
    .map((statement) => `${path}: ${statement.getText(file).slice(0, 60)}`);
}

const isIndex = (module: SourceModule): boolean => /(^|\/)index\.ts$/.test(module.path);

describe("source files", () => {
  const modules = readSources();

  it(`have at most ${MOST_LINES} lines`, () => {
    const long = modules.filter(({ text }) => lineCount(text) > MOST_LINES);
    expect(long.map(({ path, text }) => `${path}: ${lineCount(text)}`)).toEqual([]);
  });

  it("start with a header comment", () => {
    expect(modules.filter(({ text }) => !text.startsWith("/**")).map(({ path }) => path)).toEqual([]);
  });

  it("only re-export where they are an index", () => {
    const indexes = modules.filter(isIndex);
    expect(indexes.length).toBeGreaterThan(0);
    expect(indexes.flatMap(strayStatements)).toEqual([]);
  });

  it("leave no note of unfinished work", () => {
    const note = new RegExp(`\\b(${["TO", "FIX"].map((a, i) => a + ["DO", "ME"][i]).join("|")})\\b`);
    expect(note.test(`// ${"TO"}DO: later`)).toBe(true);
    expect(modules.filter(({ text }) => note.test(text)).map(({ path }) => path)).toEqual([]);
  });

  it("are judged by checks that can fail", () => {
    const bad =
      'import { a } from "./a.js";\nexport const b = a;\nexport { a };\nexport { c } from "./c.js";';
    expect(strayStatements(parseModule("kernel/index.ts", bad))).toHaveLength(3);
    expect(lineCount("x\n".repeat(MOST_LINES + 1))).toBe(MOST_LINES + 1);
  });
});
