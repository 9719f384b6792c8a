/** Each finding of the layout has a smallest document that triggers it, and one beside it that does not. */
import { describe, expect, it } from "vitest";
import { codesOf, example, type Loose, laidOut, withFloor } from "./designs.js";

const first = (value: unknown) => (d: Loose) => (d.legs[0].posts.onTreads[0] = value);
const atLanding = (i: number, value: unknown) => (d: Loose) => (d.legs[1].posts.at[i] = value);

/** Code, a change that triggers it, a near change that does not. Inches; end posts are 2 square, plates 4 square. */
const FINDINGS: readonly (readonly [string, Loose, Loose])[] = [
  ["unknown-post", example((d) => (d.endPosts.marks = ["P9"])), example((d) => (d.endPosts.marks = ["P7"]))],
  // Going 10 5/8: a face at 9 3/4 + 1 passes the next nosing, at 9 1/2 + 1 it does not.
  [
    "post-hits-nosing",
    example(first({ tread: 1, behindNosing: "9 3/4" })),
    example(first({ tread: 1, behindNosing: "9 1/2" })),
  ],
  // The riser face stands at 10 5/8 + 3/4; a plate reaches 2 past the post.
  [
    "foot-hits-riser",
    example(first({ tread: 1, behindNosing: "9 7/16" })),
    example(first({ tread: 1, behindNosing: "9 5/16" })),
  ],
  [
    "foot-past-nosing",
    example(first({ tread: 1, behindNosing: "1 3/4" })),
    example(first({ tread: 1, behindNosing: "2" })),
  ],
  ["posts-overlap", example(atLanding(1, "4 1/2")), example(atLanding(1, "4 3/4"))],
  [
    "rail-past-leg",
    example((d) => (d.legs[1].end = { type: "free", overhang: "2 1/8" })),
    example((d) => (d.legs[1].end = { type: "free", overhang: "2" })),
  ],
  // Level rail of 48 in on a rake of 42: the break is 6/tan θ = 8.43 in over the landing.
  [
    "rail-too-short",
    example((d) => Object.assign(d.legs[1], { top: "48", length: "9" })),
    example((d) => Object.assign(d.legs[1], { top: "48", length: "10" })),
  ],
  ["post-past-rail", example(atLanding(3, "95 1/2")), example(atLanding(3, "95 1/4"))],
  ["rail-below-foot", example((d) => (d.legs[0].top = d.legs[1].top = "1")), example()],
  ["post-wider-than-rail", example(), example((d) => (d.endPosts = undefined))],
  // 2 in over the landing against a foot 2 1/16 thick.
  [
    "rail-below-post-foot",
    example((d) => (d.foot.thickness = "2 1/16")),
    example((d) => (d.foot.thickness = "1 1/8")),
  ],
  [
    "rails-overlap",
    example((d) => (d.legs[1].undersides.low = "39 1/4")),
    example((d) => (d.legs[1].undersides.low = "39")),
  ],
  ["duplicate-id", example(first({ tread: 1, id: "R1" })), example(first({ tread: 1, id: "R9" }))],
  // Floor to landing in one bay: the undersides' breaks are 127 in apart, the post at 3 in leaves them no room.
  [
    "bay-without-line",
    withFloor((d) => delete d.legs[1].posts),
    withFloor((d) => {
      delete d.legs[1].posts;
      d.legs[2].posts.at.shift();
    }),
  ],
  // A post 40 in along a landing 38 in long that another flight follows.
  ["post-past-leg", flights((d) => (d.legs[1].posts.at = ["40"])), flights()],
  ["foot-past-edge", example((d) => (d.stair.inset = "1 7/8")), example((d) => (d.stair.inset = "2"))],
  [
    "substrate-thin",
    example(under({ leastThickness: "1 5/8" })),
    example(under({ leastThickness: "1 1/2" })),
  ],
  // Holes 2 3/4 apart, centred 3 in behind the nosing: 1 5/8 to the edge.
  ["hole-near-edge", example(under({ leastEdge: "1 3/4" })), example(under({ leastEdge: "1 5/8" }))],
  [
    "rails-never-meet",
    flights((d) => d.legs.splice(2, 1, { along: "landing", top: "44", posts: { at: ["20"] } })),
    flights((d) =>
      d.legs.splice(2, 1, { along: "landing", top: "44", break: "drop", posts: { at: ["20"] } }),
    ),
  ],
  // Three left turns of 90 degrees round a short landing come back over the first leg at its own height.
  ["guard-crosses-itself", example(square("60")), example(square("200"))],
  ["guards-meet", example(pair(-90)), example(pair(90))],
  ["unknown-leg", example(splice({ leg: "ladder" })), example(splice({}))],
  ["sleeve-too-wide", example(splice({ sleeve: "wide" })), example(splice({}))],
  // Post P2 stands 34 7/8 in along the leg, half of it is 3/4, the sleeve's 3 in are 2.444 in of plan.
  ["splice-at-post", example(splice({ at: "37" })), example(splice({ at: "38 1/8" }))],
  ["splice-past-run", example(splice({ at: "126" })), example(splice({ at: "124" }))],
];

/** Floor to landing, landing, a second flight: 42 in high all along. */
function flights(change: (d: Loose) => void = () => undefined): Loose {
  return example((d) => {
    d.endPosts = undefined;
    const flight = { ...d.legs[0], undersides: {} };
    d.legs = [
      flight,
      { along: "landing", length: "38", top: "42", posts: { at: ["19"] } },
      { ...flight, posts: { onTreads: [1], behindNosing: "3" } },
    ];
    change(d);
  });
}

function under(substrate: Loose) {
  return (d: Loose) => {
    d.foot.holes = { diameter: "7/16", along: "2 3/4", across: "2 3/4" };
    d.foot.substrate = { name: "tread", thickness: "1 1/2", ...substrate };
  };
}

/** Turns left three times; the last leg runs `length` away from the first one's line or over it. */
function square(length: string) {
  return (d: Loose) => {
    d.endPosts = undefined;
    const leg = { along: "landing", top: "42", length: "40", posts: { at: ["20"] } };
    const turn = { angle: 90, corner: "level" };
    d.legs = [
      { ...d.legs[0], undersides: {} },
      { ...leg, length: "90" },
      { ...leg, turn, length },
      { ...leg, turn },
      { ...leg, turn, length: "100", posts: { at: ["20", "80"] } },
    ];
  };
}

function pair(angle: number) {
  return (d: Loose) => {
    d.endPosts = undefined;
    d.side = "both";
    Object.assign(d.stair, { width: "40", inset: "3" });
    d.legs[0].undersides = {};
    Object.assign(d.legs[1], { turn: { angle, past: "6" }, undersides: {} });
  };
}

function splice(own: Loose) {
  return (d: Loose) => {
    d.endPosts = undefined;
    Object.assign(d.sections, { sleeve: "round bar 1.5", wide: "round bar 1.625" });
    d.splices = [{ leg: "stair", at: "50", sleeve: "sleeve", reach: "3", ...own }];
  };
}

describe("findings of the layout", () => {
  it.each(FINDINGS)("%s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });

  it("name the thing, the numbers and a remedy", () => {
    for (const [, bad] of FINDINGS) {
      for (const found of laidOut(bad).diagnostics) {
        expect(found.message).toMatch(/expected|by \d/);
        expect(found.hint.length).toBeGreaterThan(10);
        expect(`${found.message}${found.hint}`).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });

  it("leave out what cannot be built and keep the rest", () => {
    const layout = laidOut(example(atLanding(3, "95 1/2")));
    expect(layout.members.filter((m) => m.role === "post")).toHaveLength(7);
    expect(layout.members.filter((m) => m.role === "rail")).toHaveLength(6);
    const known = new Set(layout.members.map((m) => m.id));
    for (const joint of layout.joints)
      if (joint.kind === "cope") expect(known.has(joint.end.member)).toBe(true);
  });
});
