/**
 * A survey typed into a design document: the numbers of shared/demo-survey.json (invented data, computed by an independent
 * script) by the way through schema, tape language and layout; line and height band by closed forms.
 */
import { describe, expect, it } from "vitest";
import {
  buildGuard,
  designInShop,
  layOut,
  parseDesign,
  quantityOf,
  readSurveys,
} from "../../../src/layout/index.js";
import { example, type Loose } from "../designs.js";
import { demo, mm } from "./survey-cases.js";
import { metric, surveyed, withBlunder, withHeights } from "./surveyed.js";

/** The stair of a document that reads. */
function stairOf(document: Loose) {
  const read = parseDesign(document);
  if (!read.ok) throw new Error(read.diagnostics.map((own) => own.message).join("\n"));
  const { stair } = read.value;
  if (stair.nosings === undefined || stair.survey === undefined) throw new Error("no survey");
  return { ...stair, survey: stair.survey, diagnostics: read.diagnostics };
}
const report = (document: Loose) => readSurveys(document).flights[0]!;

describe("the surveyed example", () => {
  it("holds the readings of the demo survey, word for word", () => {
    const { readings, without } = surveyed().stair.survey;
    expect(readings).toEqual(demo.readings);
    expect(without).toEqual([demo.planted.id]);
  });

  const cases = [
    ["all", withBlunder()],
    ["withoutR8", surveyed()],
    ["heightsAt4_7_10_13only", withHeights(4, 7, 10, 13)],
    ["floorToFloorOnly", withHeights(13)],
  ] as const;

  it.each(cases)("has the independent numbers: %s", (key, document) => {
    const wanted = demo.adjust[key];
    const { survey } = stairOf(document);
    expect(Math.abs(survey.chi2 - wanted.chi2)).toBeLessThanOrEqual(0.0051);
    expect(survey.dof).toBe(wanted.dof);
    const slope = quantityOf(survey, { kind: "slope", from: 1, to: 13 });
    expect(slope.value / 25.4).toBeCloseTo(wanted.slope1to13, 4);
    expect(slope.sigma / 25.4).toBeCloseTo(wanted.sigmaSlope, 4);
    const { lines, worst } = report(document);
    expect(lines?.leastSquares.pitch).toBeCloseTo(wanted.fitPitchDeg, 4);
    expect(worst?.ids).toEqual(wanted.tiedWith);
    expect(Math.abs((worst?.studentised ?? 0) - wanted.studentised)).toBeLessThanOrEqual(0.0051);
  });

  it("as it was taped warns of R8 alone, at its reading", () => {
    const { diagnostics } = stairOf(withBlunder());
    expect(diagnostics.map((own) => [own.code, own.severity, own.path, own.members])).toEqual([
      ["survey-suspect", "warning", "stair.survey.readings[7]", ["R8"]],
    ]);
    expect(diagnostics[0]?.message).toMatch(/R8 does not agree .* \(8\.7 times/);
    expect(diagnostics[0]?.hint).toBe("Tape it again. `without` leaves a reading out until then.");
    // It is built all the same, and the warning is among those of the papers.
    const built = buildGuard(withBlunder());
    expect(built.report?.flights[0]?.survey?.suspects).toBe(1);
    expect(built.diagnostics.map((own) => own.code)).toContain("survey-suspect");
  });

  it("as it is shipped says nothing of the survey, and what R8 should have read", () => {
    const { diagnostics, terms } = stairOf(surveyed());
    expect(diagnostics).toEqual([]);
    expect(terms?.leftOut.map((own) => own.id)).toEqual(["R8"]);
    const [own] = report(surveyed()).notCounted;
    expect(own!.value / 25.4).toBe(mm("8 7/16") / 25.4);
    expect(own!.should! / 25.4).toBeCloseTo(demo.adjust.withoutR8.R8adjusted, 4);
  });

  it("has every nosing as far off the line of least squares as the script says", () => {
    const { nosings } = report(surveyed());
    const sixteenths = nosings.map((own) => (own.missLeastSquares! * 16) / 25.4);
    demo.nosingOffsetsFromFit_16ths.forEach((wanted, i) => {
      // Printed to a tenth.
      expect(Math.abs(sixteenths[i]! - wanted)).toBeLessThanOrEqual(0.051);
    });
    expect(nosings).toHaveLength(13);
  });

  it("builds on the nosings that were adjusted", () => {
    const { nosings, survey } = stairOf(surveyed());
    const built = buildGuard(surveyed());
    expect(new Set(built.diagnostics.map((own) => own.code))).toEqual(new Set(["post-wider-than-rail"]));
    expect(built.pieces.map((own) => own.status)).not.toContain("blocked");
    const top = survey.points.find((own) => own.point === 13)!;
    // Post P3 is on tread 7, which is so far below the landing.
    const seven = survey.points.find((own) => own.point === 7)!;
    const post = built.report?.posts.find((own) => own.tread === 7);
    expect(post?.baseZ).toBeCloseTo(seven.z! - top.z!, 9);
    expect(post!.x - post!.offset).toBeCloseTo(seven.x! - top.x!, 9);
    expect(nosings[0]).toEqual({ run: 0, height: survey.points[1]!.z });
  });
});

describe("what a report says of a surveyed flight", () => {
  it("lists every step's miss from the line the rail follows, and the rail's heights by them", () => {
    const { report: found } = buildGuard(surveyed());
    const [flight] = found!.flights;
    expect(flight?.misses).toHaveLength(13);
    const worst = Math.max(...flight!.misses.map(Math.abs));
    expect(worst).toBeCloseTo(flight!.worstMiss, 9);
    // Chebyshev: the greatest miss of the best line is reached three times, with alternating signs.
    const extreme = flight!.misses.filter((own) => Math.abs(own) > worst - 1e-9);
    expect(extreme.map(Math.sign)).toEqual([1, -1, 1]);
    found!.nosings.slice(0, 12).forEach((own, i) => {
      expect(own.railTop + flight!.misses[i]!).toBeCloseTo(mm("42"), 9);
    });
  });

  it("says which readings count, how they agree, and which fits worst", () => {
    const [flight] = buildGuard(surveyed()).report!.flights;
    const { withoutR8 } = demo.adjust;
    expect(flight?.survey).toMatchObject({ readings: 40, leftOut: ["R8"], dof: 15, suspects: 0, limit: 2.5 });
    expect(flight?.survey?.worst?.ids).toEqual(withoutR8.tiedWith);
    expect(flight!.survey!.slope.value / 25.4).toBeCloseTo(withoutR8.slope1to13, 4);
  });

  it("rests its assumptions on what was done", () => {
    const of = (document: Loose) => buildGuard(document).report!.assumptions.join(" ");
    expect(of(surveyed())).toMatch(/come from a survey/);
    expect(of(surveyed())).not.toMatch(/taped one by one|steps are counted/);
    expect(of(example())).toMatch(/steps are counted/);
  });

  it("has no miss on counted steps", () => {
    const [flight] = buildGuard(example()).report!.flights;
    expect(flight?.misses).toEqual(Array(13).fill(0));
    expect(flight?.survey).toBeUndefined();
  });
});

describe("the terms of a survey", () => {
  it("lay the line of least squares when asked", () => {
    const along = (own: string) => {
      const read = parseDesign(surveyed((survey) => (survey.fit = own)));
      return layOut((read as Extract<typeof read, { ok: true }>).value).report;
    };
    expect(along("least-squares").pitch).toBeCloseTo(demo.adjust.withoutR8.fitPitchDeg, 4);
    const [least, squares] = [along("least-miss").flights[0]!, along("least-squares").flights[0]!];
    expect(least.worstMiss).toBeLessThan(squares.worstMiss);
    const sum = (own: { misses: readonly number[] }) => own.misses.reduce((all, miss) => all + miss ** 2, 0);
    expect(sum(squares)).toBeLessThan(sum(least));
  });

  it("take the tape's class and the limit of suspicion", () => {
    const first = (document: Loose) => stairOf(document).survey.readings[0]!.sigma;
    const tape = (own: string) =>
      surveyed((survey) => {
        for (const reading of survey.readings) delete reading.sigma;
        survey.tape = own;
      });
    // R1 is under a metre: 2014/32/EU class I 0.2 mm, III 1.0 mm; over √3, with 1 mm of hand.
    expect(first(tape("I"))).toBeCloseTo(Math.hypot(1, 0.2 / Math.sqrt(3)), 9);
    expect(first(tape("III"))).toBeCloseTo(Math.hypot(1, 1 / Math.sqrt(3)), 9);
    const strict = stairOf(surveyed((survey) => (survey.limit = 1.6))).diagnostics;
    expect(strict.map((own) => own.members)).toEqual([["R12"]]);
    expect(stairOf(surveyed((survey) => (survey.limit = 1.7))).diagnostics).toEqual([]);
  });

  it("take the shop's tape where the survey names none", () => {
    const bare = surveyed((survey) => {
      for (const own of survey.readings) delete own.sigma;
    });
    const first = (document: unknown) => stairOf(document as Loose).survey.readings[0]!.sigma;
    const shop = { fitGap: 0, tape: "I" } as const;
    expect(first(designInShop(bare, shop))).toBeCloseTo(Math.hypot(1, 0.2 / Math.sqrt(3)), 9);
    expect(bare.stair.survey.tape).toBeUndefined();
    bare.stair.survey.tape = "III";
    expect(first(designInShop(bare, shop))).toBeCloseTo(Math.hypot(1, 1 / Math.sqrt(3)), 9);
    const upper = { legs: [{ stair: { survey: { readings: [] } } }, { along: "landing" }, 3] };
    expect(designInShop(upper, shop)).toEqual({
      legs: [{ stair: { survey: { readings: [], tape: "I" } } }, { along: "landing" }, 3],
    });
  });

  it("are those of each flight of a guard", () => {
    const { survey } = surveyed().stair;
    const twice = example((document) => {
      document.legs[1].end = undefined;
      document.legs.push({ along: "stair", top: "42", id: "upper", stair: { survey } });
      document.legs[1].posts = { at: ["3"] };
    });
    const all = readSurveys(twice);
    expect(all.flights.map((own) => own.name)).toEqual(["upper"]);
    const found = parseDesign(twice);
    expect(found.ok && found.value.legs[2]?.stair?.nosings).toHaveLength(13);
    expect(found.ok && found.value.stair.nosings).toBeUndefined();
  });

  it("do not change with the document's unit", () => {
    const [inch, metre] = [report(surveyed()), report(metric())];
    metre.nosings.forEach((own, i) => {
      // Readings rounded to a millimetre: half of it in each, less after the adjustment.
      expect(Math.abs(own.height - inch.nosings[i]!.height)).toBeLessThan(1);
    });
    expect(readSurveys(metric()).unit).toBe("mm");
  });
});
