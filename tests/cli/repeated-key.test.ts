import { writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { repeatedKey } from "../../src/cli/repeated-key.js";
import { cli, freshFolder } from "./world.js";

describe("a key that is given twice", () => {
  it("is found where it is, in its own object only", () => {
    expect(repeatedKey('{ "a": 1, "b": { "a": 2 }, "c": [{ "a": 3 }, { "a": 4 }] }')).toBeUndefined();
    expect(repeatedKey('{ "a": "a", "b": ["a", "a", "b"], "c": ",{" }')).toBeUndefined();
    expect(repeatedKey('{\n  "top": 42,\n  "top": 36\n}')).toEqual({ key: "top", line: 3, column: 3 });
    expect(repeatedKey('[{ "x\\"y": { "q": 1 }, "x\\"y": 2 }]')?.key).toBe('x"y');
    // Two spellings of one key are one key to the reader.
    expect(repeatedKey('{ "a": 1, "\\u0061": 2 }')?.key).toBe("a");
  });

  it("is never seen in what was made from values, and always in an object with one more", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        for (const indent of [0, 2]) expect(repeatedKey(JSON.stringify(value, null, indent))).toBeUndefined();
      }),
    );
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string(), { minLength: 1, maxLength: 6 }),
        fc.jsonValue(),
        fc.nat(),
        (keys, value, n) => {
          const again = keys[n % keys.length] as string;
          const members = [...keys, again].map((key) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`);
          expect(repeatedKey(`[0, {${members.join(", ")}}]`)?.key).toBe(again);
        },
      ),
    );
  });

  it("is wrong use of the program, with its place", async () => {
    const cwd = freshFolder();
    writeFileSync(join(cwd, "twice.json"), '{\n  "job": "a",\n  "version": 1,\n  "job": "b"\n}');
    const { code, err } = await cli(["check", "twice.json"], { cwd });
    expect(code).toBe(2);
    expect(err).toMatch(
      /twice\.json has the key `job` a second time at line 4, column 3[\s\S]*Keep one of the two/,
    );
  });
});
