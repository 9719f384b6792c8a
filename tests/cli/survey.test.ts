/**
 * `rakewright survey`: the printed survey against shared/demo-survey.json (invented data, computed by an independent script),
 * the blank sheet against what can be typed in from it, and what each refuses.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parseDesign } from "../../src/layout/index.js";
import { demo } from "../layout/survey/survey-cases.js";
import { find, metric, surveyed, withBlunder, withHeights } from "../layout/survey/surveyed.js";
import { cli, freshFolder } from "./world.js";

const survey = (document: unknown, ...more: readonly string[]) =>
  cli(["survey", "-", ...more], { stdin: JSON.stringify(document) });
const unwrapped = (text: string) => text.replace(/\n {9}/g, " ");
const tooWide = (text: string) => text.split("\n").filter((line) => [...line].length > 100);

describe("rakewright survey DESIGN", () => {
  it("names R8, with its residual and its studentised residual", async () => {
    const { code, out, err } = await survey(withBlunder());
    expect(code).toBe(0);
    expect(err).toMatch(/^warning survey-suspect at stair\.survey\.readings\[7\]: Survey: R8 /);
    const { residual16ths, studentised, chi2, dof } = demo.adjust.all;
    expect(unwrapped(out)).toContain(
      `SUSPECT  R8 reads too long: ${studentised.toFixed(2)} times its standard uncertainty. Tape it again.`,
    );
    expect(out).toContain(`chi2 ${chi2.toFixed(2)} on ${dof} redundant`);
    const row = out.split("\n").find((line) => line.startsWith("R8 "));
    expect(row).toMatch(/8-7\/16 \(8\.438\)/);
    expect(row).toContain(`+${residual16ths.toFixed(1)}/16`);
    expect(row).toMatch(/8\.69 {2}SUSPECT$/);
    expect(out.match(/SUSPECT$/gm)).toHaveLength(1);
  });

  it("says what is left out and what it should have read", async () => {
    const { code, out, err } = await survey(surveyed());
    expect([code, err]).toEqual([0, ""]);
    const { R8adjusted, chi2, dof, fitPitchDeg, slope1to13, sigmaSlope } = demo.adjust.withoutR8;
    const text = unwrapped(out);
    expect(text).toContain(`by the others it should read 7-5/8 (${R8adjusted.toFixed(3)})`);
    expect(text).toContain(`40 count, 1 left out; chi2 ${chi2.toFixed(2)} on ${dof} redundant`);
    expect(text).toContain(`least squares ${fitPitchDeg}°`);
    const [, length, sigma] = /lowest to top nosing \S+ \(([\d.]+)\), σ ([\d.]+) in/.exec(text) ?? [];
    // Printed to a thousandth.
    expect(Math.abs(Number(length) - slope1to13)).toBeLessThan(0.00056);
    expect(Number(sigma)).toBeCloseTo(sigmaSlope, 3);
    expect(text).toContain("Next     the one more reading");
    expect(out).not.toMatch(/^R8 /m);
  });

  it("lists every nosing with both misses in sixteenths", async () => {
    const { out } = await survey(surveyed());
    const rows = out.split("\n").filter((line) => /^ {2,3}\d+ .*\/16$/.test(line));
    expect(rows).toHaveLength(13);
    rows.forEach((row, i) => {
      const [, last] = /([+-]?[\d.]+)\/16$/.exec(row) ?? [];
      // Both are printed to a tenth; a digit on the edge may fall either way.
      expect(Math.abs(Number(last) - demo.nosingOffsetsFromFit_16ths[i]!)).toBeLessThan(0.101);
    });
  });

  it("names a tied group and the reading that parts it", async () => {
    const { out } = await survey(withHeights(4, 7, 10, 13));
    expect(unwrapped(out)).toMatch(
      /SUSPECT {2}one of R8, R9, R10 is off by 5\.66 times.*tape these again\. Or read H\d+ \(height, floor to \d+\): that parts them into/,
    );
    expect(out.match(/ one of$/gm)).toHaveLength(3);
    expect(unwrapped((await survey(withHeights(13))).out)).toContain(
      "one of R8, R9, R10, R11, R12, R13 is off by 3.51 times",
    );
  });

  it("names what noise may have hidden behind the worst reading, or says how many that are", async () => {
    // Truly 7-5/8: six sigma long, next to R4; five sigma long is not far above the noise.
    const long = (value: string) => survey(surveyed((own) => Object.assign(find(own, "R3"), { value })));
    const six = await long("8");
    expect(unwrapped(six.out)).toMatch(
      /SUSPECT {2}R3 reads too long: .* Noise of this size can hide which: it could also be R4\./,
    );
    expect(six.out.match(/^R\d+ .* (SUSPECT|perhaps)$/gm)?.map((row) => row.slice(0, 2))).toEqual([
      "R3",
      "R4",
    ]);
    const five = await long("7 15/16");
    expect(unwrapped(five.out)).toMatch(
      /It could also be any of \d+ others: this is not far above the noise/,
    );
    expect(five.out).not.toMatch(/perhaps$/m);
  });

  it("prints millimetres and degrees where the document does", async () => {
    const document = metric((own) =>
      own.readings.push({ id: "L1-13", kind: "level", from: 1, to: 13, value: 35.4 }),
    );
    const { code, out } = await survey(document);
    expect(code).toBe(0);
    expect(out).toMatch(/^L1-13 +level +1 to 13 +35\.40° +35\.\d\d°/m);
    expect(out).not.toContain("/16");
    expect(out).toMatch(/σ \d\.\d\d mm/);
  });

  it("keeps to the width of the paper, carries the caution, and has the date", async () => {
    for (const document of [surveyed(), withBlunder(), withHeights(13), metric()]) {
      const { out } = await survey(document);
      expect(tooWide(out)).toEqual([]);
      expect(out).toContain("Measure before you cut.");
      expect(out).toMatch(/^Date {5}2 March$/m);
      expect(out).not.toMatch(/NaN|undefined|null/);
    }
  });

  it("gives all of it as JSON", async () => {
    const { code, out, err } = await survey(withBlunder(), "--json");
    expect([code, err]).toEqual([0, ""]);
    const { ok, unit, flights, diagnostics } = JSON.parse(out);
    expect([ok, unit, flights.length, diagnostics.length]).toEqual([true, "in", 1, 1]);
    const [flight] = flights;
    expect(flight.suspects[0].ids).toEqual(["R8"]);
    expect(Math.abs(flight.suspects[0].studentised - demo.adjust.all.studentised)).toBeLessThan(0.0051);
    expect(flight.readings).toHaveLength(41);
    expect(flight.slope.value / 25.4).toBeCloseTo(demo.adjust.all.slope1to13, 4);
  });

  it("takes the tape of a shop file", async () => {
    const cwd = freshFolder();
    writeFileSync(join(cwd, "shop.json"), '{ "tape": "I" }');
    writeFileSync(join(cwd, "bad.json"), '{ "tape": "IV" }');
    const stdin = JSON.stringify(surveyed());
    const { code, out } = await cli(["survey", "-", "--shop", "shop.json"], { cwd, stdin });
    expect(code).toBe(0);
    expect(unwrapped(out)).toContain("tape class I and the hand");
    expect((await cli(["survey", "-", "--shop", "bad.json"], { cwd, stdin })).code).toBe(1);
    expect((await cli(["survey", "-", "--shop", "-"], { stdin })).code).toBe(2);
  });

  it("needs only the survey to be right", async () => {
    const half = surveyed((_, document) => {
      document.sections.post = "to be chosen";
      document.legs[0].posts.onTreads = [1, 40];
    });
    expect(parseDesign(half).ok).toBe(false);
    expect((await survey(half)).code).toBe(0);
  });

  it("is wrong use without a survey or a design", async () => {
    const counted = surveyed((_, document) => {
      document.stair = { risers: 13, floorToFloor: "98 5/16", going: "10 5/8" };
    });
    const { code, err } = await survey(counted);
    expect(code).toBe(2);
    expect(err).toMatch(/standard input has no survey.*\n.*--blank/);
    expect((await cli(["survey"])).err).toMatch(/DESIGN is missing.*\n.*--blank/);
    expect((await survey({})).code).toBe(1);
  });
});

describe("rakewright survey --blank", () => {
  const blank = (...more: readonly string[]) => cli(["survey", "--blank", "--risers", "13", ...more]);

  it("has a box for every reading, once, in the order of the walk", async () => {
    const { code, out, err } = await blank("--unit", "in");
    expect([code, err]).toEqual([0, ""]);
    const boxes = [...out.matchAll(/\b([RHGS][\d-]+) +\[_+\]/g)].map((found) => found[1]);
    const typed = JSON.parse((await blank("--json")).out).survey.readings as { id: string }[];
    expect(boxes).toEqual(typed.map((own) => own.id));
    expect(new Set(boxes).size).toBe(51);
    expect(out).toContain("inches and sixteenths");
    expect((await blank()).out).toContain("millimetres, as read");
  });

  it("says where to hook, when it closes, and what to do when it does not", async () => {
    const { out } = await blank("--unit", "in");
    expect(out).toMatch(/Hook the tape on the edge of nosing 1/);
    expect(out).toMatch(/R1 to R13 added up _+ should be H13 within 1\/2"/);
    expect(out).toMatch(/^IF NOT/m);
    expect(out).toContain("nosing 13 the landing's edge");
    expect(tooWide(out)).toEqual([]);
    expect(out).toContain("Measure before you cut.");
  });

  it("asks for a landing when told to, which is adjusted as it is typed in", async () => {
    expect((await blank()).out).not.toContain("LANDING");
    const { out } = await blank("--landing", "--unit", "in");
    const boxes = [...out.matchAll(/\b([A-D]-[A-D]) +\[_+\]/g)].map((found) => found[1]);
    const { plan } = JSON.parse((await blank("--landing", "--json")).out);
    expect(boxes).toEqual(plan.readings.map((own: { id: string }) => own.id));
    expect(tooWide(out)).toEqual([]);
    // 3 by 4: diagonals of 5.
    for (const own of plan.readings) {
      own.value = own.kind === "diagonal" ? 50 : own.id === "A-B" || own.id === "C-D" ? 40 : 30;
    }
    const document = surveyed((_, whole) => (whole.plan = plan));
    const done = await survey(document);
    expect([done.code, done.err]).toEqual([0, ""]);
    expect(done.out).toMatch(/^ {2}C +40 \(40\.000\) .* 30 \(30\.000\)/m);
  });

  it("can be typed in", async () => {
    const { survey: typed } = JSON.parse((await blank("--json")).out);
    for (const own of typed.readings) {
      const [up, along] = [7.5 * (own.to - own.from), 10.5 * (own.to - own.from)];
      own.value = own.kind === "slope" ? Math.hypot(up, along) : own.kind === "run" ? along : up;
    }
    const document = surveyed((_, whole) => (whole.stair.survey = typed));
    const { code, out, err } = await survey(document);
    expect([code, err]).toEqual([0, ""]);
    // Handbook a01: 7.5 by 10.5 is 35.5377 degrees.
    expect(out).toContain("least squares 35.5377°");
  });

  it("asks for a number of risers that a stair can have, and for no design", async () => {
    const bad = async (...argv: readonly string[]) => {
      const { code, err } = await cli(["survey", "--blank", ...argv]);
      expect(code).toBe(2);
      return err;
    };
    expect(await bad()).toMatch(/--risers is missing/);
    expect(await bad("--risers", "1")).toMatch(/whole number from 2 to 100/);
    expect(await bad("--risers", "13", "--unit", "cm")).toMatch(/in or mm, got `cm`/);
    expect(await bad("a.json", "--risers", "13")).toMatch(/did not expect `a\.json` with --blank/);
  });
});

describe("rakewright build", () => {
  const paper = async (document: unknown) => {
    const cwd = freshFolder();
    const stdin = JSON.stringify(document);
    const { code } = await cli(["build", "-", "-o", "out", "--formats", "obj", "--quiet"], { cwd, stdin });
    expect(code).toBe(0);
    return unwrapped(readFileSync(join(cwd, "out/cutlist.txt"), "utf8"));
  };

  it("rests its papers on the readings that count, and says which do not", async () => {
    const text = await paper(surveyed());
    expect(text).toContain("Basis    survey of 2 March of 40 readings, without R8, 15 of them redundant;");
    expect(text).toContain("LEFT OUT R8: tape it again");
    expect(text).not.toMatch(/counted|No survey/i);
  });

  it("warns on the paper of a reading that does not agree", async () => {
    const text = await paper(withBlunder());
    expect(text).toMatch(/^NOTE {5}Survey: R8 does not agree with the other readings \(8\.7 times/m);
    expect(text).toContain("1 SUSPECT: tape again before cutting");
  });
});

describe("a reading typed wrong", () => {
  it("does not keep the rest from being printed when it contradicts", async () => {
    const { code, out } = await survey(surveyed((own) => (find(own, "H5").value = "73 3/4")));
    expect(code).toBe(1);
    expect(unwrapped(out)).toMatch(/SUSPECT {2}H5 reads too long/);
  });
});
