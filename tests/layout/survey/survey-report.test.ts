/**
 * What a surveyed flight has to say: ties and the reading that parts them, the reading that helps most, lines and
 * uncertainties, against shared/demo-survey.json, against a search over every candidate, and by doing what it advises.
 */
import { describe, expect, it } from "vitest";
import {
  adjustReadings,
  candidatesOn,
  quantityOf,
  readingSigma,
  readSurveys,
  sheetId,
  surveyReport,
  surveyStair,
} from "../../../src/layout/index.js";
import { DEMO, demo } from "./survey-cases.js";
import { surveyed, withBlunder, withHeights } from "./surveyed.js";

const of = (document: unknown) => readSurveys(document).flights[0]!;
const FIXED = [
  { axis: "z", point: 0, value: 0 },
  { axis: "x", point: 1, value: 0 },
] as const;

describe("a suspect", () => {
  it("that stands alone needs no reading to part it", () => {
    const [own, ...others] = of(withBlunder()).suspects;
    expect(own).toMatchObject({ ids: ["R8"], split: null });
    expect(others).toEqual([]);
  });

  it("that cannot be told apart comes with the reading that does", () => {
    const [own] = of(withHeights(4, 7, 10, 13)).suspects;
    expect(own?.ids).toEqual(demo.adjust.heightsAt4_7_10_13only.tiedWith);
    const { candidate, groups } = own!.split!;
    expect(groups.flat().sort()).toEqual([...own!.ids].sort());
    expect(groups.length).toBeGreaterThan(1);
    // Taken, as the true stair has it, it leaves R8 in the group it points to.
    const sound = DEMO.find((reading) => reading.id === candidate.id)!;
    const heights = [4, 7, 10, 13];
    const more = [
      ...DEMO.filter((one) => one.kind !== "height" || heights.includes(Number(one.to))),
      { ...candidate, value: sound.value },
    ];
    const after = surveyStair(more).adjustment!.worst!;
    expect(after.ids).toContain("R8");
    expect(after.ids.length).toBeLessThan(own!.ids.length);
  });

  it("has no such reading made up: every candidate is an edge that a hook finds", () => {
    const { adjustment } = surveyStair(DEMO);
    const all = candidatesOn(adjustment!, 13, "II");
    expect(new Set(all.map((own) => own.id)).size).toBe(all.length);
    const wrong = all.filter(({ kind, from, to }) => {
      if (kind === "height") return from !== 0;
      if (kind === "rise" || kind === "run") return to !== from + 1;
      return kind !== "slope" || from < 1;
    });
    expect(wrong).toEqual([]);
    expect(all.map((own) => own.id)).toEqual(expect.arrayContaining(["H13", "R13", "G12", "S1-13", "S7-13"]));
  });
});

describe("the next reading", () => {
  it("is the best of all candidates, each of them tried", () => {
    const report = of(surveyed());
    const kept = DEMO.filter((own) => own.id !== "R8");
    const { adjustment } = surveyStair(DEMO, { without: ["R8"] });
    const top = { kind: "slope", from: 1, to: 13 } as const;
    // The uncertainty does not depend on what is read: each candidate is taken as it should read, and all adjusted anew.
    const tried = candidatesOn(adjustment!, 13, "II").map((own) => {
      const value = quantityOf(adjustment!, own).value;
      const found = adjustReadings([...kept, { ...own, id: "X", value }], { fixed: FIXED });
      return { id: own.id, sigma: found.ok ? quantityOf(found.value, top).sigma : Number.POSITIVE_INFINITY };
    });
    const best = tried.reduce((one, other) => (other.sigma < one.sigma ? other : one));
    expect(report.next?.candidate.id).toBe(best.id);
    expect(report.next!.sigmaAfter).toBeCloseTo(best.sigma, 6);
    expect(report.next!.sigmaNow / 25.4).toBeCloseTo(demo.adjust.withoutR8.sigmaSlope, 4);
  });

  it("says whether it was taken before", () => {
    expect(of(surveyed()).next).toMatchObject({ again: true, candidate: { id: "S1-13" } });
    const fewer = surveyed((survey) => {
      survey.readings = survey.readings.filter((own: { kind: string }) => own.kind !== "slope");
    });
    expect(of(fewer).next).toMatchObject({ again: false, candidate: { id: "S1-13" } });
  });

  it("is as good as others of its kind were, else as the tape and the hand allow", () => {
    const { adjustment } = surveyStair([
      { id: "R1", kind: "rise", to: 1, value: 190, sigma: 0.4 },
      { id: "R2", kind: "rise", from: 1, to: 2, value: 192, sigma: 0.7 },
      { id: "G1", kind: "run", from: 1, to: 2, value: 280 },
    ]);
    const sigma = (id: string) => candidatesOn(adjustment!, 2, "I").find((own) => own.id === id)?.sigma;
    expect(sigma("R2")).toBe(0.7);
    expect(sigma("H2")).toBe(readingSigma({ kind: "height", to: 2 }, 382, "I"));
    expect(sigma("H1")).toBeDefined();
    // A height hung from nosing 1 is its riser: not asked for twice.
    expect(sigma("R1")).toBeUndefined();
  });
});

describe("names on the sheet", () => {
  it("are those of the demo survey", () => {
    for (const own of DEMO) {
      expect(sheetId({ kind: own.kind as "rise", from: Number(own.from), to: Number(own.to) })).toBe(own.id);
    }
    expect(sheetId({ kind: "level", from: 1, to: 4 })).toBe("L1-4");
    expect(sheetId({ kind: "rise", from: 1, to: 4 })).toBe("R1-4");
    expect(sheetId({ kind: "run", from: 1, to: 4 })).toBe("G1-4");
    expect(sheetId({ kind: "distance", from: 1, to: 4 })).toBe("D4");
  });
});

describe("lines and nosings", () => {
  it("are absent where a step goes back, and the rest is still told", () => {
    const readings = [
      { id: "R1", kind: "rise", to: 1, value: 190 },
      { id: "H2", kind: "height", to: 2, value: 180 },
      { id: "G1", kind: "run", from: 1, to: 2, value: 280 },
    ] as const;
    const found = surveyStair(readings);
    expect(found.nosings).toBeUndefined();
    expect(found.diagnostics[0]).toMatchObject({ code: "survey-step-back", severity: "error" });
    const terms = { tape: "II", limit: 2.5, fit: "least-miss", leftOut: [] } as const;
    const report = surveyReport("stair", found.adjustment!, readings, terms);
    expect(report.lines).toBeNull();
    expect(report.nosings.map((own) => [own.height, own.missLeastMiss])).toEqual([
      [190, null],
      [180, null],
    ]);
  });

  it("have uncertainties of the adjusted coordinates, 0 at the datum", () => {
    const { nosings } = of(surveyed());
    const { adjustment } = surveyStair(DEMO, { without: ["R8"] });
    expect(nosings[0]?.runSigma).toBe(0);
    const z13 = adjustment!.coordinates.find((own) => own.axis === "z" && own.point === 13);
    expect(nosings[12]?.heightSigma).toBeCloseTo(z13!.sigma, 12);
    // Two readings of one height, both good for s: together s/√2 (JCGM 100:2008, 4.2.3).
    const two = surveyStair([
      { id: "R1", kind: "rise", to: 1, value: 190, sigma: 1 },
      { id: "H1", kind: "height", to: 1, value: 191, sigma: 1 },
      { id: "R2", kind: "rise", from: 1, to: 2, value: 190, sigma: 1 },
      { id: "G1", kind: "run", from: 1, to: 2, value: 280, sigma: 1 },
    ]);
    const z1 = two.adjustment!.coordinates.find((own) => own.axis === "z" && own.point === 1);
    expect(z1).toMatchObject({ value: expect.closeTo(190.5, 9), sigma: expect.closeTo(Math.SQRT1_2, 9) });
  });

  it("tell nothing of a reading that was left out where no other reaches", () => {
    const readings = [
      ...(["rise", "run"] as const).flatMap((kind) =>
        [1, 2].map((to) => ({
          id: `${kind}${to}`,
          kind,
          from: kind === "run" ? to : to - 1,
          to: kind === "run" ? to + 1 : to,
          value: 200,
        })),
      ),
      { id: "R3", kind: "rise" as const, from: 2, to: 3, value: 200 },
      { id: "R4", kind: "rise" as const, from: 3, to: 4, value: 999 },
    ];
    const found = surveyStair(readings, { without: ["R4"] });
    const terms = { tape: "II", limit: 2.5, fit: "least-miss", leftOut: found.leftOut } as const;
    const report = surveyReport("stair", found.adjustment!, readings, terms);
    expect(report.notCounted).toEqual([{ id: "R4", kind: "rise", value: 999, should: null }]);
  });
});
