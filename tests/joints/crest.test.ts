import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { acrossPost, breakOver } from "../../src/joints/crest.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { RAD } from "./models.js";

const UP: Vec3 = [0, 0, 1];
/** A rail that leaves downhill (or uphill) rising `slope` degrees. */
const leaving = (towards: 1 | -1, slope: number): Vec3 => [
  towards * Math.cos(slope * RAD),
  0,
  Math.sin(slope * RAD),
];

describe("breakOver", () => {
  it("is a crest where both fall or one falls more than the other rises, a valley the other way (by eye)", () => {
    expect(breakOver(UP, leaving(-1, -35), leaving(1, 0))).toBe("crest");
    expect(breakOver(UP, leaving(-1, -35), leaving(1, -20))).toBe("crest");
    expect(breakOver(UP, leaving(-1, 0), leaving(1, 35))).toBe("valley");
    expect(breakOver(UP, leaving(-1, -20), leaving(1, 35))).toBe("valley");
    expect(breakOver(UP, leaving(-1, -35), leaving(1, 35))).toBe("straight");
    expect(breakOver(UP, leaving(1, 0), leaving(1, 35))).toBe("one-side");
    expect(breakOver(UP, leaving(1, 0), [0, 1, 0])).toBe("off-plane");
  });

  it("turns over with the post: a crest from above is a valley from below", () => {
    expect(breakOver([0, 0, -1], leaving(-1, -35), leaving(1, 0))).toBe("valley");
  });

  // Seen in the rails' plane each rail lies on a line z = m·x through the break. A fibre of the post that comes up at x = 1,
  // on the second rail's side, must stop at the second rail: at a crest that line is the lower of the two there.
  it("says which of two lines is over each side of the post (second route: heights of lines)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        (down, up) => {
          fc.pre(Math.abs(down + up) > 1e-3);
          // As lines z = m·x through the break: the first leaves to −x, the second to +x.
          const [first, second] = [-Math.tan(down * RAD), Math.tan(up * RAD)];
          const own = second < first;
          expect(breakOver(UP, leaving(-1, down), leaving(1, up))).toBe(own ? "crest" : "valley");
          expect(breakOver(UP, leaving(1, up), leaving(-1, down))).toBe(own ? "crest" : "valley");
        },
      ),
    );
  });
});

describe("acrossPost", () => {
  it("is the level direction of a raking rail beside a plumb post; nothing along it (closed form)", () => {
    const d = acrossPost(UP, leaving(1, 35));
    expect(d[0]).toBeCloseTo(1, 14);
    expect(Math.hypot(d[1], d[2])).toBeLessThan(1e-14);
    expect(Math.hypot(...acrossPost(UP, UP))).toBe(0);
  });
});
