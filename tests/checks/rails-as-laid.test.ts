/**
 * Rails on their stops: ends against the beam's own equation integrated numerically over the supports, spans and pull of the
 * demo guard by hand.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { railSag, railsAsLaid, railTips, STANDARD_GRAVITY, stiffnessOf } from "../../src/checks/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { rectTube, sectionProperties } from "../../src/members/index.js";

const material = stiffnessOf("mild-steel");
const section = rectTube({ width: 38.1, depth: 38.1, wall: 3.05, outerRadius: 0, innerRadius: 0 });

/** Deflection (+ down) and slope of a beam over supports at a and a + L under a load w, by 30,000 steps of y″ = −M/EI. */
function byIntegration(w: number, span: number, [a, b]: readonly [number, number], stiff: number) {
  const total = a + span + b;
  const reaction = (w * total * (a + span - total / 2)) / span;
  const other = w * total - reaction;
  const moment = (x: number) =>
    (-w * x * x) / 2 + reaction * Math.max(0, x - a) + other * Math.max(0, x - a - span);
  const n = 30_000;
  const h = total / n;
  const [turn, y] = [[0], [0]];
  for (let i = 1; i <= n; i++) {
    turn.push(turn[i - 1]! - ((moment((i - 1) * h) + moment(i * h)) / 2 / stiff) * h);
    y.push(y[i - 1]! + ((turn[i - 1]! + turn[i]!) / 2) * h);
  }
  const at = (list: readonly number[], x: number) => {
    const i = Math.min(Math.floor(x / h), n - 1);
    return list[i]! + (list[i + 1]! - list[i]!) * (x / h - i);
  };
  const tilt = (at(y, a + span) - at(y, a)) / span;
  const place = (x: number) => at(y, x) - at(y, a) - tilt * (x - a);
  return {
    drops: [place(0), place(total)],
    slopes: [tilt - turn[0]!, turn[n]! - tilt],
    moments: [moment(a), moment(a + span)].map(Math.abs),
  };
}

describe("railTips", () => {
  it.each([
    [3000, 0, 0],
    [3000, 60, 940],
    [1335, 70, 1358],
    [2000, 1500, 1500],
  ])("are where the beam's equation puts them: %i between, %i and %i past", (span, a, b) => {
    const rail = { section, material, span, slope: 20 };
    const tips = railTips({ ...rail, past: [a, b] });
    const { ix, wElasticX } = sectionProperties(section);
    const wanted = byIntegration(railSag(rail).load, span, [a, b], material.modulus * ix);
    tips.forEach((own, i) => {
      expect(own.drop).toBeCloseTo(wanted.drops[i]!, 4);
      expect((own.slope * Math.PI) / 180).toBeCloseTo(wanted.slopes[i]!, 7);
      expect(own.stress).toBeCloseTo(wanted.moments[i]! / wElasticX, 9);
    });
  });

  it("are the end slope of the bare span where nothing reaches out, turned up", () => {
    const rail = { section, material, span: 4000, slope: 0 };
    const [low, high] = railTips({ ...rail, past: [0, 0] });
    expect(low).toEqual(high);
    expect(low.drop).toBeCloseTo(0, 12);
    expect(low.slope).toBeCloseTo(-railSag(rail).endSlope, 12);
  });

  it("lift the rail off its other stop when its middle is not between the two", () => {
    const lifts = (a: number, b: number) =>
      railTips({ section, material, span: 1000, slope: 0, past: [a, b] }).map((own) => own.lifts);
    expect(lifts(100, 1099)).toEqual([false, false]);
    expect(lifts(100, 1101)).toEqual([false, true]);
    expect(lifts(1500, 0)).toEqual([true, false]);
  });
});

describe("railsAsLaid", () => {
  const document = JSON.parse(readFileSync("examples/pottery-studio.json", "utf8"));
  const { report, pieces } = buildGuard(document);
  const found = railsAsLaid(report!.laid, pieces, { mostSag: 1 });

  it("spans from the first stop to the last, and finds the longest bay", () => {
    const [rake, level] = found as [(typeof found)[0], (typeof found)[0]];
    const [first, last] = [report!.laid[0]!.stops[0]!, report!.laid[0]!.stops.at(-1)!];
    expect(rake.ends.span).toBeCloseTo(
      (last.x - first.x) / Math.cos((report!.laid[0]!.slope * Math.PI) / 180),
      9,
    );
    expect([rake.ends.from, rake.ends.to, rake.on.length]).toEqual(["P1", "P4", 4]);
    // Stops as wide as their posts: P1 is 2 in, the others 1-1/2, so its bay is 1/4 in longer in plan.
    expect([rake.longest.from, rake.longest.to]).toEqual(["P1", "P2"]);
    expect(level.ends.span / 25.4).toBeCloseTo(90.75, 9);
    expect(rake.longest.sag).toBeLessThan(rake.ends.sag / 50);
  });

  it("pulls downhill with its own weight times the sine", () => {
    const rail = pieces.find((own) => own.mark === "R1")!;
    const mass = (sectionProperties(rail.section).massPerMetre * rail.lengths.axis!.value) / 1000;
    const sine = Math.sin((report!.pitch * Math.PI) / 180);
    expect(found[0]!.creep).toBeCloseTo(mass * STANDARD_GRAVITY * sine, 9);
    expect(found[1]!.creep).toBe(0);
  });

  it("says nothing of a rail on one stop or of one that was not built", () => {
    const [rake] = report!.laid;
    expect(railsAsLaid([{ ...rake!, stops: rake!.stops.slice(0, 1) }], pieces, { mostSag: 1 })).toEqual([]);
    expect(railsAsLaid([rake!], [], { mostSag: 1 })).toEqual([]);
  });
});
