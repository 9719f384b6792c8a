/**
 * Same to cut, or left and right hand, for sections that are not the same from both sides: a motion that lays an angle or a
 * channel onto itself, worked out by hand for the cuts' normals, decides.
 */
import { describe, expect, it } from "vitest";
import type { Joint } from "../../src/joints/index.js";
import {
  angleBar,
  channelBar,
  customSection,
  member,
  polygonLoop,
  type Section,
} from "../../src/members/index.js";
import { cutPieces } from "./models.js";

/** Leans of the low and the high cut: their normals are (u, v, 1) in the member's own axes. */
type Leans = readonly [readonly [number, number], readonly [number, number]];

const LENGTH = 600;
const A: Leans = [
  [0.3, -0.1],
  [-0.2, 0.45],
];
const [[a, b], [c, d]] = A;

const MOVES: Readonly<Record<string, Leans>> = {
  // (u, v, s) to (u, −v, −s), a half turn about u: the cuts change ends.
  "end for end about u": [
    [-c, d],
    [-a, b],
  ],
  // (u, v, s) to (v, u, −s), a half turn about the line through an equal angle's heel.
  "end for end about the heel's line": [
    [-d, -c],
    [-b, -a],
  ],
  "mirrored about u": [
    [a, -b],
    [c, -d],
  ],
  "mirrored about the heel's line": [
    [b, a],
    [d, c],
  ],
  // (u, v, s) to (u, v, −s): the outline stays where it is, so this is the hand of any section.
  "mirrored along the bar": [
    [-c, -d],
    [-a, -b],
  ],
  "mirrored about v": [
    [-a, b],
    [-c, d],
  ],
};

/** What a piece with these leans is beside one with the leans A. */
function beside(section: Section, leans: Leans): "same" | "hand" | "other" {
  const both = [A, leans].map(([low, high], i) => {
    const [id, x] = [`M${i}`, 1000 * i];
    const cut = (end: 0 | 1, [u, v]: readonly [number, number]): Joint => ({
      kind: "cut",
      id: `${id}-${end}`,
      end: { member: id, end },
      // Along X with up Z: left is Y.
      cut: { type: "plane", normal: [1, u, v] },
    });
    return {
      member: member({ id, section, from: [x, 0, 0], to: [x + LENGTH, 0, 0] }),
      joints: [cut(0, low), cut(1, high)],
    };
  });
  const [, piece] = cutPieces(
    both.map((one) => one.member),
    both.flatMap((one) => one.joints),
  );
  if (piece?.identity === "M0") return "same";
  return piece?.handOf === "M0" ? "hand" : "other";
}

const equal = angleBar({ width: 50, depth: 50, thickness: 5 });
const unequal = angleBar({ width: 60, depth: 40, thickness: 5 });
const channel = channelBar({ width: 50, depth: 100, web: 5, flange: 8 });
const gusset = customSection({
  name: "gusset",
  outer: polygonLoop([
    [-20, -20],
    [30, -20],
    [-20, 40],
  ]),
});

const WANT: readonly (readonly [string, Section, Readonly<Record<string, string>>])[] = [
  [
    "equal angle",
    equal,
    {
      "end for end about the heel's line": "same",
      "mirrored about the heel's line": "hand",
      "mirrored along the bar": "hand",
    },
  ],
  ["unequal angle", unequal, { "mirrored along the bar": "hand" }],
  [
    "channel",
    channel,
    { "end for end about u": "same", "mirrored about u": "hand", "mirrored along the bar": "hand" },
  ],
  ["section of the user's own", gusset, { "mirrored along the bar": "hand" }],
];

describe.each(WANT)("%s", (_, section, want) => {
  it("is the same as itself", () => {
    expect(beside(section, A)).toBe("same");
  });

  it.each(Object.entries(MOVES))("%s", (move, leans) => {
    expect(beside(section, leans)).toBe(want[move] ?? "other");
  });
});
