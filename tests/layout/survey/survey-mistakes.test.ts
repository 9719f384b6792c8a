/**
 * What goes wrong when a survey is typed in: each mistake by its code, its place in the document, its words, and what the
 * command says of it. Each is one step away from the sound example.
 */
import { describe, expect, it } from "vitest";
import { hasErrors } from "../../../src/kernel/index.js";
import { adjustReadings, parseDesign } from "../../../src/layout/index.js";
import { cli } from "../../cli/world.js";
import type { Loose } from "../designs.js";
import { DEMO } from "./survey-cases.js";
import { find, metric, surveyed } from "./surveyed.js";

type Change = (survey: Loose) => void;
const only = (survey: Loose, kept: (own: Loose) => boolean) => {
  survey.readings = survey.readings.filter(kept);
  delete survey.without;
};
const AT = "stair.survey.readings";

/** What is wrong, change to the example, code and path of the first error, words of its message or hint. */
const ERRORS: readonly (readonly [string, Change, string, string, RegExp])[] = [
  [
    "a negative riser",
    (s) => (find(s, "R4").value = "-7 9/16"),
    "survey-bad-value",
    `${AT}[3]`,
    /Reading R4 \(rise\): expected more than 0 mm, got -192/,
  ],
  [
    "a name twice",
    (s) => (find(s, "R5").id = "R4"),
    "survey-same-id",
    `${AT}[4]`,
    /name of its own for each reading, got "R4" twice/,
  ],
  [
    "no name",
    (s) => delete find(s, "R5").id,
    "missing",
    `${AT}[4].id`,
    /expected a string, got nothing\. Add it/,
  ],
  [
    "a name that is left out and is not there",
    (s) => (s.without = ["R88"]),
    "survey-unknown-reading",
    "stair.survey.without[0]",
    /got "R88".*Did you mean `R8`/,
  ],
  [
    "a kind that is none",
    (s) => (find(s, "R5").kind = "riser"),
    "wrong-type",
    `${AT}[4].kind`,
    /known values of `kind`, got "riser"/,
  ],
  ["a key that is none", (s) => (find(s, "R5").form = 1), "unknown-key", `${AT}[4].form`, /got "form"/],
  ["a length that is none", (s) => (find(s, "R5").value = "7,5"), "bad-length", `${AT}[4].value`, /comma/],
  [
    "an uncertainty of nothing",
    (s) => (find(s, "R5").sigma = 0),
    "survey-bad-sigma",
    `${AT}[4]`,
    /standard uncertainty above 0, got 0/,
  ],
  [
    "a going from the floor",
    (s) => (find(s, "G1").from = 0),
    "survey-bad-place",
    `${AT}[13]`,
    /the floor has no nosing to measure from/,
  ],
  [
    "a reading down the stair",
    (s) => Object.assign(find(s, "R5"), { from: 5, to: 4 }),
    "survey-bad-place",
    `${AT}[4]`,
    /from a lower to a higher nosing/,
  ],
  [
    "an angle past plumb",
    (s) => s.readings.push({ id: "L", kind: "level", from: 1, to: 13, value: 90 }),
    "survey-bad-value",
    `${AT}[41]`,
    /less than 90 degrees/,
  ],
  [
    "an angle in words",
    (s) => s.readings.push({ id: "L", kind: "level", from: 1, to: 13, value: "35" }),
    "wrong-type",
    `${AT}[41].value`,
    /expected a number, got "35"/,
  ],
  [
    "a nosing that the stair does not have",
    (s) => (find(s, "H13").to = 31),
    "survey-incomplete",
    "stair.survey",
    /every nosing from 1 to 31, got no reading of the height of nosing 14, .* more.*fewer than 31 risers/,
  ],
  [
    "a nosing one too high",
    (s) => (find(s, "H13").to = 14),
    "survey-incomplete",
    "stair.survey",
    /got no reading of the place along of nosing 14\./,
  ],
  [
    "a nosing between two",
    (s) => (find(s, "H13").to = 12.5),
    "wrong-type",
    `${AT}[37].to`,
    /a whole number, got 12\.5/,
  ],
  [
    "a missing datum: no height from the floor",
    (s) => only(s, (own) => own.kind !== "height" && own.id !== "R1"),
    "survey-no-datum",
    "stair.survey",
    /height from the lower finished floor, got none/,
  ],
  [
    "one reading only",
    (s) => only(s, (own) => own.id === "R1"),
    "survey-incomplete",
    "stair.survey",
    /two nosings at least, got one nosing/,
  ],
  [
    "one slope only",
    (s) => only(s, (own) => own.id === "S1-13"),
    "survey-no-datum",
    "stair.survey",
    /height from the lower finished floor/,
  ],
  [
    "nothing that counts",
    (s) => (s.without = s.readings.map((own: Loose) => own.id)),
    "survey-empty",
    "stair.survey",
    /at least one reading, got none/,
  ],
  ["no readings", (s) => (s.readings = []), "out-of-range", AT, /at least 1 items/],
  [
    "heights in each other's place",
    (s) => {
      find(s, "H3").to = 4;
      find(s, "H4").to = 3;
    },
    "survey-contradictory",
    "stair.survey",
    /chi2 \d+ on 15 redundant.*two in each other's place/,
  ],
  [
    "slopes of another stair",
    (s) => {
      for (const own of s.readings) if (own.kind === "slope") own.value = "40";
    },
    "survey-contradictory",
    "stair.survey",
    /average \(chi2 \d+ on 15/,
  ],
  [
    "a step that goes back, where nothing contradicts it",
    (s) => {
      only(s, (own) => own.kind === "run" || own.kind === "height");
      [find(s, "H3").value, find(s, "H4").value] = [find(s, "H4").value, find(s, "H3").value];
    },
    "survey-step-back",
    "stair.survey",
    /nosing 4 higher than nosing 3, got a rise of -190\.5 mm/,
  ],
];

describe("a survey with", () => {
  it.each(ERRORS)("%s is refused", async (_, change, code, path, words) => {
    const document = surveyed(change);
    const read = parseDesign(document);
    expect(read.ok).toBe(false);
    const errors = read.diagnostics.filter((own) => own.severity === "error");
    expect(errors[0]).toMatchObject({ code, path });
    expect(`${errors[0]?.message} ${errors[0]?.hint}`).toMatch(words);
    // Nothing else is blamed for it: no tread, no post.
    expect(errors.filter((own) => !own.path.startsWith("stair.survey"))).toEqual([]);

    const told = await cli(["survey", "-"], { stdin: JSON.stringify(document) });
    expect(told.code).toBe(1);
    expect(told.err).toContain(`error ${code}`);
    expect(told.err).toContain(path);
    expect(`${told.out}${told.err}`).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("nothing wrong is not", async () => {
    expect(parseDesign(surveyed()).diagnostics).toEqual([]);
    expect(parseDesign(metric()).diagnostics).toEqual([]);
    const told = await cli(["survey", "-"], { stdin: JSON.stringify(surveyed()) });
    expect([told.code, told.err]).toEqual([0, ""]);
  });

  it("no more readings than unknowns says that nothing is checked", async () => {
    const document = surveyed((s) => only(s, (own) => own.kind === "rise" || own.kind === "run"));
    const { ok, diagnostics } = parseDesign(document);
    expect([ok, diagnostics.map((own) => [own.code, own.path])]).toEqual([
      true,
      [["survey-unchecked", "stair.survey"]],
    ]);
    const told = await cli(["survey", "-"], { stdin: JSON.stringify(document) });
    expect(told.code).toBe(0);
    expect(told.out).toContain("redundancy 0: no check is possible");
    expect(told.out).toContain("no reading is checked by another");
  });
});

describe("units mixed", () => {
  const mixed: readonly (readonly [string, Loose, string, RegExp])[] = [
    ["a rise in inches", metric((s) => (find(s, "R5").value = 7.5625)), "R5", /too short/],
    ["a height in inches", metric((s) => (find(s, "H5").value = 37.75)), "H5", /too short/],
    ["a slope in inches", metric((s) => (find(s, "S1-13").value = 156.625)), "S1-13", /too short/],
    ["a height in millimetres", surveyed((s) => (find(s, "H5").value = 959)), "H5", /too long/],
    ["a going in millimetres", surveyed((s) => (find(s, "G5").value = 271)), "G5", /too long/],
  ];

  it.each(mixed)("%s is named, and the hint asks for the unit", async (_, document, id, words) => {
    const { ok, diagnostics } = parseDesign(document);
    expect(ok).toBe(false);
    const units = diagnostics.filter((own) => own.code === "survey-units");
    expect(units.map((own) => own.members)).toEqual([[id]]);
    const at = document.stair.survey.readings.findIndex((own: Loose) => own.id === id);
    expect(units[0]?.path).toBe(`stair.survey.readings[${at}]`);
    expect(units[0]?.message).toMatch(words);
    expect(units[0]?.hint).toMatch(/^Units\?/);
    expect(diagnostics.map((own) => own.code)).toContain("survey-contradictory");
    const told = await cli(["survey", "-"], { stdin: JSON.stringify(document) });
    expect(told.code).toBe(1);
    expect(told.err).toMatch(/survey-units.*\n {2}Units\?/);
  });

  it("names every going when all of them are in inches", () => {
    const document = metric((s) => {
      for (const own of s.readings) if (own.kind === "run") own.value /= 25.4;
    });
    const units = parseDesign(document).diagnostics.filter((own) => own.code === "survey-units");
    expect(units.map((own) => own.members[0])).toEqual(Array.from({ length: 12 }, (_, i) => `G${i + 1}`));
  });

  it("are not asked for where a reading is only wrong, or says its unit", () => {
    const codes = (document: Loose) => parseDesign(document).diagnostics.map((own) => own.code);
    // Ten times off is another mistake.
    expect(codes(metric((s) => (find(s, "R5").value = 19)))).not.toContain("survey-units");
    expect(codes(metric((s) => (find(s, "R5").value = "7 9/16 in")))).toEqual([]);
    // Left out, it is not asked about.
    const out = metric((s) => {
      find(s, "R5").value = 7.5625;
      s.without = ["R5", "R8"];
    });
    expect(codes(out)).toEqual([]);
  });
});

describe("contradiction", () => {
  it("is told when readings miss each other by ten times what they are good for, on average, and not before", () => {
    // R8 alone, moved: the misfit grows in proportion to the error, the redundancy stays.
    const by = (error: number) =>
      adjustReadings(DEMO.map((own) => (own.id === "R8" ? { ...own, value: own.value + error } : own)));
    const times = (error: number) => {
      const found = by(error);
      return found.ok ? Math.sqrt(found.value.chi2 / found.value.dof) : 0;
    };
    const has = (error: number) => by(error).diagnostics.some((own) => own.code === "survey-contradictory");
    const [below, above] = [70, 80];
    expect([times(below) < 10, has(below)]).toEqual([true, false]);
    expect([times(above) > 10, has(above)]).toEqual([true, true]);
    expect(hasErrors(by(above).diagnostics)).toBe(false);
  });
});
