/**
 * Landings surveyed in plan: shop case i07 (shared/shop-cases.json, computed by an independent script) by the way through the
 * document, the 3-4-5 triangle by hand, and random landings whose corners are known.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import table from "../../../shared/shop-cases.json" with { type: "json" };
import {
  buildGuard,
  type PlanReading,
  parseDesign,
  planLength,
  planTurn,
  readSurveys,
  surveyPlan,
} from "../../../src/layout/index.js";
import { basisText, settingOutText } from "../../../src/shop/index.js";
import { cli } from "../../cli/world.js";
import { shopCase } from "../cases.js";
import { example, type Loose } from "../designs.js";

const quad = table.cases.find((own) => own.id.startsWith("i07")) as unknown as {
  inputs: { observations: { pair: string; value: number; sigma: number }[] };
  expected: { B: number[]; C: number[]; D: number[] };
};
const READINGS = quad.inputs.observations.map(({ pair, value, sigma }) => ({
  id: `${pair[0]}-${pair[1]}`,
  kind: pair === "AC" || pair === "BD" ? "diagonal" : "side",
  from: pair[0],
  to: pair[1],
  value: `${value} mm`,
  sigma: `${sigma} mm`,
}));

/** A guard up the stair and along two edges of the landing, B to A to D, that was surveyed as case i07. */
function landing(change: (document: Loose) => void = () => undefined): Loose {
  return example((document) => {
    delete document.endPosts;
    document.plan = { date: "2 March", readings: JSON.parse(JSON.stringify(READINGS)) };
    document.legs[1].length = { survey: ["B", "A"] };
    delete document.legs[1].end;
    document.legs.push({
      along: "landing",
      turn: { angle: { survey: ["B", "A", "D"], to: "right" } },
      length: { survey: ["A", "D"] },
      top: "42",
      undersides: { low: "2" },
      posts: { at: ["20"] },
    });
    change(document);
  });
}

describe("a landing surveyed in plan", () => {
  it("gives a leg its length and a corner its turn: i07", () => {
    const read = parseDesign(landing());
    expect(read.diagnostics.map((own) => own.code)).toEqual([]);
    const { legs, plan } = (read as Extract<typeof read, { ok: true }>).value;
    const { B, D } = quad.expected;
    expect(legs[1]?.length).toBeCloseTo(Math.hypot(B[0]!, B[1]!), 6);
    expect(legs[2]?.length).toBeCloseTo(Math.hypot(D[0]!, D[1]!), 6);
    // The corner is 89.975 degrees; going on from B over A to D turns by the rest of a straight line.
    shopCase("i07").near("angle_A_deg", 180 + legs[2]!.turn!.angle);
    expect(legs[2]!.turn!.angle).toBeLessThan(0);
    expect(plan?.taken.map((own) => [own.leg, own.what, own.corners.join("")])).toEqual([
      ["landing", "length", "BA"],
      ["landing-2", "length", "AD"],
      ["landing-2", "turn", "BAD"],
    ]);
    expect(Math.min(...plan!.taken.map((own) => own.sigma))).toBeGreaterThan(0);
  });

  it("builds the guard that the same figures, typed, build", () => {
    const surveyed = buildGuard(landing());
    const read = parseDesign(landing());
    const { legs } = (read as Extract<typeof read, { ok: true }>).value;
    const typed = buildGuard(
      landing((document) => {
        delete document.plan;
        document.legs[1].length = `${legs[1]!.length} mm`;
        document.legs[2].length = `${legs[2]!.length} mm`;
        document.legs[2].turn.angle = legs[2]!.turn!.angle;
      }),
    );
    expect(surveyed.diagnostics.map((own) => own.code)).toEqual(typed.diagnostics.map((own) => own.code));
    const lengths = (of: typeof typed) => of.pieces.map((own) => own.lengths.blank.value);
    lengths(typed).forEach((own, i) => {
      expect(lengths(surveyed)[i]).toBeCloseTo(own, 6);
    });
    expect(typed.pieces.length).toBeGreaterThan(10);
  });

  it("is told on the papers", () => {
    const report = buildGuard(landing()).report!;
    const text = settingOutText(report, { unit: "mm", denominator: 32 }).join("\n").replace(/\n\s+/g, " ");
    expect(text).toContain("Survey   plan: 6 readings; chi2 0.70 on 1 redundant");
    expect(text).toContain("length of landing, B to A: 2400.4, standard uncertainty ");
    expect(text).toContain("turn of landing-2, at A: 90.02° to the right, standard uncertainty ");
    expect(basisText(report)).toBe(
      "counted steps; landing: length, landing-2: length, landing-2: turn by a survey in plan of 2 March of 6 readings, 1 of them redundant; all other figures as typed into the design document. Counted steps are not measured steps.",
    );
  });

  it("turns to the side that is said, for a tape tells neither", () => {
    const readings: PlanReading[] = [
      { id: "a", kind: "side", from: "A", to: "B", value: 3000 },
      { id: "b", kind: "side", from: "B", to: "C", value: 4000 },
      { id: "c", kind: "diagonal", from: "A", to: "C", value: 5000 },
    ];
    const { adjustment } = surveyPlan(readings);
    // 3-4-5: square at B.
    expect(planTurn(adjustment!, ["A", "B", "C"], "left").value).toBeCloseTo(90, 9);
    expect(planTurn(adjustment!, ["A", "B", "C"], "right").value).toBeCloseTo(-90, 9);
    // At A the corner is atan(4/3).
    const sharp = 180 - (Math.atan2(4, 3) * 180) / Math.PI;
    expect(planTurn(adjustment!, ["B", "A", "C"], "left").value).toBeCloseTo(sharp, 9);
    expect(planLength(adjustment!, ["C", "A"]).value).toBeCloseTo(5000, 9);
  });

  it("finds corners again, wherever they are, from sides, diagonals, angles and walls", () => {
    const at = fc.double({ min: -0.35, max: 0.35, noNaN: true });
    fc.assert(
      fc.property(fc.array(at, { minLength: 10, maxLength: 10 }), (off) => {
        // A square-ish landing of 2 to 3 m with a point E on it, every corner moved by up to a third of a metre.
        const grid = { A: [0, 0], B: [2.6, 0], C: [2.6, 2], D: [0, 2], E: [1.2, 0.9] } as const;
        const point = Object.fromEntries(
          Object.entries(grid).map(([name, [x, y]], i) => [
            name,
            [1000 * (x + off[2 * i]!), 1000 * (y + off[2 * i + 1]!)],
          ]),
        ) as Record<string, [number, number]>;
        const away = (p: string, q: string) =>
          Math.hypot(point[q]![0] - point[p]![0], point[q]![1] - point[p]![1]);
        const heading = (p: string, q: string) =>
          Math.atan2(point[q]![1] - point[p]![1], point[q]![0] - point[p]![0]);
        const side = (from: string, to: string): PlanReading => ({
          id: from + to,
          kind: "side",
          from,
          to,
          value: away(from, to),
        });
        const corner = (cos: number) => (Math.acos(cos) * 180) / Math.PI;
        const wall = (p: string, q: string, r: string): PlanReading => ({
          id: `${p}off${q}${r}`,
          kind: "offset",
          at: p,
          from: q,
          to: r,
          value: Math.abs(away(q, p) * Math.sin(heading(q, p) - heading(q, r))),
        });
        const readings: PlanReading[] = [
          side("A", "B"),
          side("B", "C"),
          side("A", "C"),
          side("D", "A"),
          {
            id: "angle",
            kind: "corner",
            at: "A",
            from: "B",
            to: "D",
            value: corner(Math.cos(heading("A", "D") - heading("A", "B"))),
          },
          side("C", "D"),
          wall("E", "A", "B"),
          wall("E", "A", "D"),
          side("E", "C"),
        ];
        fc.pre(readings.every((own) => own.value > 20));
        const { adjustment, diagnostics } = surveyPlan(readings);
        expect(diagnostics.filter((own) => own.severity === "error")).toEqual([]);
        expect(adjustment!.chi2).toBeLessThan(1e-6);
        for (const [p, q] of ["BD", "DE", "BE"].map((pair) => [pair[0]!, pair[1]!] as const)) {
          expect(planLength(adjustment!, [p, q]).value).toBeCloseTo(away(p, q), 2);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("names a wall offset that is off", () => {
    // A square of 2 m, taped both ways and from its walls; C is read 40 mm too far from the wall A–B.
    const d = 2000 * Math.SQRT2;
    const lengths = { AB: 2000, BC: 2000, CD: 2000, DA: 2000, AC: d, BD: d };
    const readings: PlanReading[] = [
      ...Object.entries(lengths).map(
        ([pair, value]): PlanReading => ({
          id: pair,
          kind: "side",
          from: pair[0]!,
          to: pair[1]!,
          value,
          sigma: 1,
        }),
      ),
      { id: "wall", kind: "offset", at: "C", from: "A", to: "B", value: 2040, sigma: 1 },
      { id: "wall2", kind: "offset", at: "D", from: "A", to: "B", value: 2000, sigma: 1 },
    ];
    const { diagnostics } = surveyPlan(readings);
    const suspects = diagnostics.filter((own) => own.code === "survey-suspect");
    expect(suspects.map((own) => [own.members, own.path])).toEqual([[["wall"], "readings[6]"]]);
    expect(surveyPlan(readings, { without: ["wall"] }).diagnostics).toEqual([]);
  });
});

describe("a survey in plan is refused", () => {
  const cases: readonly (readonly [string, (d: Loose) => void, string, string, RegExp])[] = [
    [
      "when it is not there",
      (d) => delete d.plan,
      "missing",
      "legs[1].length.survey",
      /survey in plan to take it from, got none.*Add `plan`/,
    ],
    [
      "when it has no such corner",
      (d) => (d.legs[1].length.survey[1] = "E"),
      "survey-unknown-place",
      "legs[1].length.survey[1]",
      /\(A, B, C, D\), got "E"/,
    ],
    [
      "when it has no such corner to turn at",
      (d) => (d.legs[2].turn.angle.survey[1] = "A1"),
      "survey-unknown-place",
      "legs[2].turn.angle.survey[1]",
      /got "A1".*Did you mean `A`/,
    ],
    [
      "when a corner is named twice",
      (d) => (d.legs[2].turn.angle.survey = ["B", "A", "B"]),
      "survey-bad-place",
      "legs[2].turn.angle.survey",
      /3 different corners, got B, A, B/,
    ],
    [
      "when a guard cannot turn so far",
      (d) => (d.legs[2].turn.angle.survey = ["D", "B", "A"]),
      "out-of-range",
      "legs[2].turn.angle.survey",
      /at most 150 degrees, got -153\.4/,
    ],
    [
      "when four sides alone are a linkage: i09",
      (d) => (d.plan.readings = d.plan.readings.slice(0, 4)),
      "survey-undetermined",
      "plan",
      /4 of 5 .*on a landing a diagonal/,
    ],
    [
      "when two corners are one",
      (d) => (d.plan.readings[1].to = "B"),
      "survey-bad-place",
      "plan.readings[1]",
      /corners with names, all different/,
    ],
    [
      "when an angle is none",
      (d) => d.plan.readings.push({ id: "X", kind: "corner", at: "A", from: "B", to: "D", value: -90 }),
      "survey-bad-value",
      "plan.readings[6]",
      /less than 180 degrees, got -90/,
    ],
    [
      "when an offset is none",
      (d) => d.plan.readings.push({ id: "X", kind: "offset", at: "C", from: "A", to: "B", value: 0 }),
      "survey-bad-value",
      "plan.readings[6]",
      /more than 0 mm/,
    ],
    [
      "when a name is left out that is not there",
      (d) => (d.plan.without = ["A-E"]),
      "survey-unknown-reading",
      "plan.without[0]",
      /Did you mean `A-/,
    ],
    [
      "when a length is in another unit",
      (d) => (d.plan.readings[4].value = 2681),
      "survey-units",
      "plan.readings[4]",
      /about 25\.4 times too long\. Units\?/,
    ],
    [
      "when it speaks of nosings",
      (d) => d.plan.readings.push({ id: "R1", kind: "rise", from: 0, to: 1, value: "7" }),
      "wrong-type",
      "plan.readings[6].kind",
      /known values of `kind`, got "rise"/,
    ],
    [
      "when the way of the turn is not said",
      (d) => delete d.legs[2].turn.angle.to,
      "missing",
      "legs[2].turn.angle.to",
      /"left" or "right", got nothing/,
    ],
  ];

  it.each(cases)("%s", (_, change, code, path, words) => {
    const read = parseDesign(landing(change));
    expect(read.ok).toBe(false);
    const errors = read.diagnostics.filter((own) => own.severity === "error");
    expect(errors[0]).toMatchObject({ code, path });
    expect(`${errors[0]?.message} ${errors[0]?.hint}`).toMatch(words);
  });

  it("with the reading named, and the unit asked for", () => {
    const { diagnostics } = parseDesign(landing((d) => (d.plan.readings[4].value = 2681)));
    const units = diagnostics.find((own) => own.code === "survey-units");
    expect(units).toMatchObject({ path: "plan.readings[4]", members: ["A-C"] });
    expect(units?.hint).toMatch(/^Units\? If it was read in millimetres/);
    // A short side that agrees is a short side: C stands 100 mm from B on a landing of 2.4 m.
    const [x, y] = [2400, 2400 / 25.4];
    const short: PlanReading[] = [
      { id: "AB", kind: "side", from: "A", to: "B", value: x },
      { id: "BC", kind: "side", from: "B", to: "C", value: y },
      { id: "AC", kind: "diagonal", from: "A", to: "C", value: Math.hypot(x, y) },
    ];
    expect(surveyPlan(short).diagnostics.map((own) => own.code)).toEqual(["survey-unchecked"]);
  });
});

describe("rakewright survey", () => {
  const survey = (document: unknown) => cli(["survey", "-"], { stdin: JSON.stringify(document) });

  it("prints the survey in plan: corners and residuals of i07", async () => {
    const { code, out } = await survey(
      landing((d) => {
        d.unit = "mm";
      }),
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^SURVEY in plan/);
    for (const name of ["B", "C", "D"] as const) {
      const [x, y] = quad.expected[name];
      const found = new RegExp(`^  ${name} +(-?[\\d.]+) +[\\d.]+ mm +(-?[\\d.]+) `, "m").exec(out);
      // Printed to a tenth of a millimetre.
      expect(Math.abs(Number(found?.[1]) - x!)).toBeLessThan(0.051);
      expect(Math.abs(Number(found?.[2]) - y!)).toBeLessThan(0.051);
    }
    expect(out.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(out).toContain("Measure before you cut.");
  });

  it("says which diagonal would part readings that are tied", async () => {
    // One redundancy ties all six; a wrong one among them cannot be told.
    const wrong = landing((d) => (d.plan.readings[4].value = "2691 mm"));
    const { code, out } = await survey(wrong);
    expect(code).toBe(0);
    expect(out.replace(/\n {9}/g, " ")).toMatch(
      /SUSPECT {2}one of A-B, B-C, C-D, D-A, A-C, B-D is off by .* Or read [A-D]-[A-D] \(diagonal, /,
    );
    expect(readSurveys(wrong).plan?.suspects[0]?.split?.groups.length).toBeGreaterThan(1);
  });
});
