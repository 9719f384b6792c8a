/**
 * Any survey is answered: a stair of four risers with a landing in plan, with one to three of its values replaced by whatever a
 * hand may type, or any JSON. Nothing throws, nothing is no number, and a stair that is accepted climbs.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layOut, parseDesign, readSurveys, surveySheet } from "../../../src/layout/index.js";
import { landingSheet, sheetReadings } from "../../../src/layout/survey/survey-sheet.js";
import { planSurveyText, surveyText } from "../../../src/shop/index.js";
import { example, type Loose } from "../designs.js";

/** Every step 180 by 270, the landing 3 by 4 m. */
function small(): Loose {
  return example((document) => {
    const readings = sheetReadings(surveySheet(4)).map((own) => {
      const [up, along] = [180 * (own.to - own.from), 270 * (own.to - own.from)];
      const value = own.kind === "slope" ? Math.hypot(up, along) : own.kind === "run" ? along : up;
      return { ...own, value: Math.round(value), sigma: 1 };
    });
    document.unit = "mm";
    document.stair = { survey: { without: ["R3"], limit: 2.5, tape: "II", fit: "least-miss", readings } };
    const plan = landingSheet().map((own) => ({
      ...own,
      value: own.kind === "diagonal" ? 5000 : own.id === "A-B" || own.id === "C-D" ? 4000 : 3000,
    }));
    document.plan = {
      readings: [
        ...plan,
        { id: "A", kind: "corner", at: "A", from: "B", to: "D", value: 90 },
        { id: "W", kind: "offset", at: "C", from: "A", to: "B", value: 3000 },
      ],
    };
    document.sections = { rail: "round 48.3 x 3.2", post: "round 42.4 x 3.2" };
    document.rails = [{ role: "top", section: "rail" }];
    document.foot = undefined;
    document.endPosts = undefined;
    document.legs = [
      { along: "stair", top: 1000, heights: { least: 990, most: 1010 }, posts: {} },
      { along: "landing", top: 1000, length: { survey: ["A", "B"] }, posts: { at: [100] } },
    ];
  });
}

const paths: (string | number)[][] = [];
const walk = (value: Loose, path: (string | number)[]) => {
  if (path.length > 1) paths.push(path);
  if (typeof value !== "object" || value === null) return;
  for (const key of Object.keys(value)) walk(value[key], [...path, Array.isArray(value) ? Number(key) : key]);
};
const whole = small();
for (const key of ["stair", "plan", "legs"]) walk(whole[key], [key]);

const typed = fc.oneof(
  fc.jsonValue(),
  fc.double({ min: -1e7, max: 1e7 }),
  fc.integer({ min: -3, max: 12 }),
  fc.constantFrom(
    "7 1/2 in",
    "0",
    "1e3",
    "A",
    "B",
    "Q",
    "rise",
    "height",
    "slope",
    "run",
    "level",
    "side",
    "R1",
  ),
);

describe("any survey", () => {
  it("is sound as it stands", () => {
    expect(parseDesign(small()).diagnostics).toEqual([]);
  });

  it("is answered, whatever is typed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...paths), typed), { minLength: 1, maxLength: 3 }),
        (changes) => {
          const document = small();
          for (const [path, value] of changes) {
            const parent = path
              .slice(0, -1)
              .reduce(
                (own, key) => (typeof own === "object" && own !== null ? own[key] : undefined),
                document,
              );
            if (typeof parent === "object" && parent !== null) parent[path.at(-1)!] = value;
          }
          const read = parseDesign(document);
          for (const found of read.diagnostics)
            expect(`${found.code}${found.message}${found.hint}`).not.toMatch(/undefined|\[object|NaN/);
          expect(read.ok || read.diagnostics.some((own) => own.severity === "error")).toBe(true);
          const { flights, plan } = readSurveys(document);
          const style = { job: "", unit: "mm", denominator: 32 } as const;
          for (const own of flights) expect(surveyText(own, style)).not.toMatch(/NaN|undefined/);
          if (plan) expect(planSurveyText(plan, style)).not.toMatch(/NaN|undefined/);
          if (!read.ok) return;
          const { stair } = read.value;
          (stair.nosings ?? []).forEach((own, i, all) => {
            expect(own.height).toBeGreaterThan(all[i - 1]?.height ?? 0);
            expect(own.run).toBeGreaterThan(all[i - 1]?.run ?? -1);
          });
          expect(Number.isFinite(layOut(read.value).report.pitch)).toBe(true);
        },
      ),
      { numRuns: 600 },
    );
  }, 60_000);
});
