/**
 * The words of the bench, checked by where things point in the layout: X uphill, Y left looking uphill, Z up.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { endWord, faceWord, isSteep } from "../../src/joints/words.js";
import { directionToParent, type Vec3 } from "../../src/kernel/index.js";
import { post, RAD, rail } from "./models.js";

describe("words for a rail", () => {
  const rake = rail("R", [0, 0, 0], [800, 0, 500]).frame;
  const back = rail("R", [800, 0, 500], [0, 0, 0]).frame;
  const across = rail("R", [0, 0, 0], [0, 900, 0]).frame;

  it("name its ends along the stair, whichever way it is drawn", () => {
    expect([endWord(rake, 0), endWord(rake, 1)]).toEqual(["DOWNHILL", "UPHILL"]);
    expect([endWord(back, 0), endWord(back, 1)]).toEqual(["UPHILL", "DOWNHILL"]);
    expect([endWord(across, 0), endWord(across, 1)]).toEqual(["RIGHT", "LEFT"]);
  });

  it("name its faces, and corners by two", () => {
    expect([faceWord(rake, 0, 1), faceWord(rake, 0, -1)]).toEqual(["TOP", "BOTTOM"]);
    // u is to the left looking along the member; the layout's left is the stair's.
    expect([faceWord(rake, 1, 0), faceWord(rake, -1, 0)]).toEqual(["LEFT", "RIGHT"]);
    expect([faceWord(back, 1, 0), faceWord(back, -1, 0)]).toEqual(["RIGHT", "LEFT"]);
    expect([faceWord(across, 1, 0), faceWord(across, -1, 0)]).toEqual(["DOWNHILL", "UPHILL"]);
    expect(faceWord(rake, 1, 1)).toBe("TOP-LEFT");
    expect(faceWord(rake, -1, -1)).toBe("BOTTOM-RIGHT");
  });
});

describe("words for a post", () => {
  const up = post("P", [0, 0, 0], [0, 0, 900]).frame;
  const down = post("P", [0, 0, 900], [0, 0, 0]).frame;

  it("are foot and top, uphill and downhill, left and right", () => {
    expect([endWord(up, 0), endWord(up, 1)]).toEqual(["FOOT", "TOP"]);
    expect([endWord(down, 0), endWord(down, 1)]).toEqual(["TOP", "FOOT"]);
    for (const frame of [up, down]) {
      const seen = (d: Vec3) => {
        const [u, v] = [frame.x, frame.y].map((a) => a[0] * d[0] + a[1] * d[1]) as [number, number];
        return faceWord(frame, u, v);
      };
      expect(seen([1, 0, 0])).toBe("UPHILL");
      expect(seen([-1, 0, 0])).toBe("DOWNHILL");
      expect(seen([0, 1, 0])).toBe("LEFT");
      expect(seen([0, -1, 0])).toBe("RIGHT");
    }
  });
});

describe("words at their limits", () => {
  it("turn from a rail's to a post's at 60 degrees", () => {
    const at = (slope: number) =>
      rail("R", [0, 0, 0], [800 * Math.cos(slope * RAD), 0, 800 * Math.sin(slope * RAD)]).frame;
    expect([isSteep(at(59.9)), isSteep(at(60.1)), isSteep(at(-60.1))]).toEqual([false, true, true]);
  });

  it("agree with the direction in the layout: TOP points up, LEFT left (definition)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -55, max: 55, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (slope, plan, turn) => {
          const [s, p] = [slope * RAD, plan * RAD];
          const { frame } = rail(
            "R",
            [0, 0, 0],
            [800 * Math.cos(s) * Math.cos(p), 800 * Math.cos(s) * Math.sin(p), 800 * Math.sin(s)],
          );
          const [u, v] = [Math.cos(turn * RAD), Math.sin(turn * RAD)];
          const word = faceWord(frame, u, v);
          const d = directionToParent(frame, [u, v, 0]);
          if (word.startsWith("TOP")) expect(d[2]).toBeGreaterThan(0);
          if (word.startsWith("BOTTOM")) expect(d[2]).toBeLessThan(0);
          if (word.endsWith("LEFT")) expect(d[1]).toBeGreaterThan(0);
          if (word.endsWith("RIGHT")) expect(d[1]).toBeLessThan(0);
          // The opposite face has the opposite word.
          const other: Record<string, string> = {
            TOP: "BOTTOM",
            BOTTOM: "TOP",
            LEFT: "RIGHT",
            RIGHT: "LEFT",
            UPHILL: "DOWNHILL",
            DOWNHILL: "UPHILL",
          };
          expect(faceWord(frame, -u, -v)).toBe(
            word
              .split("-")
              .map((w) => other[w])
              .join("-"),
          );
        },
      ),
    );
  });
});
