/** Each finding about handrails, brackets and toe boards has a smallest document that triggers it, and one beside it that does not. */
import { describe, expect, it } from "vitest";
import { codesOf, example, type Loose, laidOut } from "./designs.js";
import { handrailOf, twoFlights } from "./handrail-designs.js";

const hand = (own: Loose = {}, change: (d: Loose) => void = () => undefined) =>
  example((d) => {
    handrailOf({ bottom: undefined, top: undefined, brackets: undefined, ...own })(d);
    change(d);
  });
const toe = (own: Loose, change: (d: Loose) => void = () => undefined) =>
  example((d) => {
    d.sections.toe = "flat 4 x 1/4";
    d.toeBoard = { section: "toe", gap: "3/8", ...own };
    d.legs[1].undersides.low = "5";
    change(d);
  });
const arm = { section: "arm", drop: "3" };
const wall = { ...arm, from: "wall", wall: "3", greatest: "32", ends: "6" };

/** Of laying out: code, a document that triggers it, a near one that does not. */
const LAID_OUT: readonly (readonly [string, Loose, Loose])[] = [
  // Level part of 12 in; a return of 3 in loses half a rail, 0.75 in, at its miter.
  [
    "handrail-too-short",
    hand({ top: { extend: "12", return: "wall", distance: "3/4" } }),
    hand({ top: { extend: "12", return: "wall", distance: "13/16" } }),
  ],
  // End posts are 2 in square: 1 in and half the rail of 1 1/2 in.
  ["handrail-in-posts", hand({ inward: "1 11/16" }), hand({ inward: "1 3/4" })],
  // The last post stands 93 3/4 in past the nosing.
  [
    "handrail-no-post",
    hand({ top: { extend: "94", return: "post" } }),
    hand({ top: { extend: "93", return: "post" } }),
  ],
  // Above the guard there is no post to be turned into.
  [
    "handrail-no-post",
    hand({ height: "43", inward: "4", top: { extend: "12", return: "post" } }),
    hand({ height: "40", inward: "4", top: { extend: "12", return: "post" } }),
  ],
  // Post P6 is 1 1/2 in.
  [
    "handrail-wide-for-post",
    hand(
      { inward: "5", top: { extend: "12", return: "post" } },
      (d) => (d.sections.hand = "round 1-5/8 x 0.120"),
    ),
    hand({ inward: "5", top: { extend: "12", return: "post" } }),
  ],
  // A landing that slopes by 1 degree: 90 mm in, where a handrail turns, it is 1.6 mm off.
  [
    "handrail-corner-misses",
    twoFlights({ side: "left", angle: 90, before: 420 }, (d) => (d.legs[1].slope = 1)),
    twoFlights({ side: "left", angle: 90, before: 420 }),
  ],
  ["handrail-grasp", hand({ graspable: { greatest: "2 1/4", source: "whoever asked" } }), hand()],
  [
    "bracket-without-post",
    hand({ brackets: { ...arm, from: "posts" } }, (d) => delete d.legs[0].posts),
    hand({ brackets: { ...arm, from: "posts" } }),
  ],
  // An arm of 1/2 in takes a quarter inch of the stem at its miter.
  [
    "bracket-too-short",
    hand({ brackets: { ...arm, from: "posts", drop: "1/4" } }),
    hand({ brackets: { ...arm, from: "posts", drop: "5/16" } }),
  ],
  [
    "toe-board-without-bay",
    toe({}, (d) => (d.legs[1].posts.at = ["3"])),
    toe({}, (d) => (d.legs[1].posts.at = ["3", "33"])),
  ],
  ["toe-board-in-foot", toe({ gap: "5/16" }), toe({ gap: "3/8" })],
  [
    "toe-board-hits-rail",
    toe({}, (d) => (d.legs[1].undersides.low = "4 5/16")),
    toe({}, (d) => (d.legs[1].undersides.low = "4 3/8")),
  ],
  // In front of the posts, a corner towards the walking side takes the board's distance from the guard's plane off both bays.
  [
    "toe-board-too-short",
    twoFlights({ side: "left", angle: -90, before: 420 }, shortCorner(100)),
    twoFlights({ side: "left", angle: -90, before: 420 }, shortCorner(200)),
  ],
];

/** Two landings with a corner between two posts, the second of which stands `after` past it; boards of 60 mm flat lying far in. */
function shortCorner(after: number) {
  return (d: Loose) => {
    d.handrails = [];
    d.toeBoard = { section: "toe", gap: 20, face: "inside" };
    d.sections.post = "square 200 x 6";
    d.sections.rail = "square 200 x 6";
    d.legs = [
      d.legs[0],
      { along: "landing", top: 1000, length: 1600, posts: { at: [300, 1200] } },
      { along: "landing", top: 1000, length: 1600, posts: { at: [after, 1200] }, turn: d.legs[1].turn },
    ];
    d.legs[2].turn.past = 0;
  };
}

/** Of reading. */
const READ: readonly (readonly [string, Loose, Loose])[] = [
  ["unknown-leg", hand({ legs: ["stairs"] }), hand({ legs: ["stair"] })],
  ["unknown-leg", toe({ legs: ["floor"] }), toe({ legs: ["landing"] })],
  ["leg-order", hand({ legs: ["landing", "stair"] }), hand({ legs: ["stair", "landing"] })],
  ["missing", hand({ top: { return: "wall" } }), hand({ top: { return: "wall", distance: "3" } })],
  ["missing", hand({ brackets: { ...wall, wall: undefined } }), hand({ inward: "8", brackets: wall })],
  ["missing", hand({ brackets: { ...wall, ends: undefined } }), hand({ inward: "8", brackets: wall })],
  ["bad-value", hand({ top: { distance: "3" } }), hand({ top: {} })],
  ["bad-value", hand({ top: { slope: "3" } }), hand({ bottom: { slope: "3" } })],
  [
    "bad-value",
    hand({ top: { extend: "12", return: "post", endPlate: "1/4" } }),
    hand({ top: { extend: "12", return: "post" } }),
  ],
  [
    "bad-value",
    hand({ brackets: { ...arm, from: "posts", wall: "3" } }),
    hand({ brackets: { ...arm, from: "posts" } }),
  ],
  [
    "bad-value",
    hand({ brackets: { ...arm, from: "posts", section: "low" } }),
    hand({ brackets: { ...arm, from: "posts" } }),
  ],
  ["bad-value", toe({ section: "rail" }), toe({})],
  ["bad-value", toe({ legs: ["stair"] }), toe({})],
  ["unknown-section", hand({ section: "hands" }), hand()],
  [
    "duplicate-id",
    hand({}, (d) => d.handrails.push({ ...d.handrails[0], id: "Handrail", inward: "8" })),
    hand({}, (d) => d.handrails.push({ ...d.handrails[0], inward: "8" })),
  ],
  ["unknown-key", hand({ top: { extends: "12" } }), hand({ top: { extend: "12" } })],
];

describe("findings about handrails and toe boards", () => {
  it.each(LAID_OUT)("%s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });

  it.each(READ)("%s, while reading", (code, bad, good) => {
    expect(codesOf(bad)).toEqual([code]);
    expect(codesOf(good).filter((own) => own !== "post-wider-than-rail")).toEqual([]);
  });

  it("name the thing, the numbers and a remedy, and a path into the document", () => {
    for (const [code, bad] of LAID_OUT) {
      const found = laidOut(bad).diagnostics.find((own) => own.code === code)!;
      expect(found.message).toMatch(/expected|asked/);
      expect(found.hint.length).toBeGreaterThan(10);
      expect(found.path).toMatch(/^(handrails\[0\]|toeBoard|legs\[)/);
      expect(`${found.message}${found.hint}`).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it("leave out what cannot be built and keep the rest", () => {
    const layout = laidOut(hand({ top: { extend: "12", return: "wall", distance: "3/4" } }));
    const ids = layout.members.map((own) => own.id);
    expect(ids).not.toContain("handrail-return-1");
    expect(ids).toContain("handrail-stair-head");
    for (const joint of layout.joints) {
      if (joint.kind === "miter") expect(joint.ends.every((own) => ids.includes(own.member))).toBe(true);
    }
  });
});
