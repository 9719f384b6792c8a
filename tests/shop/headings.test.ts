/**
 * Shop words where a guard turns: uphill is the guard's own way up, whatever way that is in the layout. By the geometry itself: the
 * end called UPHILL is the one farther along the guard, on a rake the higher one.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { endWord, faceWord, sightOf } from "../../src/joints/words.js";
import { pointToParent } from "../../src/kernel/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { cutList } from "../../src/shop/index.js";

const flight = { along: "stair", top: 950, posts: { onTreads: [1, 4], behindNosing: 80 } };

/** Up along −X, a quarter turn twice over a landing, up along X: the last flight is the layout's. */
const back = {
  ...{ version: 1, job: "Drying loft (invented)", unit: "mm", side: "left" },
  stair: { risers: 6, floorToFloor: 1080, going: 260 },
  sections: { rail: "square 40 x 3", corner: "square 60 x 4" },
  rails: [{ role: "top", section: "rail" }],
  posts: { section: "rail" },
  foot: { thickness: 8, along: 90, across: 80 },
  legs: [
    flight,
    {
      along: "landing",
      top: 950,
      length: 1200,
      turn: { angle: -90, past: 100, section: "corner" },
      posts: { at: [600] },
    },
    { ...flight, turn: { angle: -90, before: 100, section: "corner" } },
  ],
};

describe("words along a guard that turns back on itself", () => {
  const guard = buildGuard(back);

  it("has a flight that climbs against the layout's X", () => {
    expect(guard.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    const low = guard.members.find((m) => m.id === "stair-top")!;
    expect(low.to[0]).toBeLessThan(low.from[0]);
    expect(low.to[2]).toBeGreaterThan(low.from[2]);
  });

  it("calls the higher end of every raking piece UPHILL, and the lower one DOWNHILL", () => {
    const raking = guard.pieces.filter((p) => p.role === "top-rail" && Math.abs(p.frame.z[2]) > 0.1);
    expect(raking).toHaveLength(2);
    for (const piece of raking) {
      const rise = pointToParent(piece.frame, [0, 0, 100])[2] - piece.frame.origin[2];
      const words = [0, 1].map((end) => endWord(sightOf(piece), end as 0 | 1));
      expect(words, piece.id).toEqual(rise > 0 ? ["DOWNHILL", "UPHILL"] : ["UPHILL", "DOWNHILL"]);
      expect(piece.lengths.blank.from.name).toMatch(/HILL end$/);
    }
  });

  it("faces of posts: the one towards the higher treads is UPHILL on either flight", () => {
    for (const id of ["stair-post-1", "stair-2-post-1"]) {
      const [post, next] = [id, id.replace("post-1", "post-2")].map(
        (own) => guard.pieces.find((p) => p.id === own)!,
      );
      const way = [0, 1, 2].map((k) => next!.frame.origin[k]! - post!.frame.origin[k]!);
      const v = post!.frame.y;
      const towards = v[0] * way[0]! + v[1] * way[1]!;
      expect(faceWord(sightOf(post!), 0, Math.sign(towards)), id).toBe("UPHILL");
    }
  });

  it("prints them: no end of the guard's rails is called LEFT or RIGHT", () => {
    const list = cutList(guard.pieces, { unit: "mm" });
    const names = list.groups.flatMap((group) =>
      group.rows.filter((row) => row.role === "top-rail").flatMap((row) => row.ends.map((end) => end.name)),
    );
    expect(new Set(names)).toEqual(new Set(["UPHILL", "DOWNHILL"]));
  });
});

describe("the kiln loft's landing", () => {
  it("goes on from DOWNHILL at the corner to UPHILL at the wall", () => {
    const text = readFileSync(new URL("../../examples/kiln-loft.json", import.meta.url), "utf8");
    const rail = buildGuard(JSON.parse(text)).pieces.find((p) => p.id === "landing-top")!;
    expect([0, 1].map((end) => endWord(sightOf(rail), end as 0 | 1))).toEqual(["DOWNHILL", "UPHILL"]);
    expect(rail.heading).toBe(90);
  });
});
