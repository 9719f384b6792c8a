/** Each finding about infill has a smallest document that triggers it, and one beside it that does not. */
import { describe, expect, it } from "vitest";
import { codesOf, type Loose, laidOut } from "./designs.js";
import { filled, infillOf, twoFlights } from "./infill-cases.js";

const bars = (more: Loose = {}) => ({ type: "bars", section: "bar", clear: "3 7/8", ...more });
const rails = (more: Loose = {}) => ({ type: "rails", section: "bar", clear: "3 7/8", ...more });
const onlyRails = (more: Loose) => ({ type: "rails", section: "bar", ...more });

/** Code, a document that triggers it, a near one that does not. Inches; posts 1 1/2 square, rail 1.900, lower rail 1 wide. */
const READING: readonly (readonly [string, Loose, Loose])[] = [
  ["out-of-range", filled(bars({ clear: "0" })), filled(bars({ clear: "1" }))],
  ["unknown-section", filled(bars({ section: "baluster" })), filled(bars())],
  ["bad-infill", filled(onlyRails({})), filled(onlyRails({ count: 3 }))],
  ["bad-infill", filled(rails({ count: 3 })), filled(rails())],
  ["bad-infill", filled(rails({ past: "1" })), filled(rails({ past: "1", through: true }))],
  [
    "bad-infill",
    filled(rails({ through: true, past: "1", section: "low" })),
    filled(rails({ past: "1", through: true })),
  ],
  ["missing", filled(rails({ through: true })), filled(rails({ past: "1", through: true }))],
  [
    "bad-value",
    filled(bars(), (d) => (d.legs[0].infill = 3)),
    filled(bars(), (d) => (d.legs[0].infill = "none")),
  ],
  ["wrong-type", filled(bars(), (d) => (d.legs[0].infill = { type: "bar" })), filled(bars())],
  ["unknown-key", filled(bars({ cleer: 1 })), filled(bars())],
];

/** A held break: the plumb leg's face stands at the bar, or the bars are a little closer and it does not. */
const held = (clear: number) =>
  twoFlights(
    { angle: 90, past: 60, before: 480, corner: "level" },
    { type: "bars", section: "bar", clear },
    (d) => {
      Object.assign(d.legs[1], { top: 1100, break: "drop", posts: { at: [400, 600] } });
    },
  );

const LAYOUT: readonly (readonly [string, Loose, Loose])[] = [
  [
    "infill-without-rail",
    filled(bars(), (d) => delete d.legs[1].undersides),
    filled(bars(), (d) => {
      delete d.legs[1].undersides;
      d.legs[1].infill = "none";
    }),
  ],
  [
    "infill-too-wide",
    filled(bars(), (d) => (d.sections.bar = "square 1-1/4 x 0.120")),
    filled(bars(), (d) => (d.sections.bar = "square 1 x 0.120")),
  ],
  // Posts 2 in apart leave 1/2 in: one bar of 3/4 in has no room, one of 3/8 in has.
  [
    "infill-no-room",
    filled(bars({ clear: "1/4" }), (d) => {
      d.sections.bar = "square bar 3/4";
      d.legs[1].posts.at[1] = "5";
    }),
    filled(bars({ clear: "1/4" }), (d) => {
      d.sections.bar = "square bar 3/8";
      d.legs[1].posts.at[1] = "5";
    }),
  ],
  [
    "infill-too-many",
    filled(bars({ clear: "0.01" }), (d) => (d.sections.bar = "round bar 1/16")),
    filled(bars()),
  ],
  ["bar-without-seat", held(50), held(60)],
];

describe("findings of reading infill", () => {
  it.each(READING)("%s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });
});

describe("findings of laying infill out", () => {
  it.each(LAYOUT)("%s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });

  it("say where, the numbers and what to do, and judge nothing", () => {
    for (const [code, bad] of LAYOUT) {
      for (const found of laidOut(bad).diagnostics.filter((d) => d.code === code)) {
        expect(found.path).toMatch(/^(infill|legs\[\d+\]\.infill)$/);
        expect(found.message).toMatch(/^Infill between P\d and P\d.*expected .*got /);
        expect(found.hint.length).toBeGreaterThan(10);
        expect(`${found.message}${found.hint}`).not.toMatch(/NaN|Infinity|undefined|complian|allowed|legal/i);
      }
    }
  });

  it("leave out the bay they are about and fill the others", () => {
    const layout = laidOut(filled(bars(), (d) => delete d.legs[1].undersides));
    expect(layout.report.infill.length).toBeGreaterThan(2);
    expect(infillOf(layout, 6)).toEqual([]);
    expect(infillOf(layout, 1)).toHaveLength(7);
  });
});
