/** Paths and near names in messages; distances are the textbook ones (Levenshtein: kitten to sitting is 3, from memory). */
import { describe, expect, it } from "vitest";
import {
  got,
  nearestName,
  pathForPeople,
  pathText,
  valueAt,
} from "../../src/layout/document/schema/path-text.js";

const DOCUMENT = { legs: [{ along: "stair" }, { along: "landing", posts: { at: [1, { id: "P9" }] } }] };

describe("paths", () => {
  it("are written for machines and for people", () => {
    const path = ["legs", 1, "posts", "at", 1];
    expect(pathText(path)).toBe("legs[1].posts.at[1]");
    expect(pathForPeople(DOCUMENT, path)).toBe("legs[1] (landing).posts.at[1] (P9)");
    expect([pathText([]), pathForPeople(DOCUMENT, [])]).toEqual(["", "The design"]);
  });

  it("find values, and never what an object inherits", () => {
    expect(valueAt(DOCUMENT, ["legs", 0, "along"])).toBe("stair");
    expect(valueAt(DOCUMENT, ["toString"])).toBeUndefined();
  });
});

describe("got", () => {
  it.each([
    [undefined, "nothing"],
    [null, "null"],
    ["a", '"a"'],
    [3, "3"],
    [[1, 2], "a list of 2"],
    [{}, "an object"],
    [() => 0, "a function"],
  ])("of %s is %s", (value, words) => {
    expect(got(value)).toBe(words);
  });

  it("shortens long text", () => {
    expect(got("x".repeat(1000)).length).toBeLessThan(65);
  });
});

describe("nearestName", () => {
  it("takes a name at most two changes away", () => {
    expect(nearestName("overhnag", ["going", "overhang"])).toBe("overhang");
    expect(nearestName("kitten", ["sitting"])).toBeUndefined();
    expect(nearestName("sittin", ["sitting"])).toBe("sitting");
    expect(nearestName("a", [])).toBeUndefined();
  });
});
