/** Names in files: by example, and properties over any text. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fileNames } from "../../src/export/names.js";

describe("fileNames", () => {
  it("keeps plain names, replaces the rest, and numbers repeats", () => {
    const names = ["P1", "Post 1", "post_1", "«»", "", "post_1-2", "Stütze", "a/b\\c"];
    expect(fileNames(names, "ascii", "piece")).toEqual([
      "P1", "Post_1", "post_1-2", "piece", "piece-2", "post_1-2-2", "St_tze", "a_b_c",
    ]); // biome-ignore format: a table
    expect(fileNames(["Stütze", "Stu\u0308tze"], "unicode", "piece")).toEqual(["Stütze", "Stütze-2"]);
  });

  it("are one word each and different whatever the texts", () => {
    const texts = fc.array(fc.string({ unit: "binary", maxLength: 5 }), { maxLength: 12 });
    fc.assert(
      fc.property(texts, fc.constantFrom("ascii" as const, "unicode" as const), (names, alphabet) => {
        const out = fileNames(names, alphabet, "piece");
        expect(new Set(out.map((n) => n.toLowerCase())).size).toBe(names.length);
        const word = alphabet === "ascii" ? /^[A-Za-z0-9._+-]+$/ : /^\S+$/u;
        expect(out.every((name) => word.test(name))).toBe(true);
      }),
    );
  });
});
