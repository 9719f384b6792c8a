/**
 * All files or none: nothing partial stays behind, nothing is replaced unasked. Checked against the file system itself.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { UsageError } from "../../src/cli/io.js";
import { writeAll } from "../../src/cli/write-all.js";
import { freshFolder } from "./world.js";

const FILES = [
  { path: "a.txt", data: "new a" },
  { path: "pieces/b.bin", data: new Uint8Array([1, 2, 3]) },
];

/** Every file below a folder with its text. */
function tree(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    names.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path.slice(folder.length + 1).replaceAll("\\", "/"), readFileSync(path, "latin1")];
    }),
  );
}

describe("writeAll", () => {
  it("makes the folder and writes every file, leaving nothing else", () => {
    const base = freshFolder();
    writeAll(join(base, "x/y"), FILES, false);
    expect(tree(base)).toEqual({ "x/y/a.txt": "new a", "x/y/pieces/b.bin": "\u0001\u0002\u0003" });
    expect(readdirSync(join(base, "x/y")).sort()).toEqual(["a.txt", "pieces"]);
  });

  it("refuses to replace a file, names it, and touches nothing", () => {
    const base = freshFolder();
    writeFileSync(join(base, "a.txt"), "old");
    expect(() => writeAll(base, FILES, false)).toThrow(/a\.txt exists already/);
    expect(tree(base)).toEqual({ "a.txt": "old" });
  });

  it("replaces with force and leaves other files alone", () => {
    const base = freshFolder();
    writeFileSync(join(base, "a.txt"), "old");
    writeFileSync(join(base, "mine.txt"), "mine");
    writeAll(base, FILES, true);
    expect(tree(base)).toEqual({
      "a.txt": "new a",
      "mine.txt": "mine",
      "pieces/b.bin": "\u0001\u0002\u0003",
    });
  });

  it("does not replace a folder even with force", () => {
    const base = freshFolder();
    mkdirSync(join(base, "a.txt"));
    writeFileSync(join(base, "a.txt/keep"), "keep");
    expect(() => writeAll(base, FILES, true)).toThrow(/not a plain file/);
    expect(tree(base)).toEqual({ "a.txt/keep": "keep" });
  });

  it("puts everything back when a later file cannot be written", () => {
    const base = freshFolder();
    writeFileSync(join(base, "a.txt"), "old");
    writeFileSync(join(base, "blocked"), "a file where a folder is needed");
    const files = [...FILES, { path: "blocked/c.txt", data: "c" }];
    expect(() => writeAll(base, files, true)).toThrow(UsageError);
    expect(tree(base)).toEqual({ "a.txt": "old", blocked: "a file where a folder is needed" });
    expect(readdirSync(base).sort()).toEqual(["a.txt", "blocked"]);
  });

  it("leaves no folder behind when the target lies below a file", () => {
    const base = freshFolder();
    writeFileSync(join(base, "file"), "x");
    expect(() => writeAll(join(base, "file/deeper"), FILES, false)).toThrow(UsageError);
    expect(readdirSync(base)).toEqual(["file"]);
  });
});
