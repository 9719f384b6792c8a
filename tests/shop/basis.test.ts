/** What the papers rest on: counted, taped, surveyed; with the survey's own figures from shared/demo-survey.json. */
import { describe, expect, it } from "vitest";
import { buildGuard } from "../../src/layout/index.js";
import { basisText, settingOutText } from "../../src/shop/index.js";
import { example, type Loose } from "../layout/designs.js";
import { demo } from "../layout/survey/survey-cases.js";
import { metric, surveyed, withBlunder, withHeights } from "../layout/survey/surveyed.js";

const reportOf = (document: Loose) => buildGuard(document).report!;
const basis = (document: Loose) => basisText(reportOf(document));
const taped = (document: Loose) => {
  document.stair = {
    nosings: Array.from({ length: 13 }, (_, i) => ({ run: 10.625 * i, height: 7.5625 * (i + 1) })),
  };
};

describe("basisText", () => {
  it("says that steps were counted, and that this is no measuring", () => {
    expect(basis(example())).toBe(
      "counted steps; all other figures as typed into the design document. No survey: counted steps are not measured steps.",
    );
  });

  it("says that nosings were taped and that nothing checked them", () => {
    expect(basis(example(taped))).toBe(
      "nosings taped one by one, none checked; all other figures as typed into the design document.",
    );
  });

  it("says which survey, what of it counts, and how much of it checks the rest", () => {
    expect(basis(surveyed())).toBe(
      "survey of 2 March of 40 readings, without R8, 15 of them redundant; all other figures as typed into the design document.",
    );
    expect(basis(withBlunder())).toContain("of 41 readings, 16 of them redundant;");
    const bare = surveyed((survey) => {
      delete survey.date;
      delete survey.without;
      survey.readings = survey.readings.filter(({ kind }: Loose) => kind === "rise" || kind === "run");
    });
    expect(basis(bare)).toContain(
      "survey (no date given) of 25 readings, none of them redundant: nothing is checked;",
    );
  });

  it("says it flight by flight", () => {
    const { survey } = surveyed().stair;
    const two = example((document) => {
      delete document.endPosts;
      delete document.legs[1].end;
      document.legs.push({
        along: "stair",
        top: "42",
        undersides: { low: "1/2" },
        stair: { survey },
        posts: { onTreads: [2], behindNosing: "3" },
      });
    });
    expect(basis(two)).toMatch(
      /^stair: counted steps; stair-2: survey of 2 March of .* document\. Counted steps are not/,
    );
  });

  it("keeps a date on one line", () => {
    expect(basis(surveyed((survey) => (survey.date = "2\nMarch\u001b[31m")))).not.toMatch(/\p{Cc}/u);
  });
});

describe("the set-out paper", () => {
  const text = (document: Loose, unit: "in" | "mm" = "in") =>
    settingOutText(reportOf(document), { unit, denominator: 32 }).join("\n").replace(/\n\s+/g, " ");

  it("says what the survey says of itself", () => {
    const { chi2, dof, slope1to13, sigmaSlope, worst, studentised } = demo.adjust.withoutR8;
    const own = text(surveyed());
    expect(own).toContain(`40 readings, LEFT OUT R8: tape it again; chi2 ${chi2.toFixed(2)} on ${dof}`);
    expect(own).toContain(`worst is ${worst} at ${Math.abs(studentised).toFixed(2)} times`);
    const [, length, sigma] =
      /top nosing along the slope \S+ \(([\d.]+)\), standard uncertainty ([\d.]+) in/.exec(own) ?? [];
    expect(Math.abs(Number(length) - slope1to13)).toBeLessThan(0.00056);
    expect(Number(sigma)).toBeCloseTo(sigmaSlope, 3);
    expect(own).not.toMatch(/SUSPECT/);
    expect(text(withBlunder())).toMatch(
      /worst is R8 at 8\.69 times .*; 1 SUSPECT: tape again before cutting/,
    );
    expect(text(withHeights(13))).toContain("worst is one of R8, R9, R10, R11, R12, R13 at 3.51 times");
  });

  it("gives each nosing's miss from the line, and whose line it is", () => {
    const own = text(surveyed((survey) => (survey.fit = "least-squares")));
    const misses = [...own.matchAll(/^Nosing .* ([\d.]+) in (above|below) the line$/gm)].map(
      ([, size, way]) => Number(size) * (way === "above" ? 16 : -16),
    );
    demo.nosingOffsetsFromFit_16ths.forEach((wanted, i) => {
      // The script prints tenths of a sixteenth, the paper thousandths of an inch.
      expect(Math.abs(misses[i]! - wanted)).toBeLessThan(0.06);
    });
    expect(own).toMatch(/surveyed nosings, worst .* off the line of least squares/);
    expect(text(surveyed())).toMatch(/surveyed nosings, worst .* off the line;/);
    expect(text(metric(), "mm")).toMatch(/\d\.\d\d mm (above|below) the line/);
    expect(text(example(taped))).toMatch(/taped nosings.*0\.000 in (above|below) the line/s);
    expect(text(example())).not.toMatch(/the line/);
  });
});
