/**
 * `rakewright build` and `check` on the pottery studio's mezzanine stair (invented, examples/pottery-studio.json).
 *
 * Sources: shared/demo-data.json (computed independently of this library); the binary STL layout, 84 + 50 bytes per
 * triangle; and the file system itself for what is and is not written.
 */
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import demo from "../../shared/demo-data.json";
import type { PieceRecords } from "../../src/shop/index.js";
import { occurrencesOf } from "../support/part21/assembly.js";
import { lookAtBrep } from "../support/part21/brep.js";
import { readStep } from "../support/part21/read.js";
import { readStlBinary } from "../support/read-stl.js";
import { cli, freshFolder, type Outcome } from "./world.js";

const EXAMPLE = fileURLToPath(new URL("../../examples/pottery-studio.json", import.meta.url));
const DESIGN = JSON.parse(readFileSync(EXAMPLE, "utf8")) as Record<string, unknown>;
const INCH = 25.4;

/** A design file with some fields changed, in a folder of its own. */
function designFile(change: Record<string, unknown>): string {
  const path = join(freshFolder(), "design.json");
  writeFileSync(path, JSON.stringify({ ...DESIGN, ...change }));
  return path;
}

const triple = (a: readonly number[], b: readonly number[], c: readonly number[]): number =>
  a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
  a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
  a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);

describe("rakewright build", () => {
  const folder = join(freshFolder(), "out/studio");
  let outcome: Outcome;
  let records: PieceRecords;
  let paper: string;
  beforeAll(async () => {
    outcome = await cli(["build", EXAMPLE, "-o", folder]);
    records = JSON.parse(readFileSync(join(folder, "pieces.json"), "utf8")) as PieceRecords;
    paper = readFileSync(join(folder, "cutlist.txt"), "utf8");
  }, 60_000);

  it("writes every file it promises, and nothing to standard output", () => {
    expect([outcome.code, outcome.out]).toEqual([0, ""]);
    expect(readdirSync(folder).sort()).toEqual([
      "cutlist.txt",
      "model.mtl",
      "model.obj",
      "model.step",
      "model.stl",
      "pieces",
      "pieces.json",
      "solved.json",
    ]);
    expect(readdirSync(join(folder, "pieces")).sort()).toEqual(
      records.pieces.map((p) => `${p.mark}.stl`).sort(),
    );
  });

  it("puts every piece into the STEP assembly under its mark, with the volume of its record", () => {
    const { faults, graph } = readStep(readFileSync(join(folder, "model.step"), "utf8"));
    expect(faults).toEqual([]);
    const found = occurrencesOf(graph!);
    expect(found.map((o) => o.name).sort()).toEqual(records.pieces.map((p) => p.mark).sort());
    for (const { name, solid } of found) {
      const volume = records.pieces.find((p) => p.mark === name)?.volume;
      expect(lookAtBrep(graph!, solid).volume / volume!).toBeCloseTo(1, 8);
    }
  });

  it("writes STEP alone when that is asked for", async () => {
    const cwd = freshFolder();
    const { code } = await cli(["build", EXAMPLE, "-o", "o", "--formats", "step"], { cwd });
    expect(code).toBe(0);
    expect(readdirSync(join(cwd, "o")).sort()).toEqual([
      "cutlist.txt",
      "model.step",
      "pieces.json",
      "solved.json",
    ]);
    const [one, other] = [join(cwd, "o"), folder].map((f) => readFileSync(join(f, "model.step"), "utf8"));
    expect(one).toBe(other);
  });

  it("has the rake rail's blank, edges and miter of the independent numbers", () => {
    const rail = records.pieces.find((p) => p.mark === "R1");
    const { rakeRail, miterDeg, pitchDeg } = demo.straight;
    expect(rail!.lengths.blank!.value / INCH).toBeCloseTo(rakeRail.blank, 6);
    expect(rail!.lengths.top!.value / INCH).toBeCloseTo(rakeRail.top, 6);
    expect(rail!.lengths.bottom!.value / INCH).toBeCloseTo(rakeRail.bottom, 6);
    const angles = rail!.ends.map((end) => end.saw?.fromSquare);
    expect(angles[0]).toBeCloseTo(pitchDeg, 6);
    expect(angles[1]).toBeCloseTo(miterDeg, 6);
  });

  it("weighs the rake rail as the independent numbers do", () => {
    const rail = records.pieces.find((p) => p.mark === "R1");
    // 1 lb = 0.45359237 kg. The independent number weighs the whole blank; a tube cut flat at both ends weighs as much as
    // one of the length of its axis, the mean of its top and bottom edges.
    const { blank, top, bottom } = demo.straight.rakeRail;
    const expected = (demo.straight.rakeRailMass_lb * (top + bottom)) / 2 / blank;
    expect(rail!.mass! / 0.45359237).toBeCloseTo(expected, 6);
  });

  it("prints them on the paper: blank up to the next 1/32, long points, miter", () => {
    const flat = paper.replace(/\s+/g, " ");
    expect(flat).toContain("157-7/8 (157.851)");
    expect(flat).toContain(
      "DOWNHILL end: plumb cut, 35.4° from square (54.6° from the tube), long point BOTTOM",
    );
    expect(flat).toContain(
      "miter to R2, 17.7° from square (72.3° from the tube), long point TOP, long - short 19/32 (0.607)",
    );
    expect(paper.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(paper).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("tells a lower rail that dies into flat posts as plumb cuts, long below downhill and above uphill", () => {
    // Case c30 of shared/shop-cases.json: 'top at the uphill end, bottom at the downhill end'; 1 in deep: 7.5625/10.625.
    const flat = paper.replace(/\s+/g, " ");
    expect(flat).toContain(
      "DOWNHILL end: plumb cut to P1, 35.4° from square (54.6° from the tube), long point BOTTOM",
    );
    expect(flat).toContain(
      "UPHILL end: plumb cut to P2, 35.4° from square (54.6° from the tube), long point TOP, long - short 23/32 (0.712)",
    );
  });

  it("gives post lengths of the independent numbers", () => {
    const { stairPost, landingPost } = demo.straight;
    const length = (mark: string, key: string) =>
      records.pieces.find((p) => p.mark === mark)!.lengths[key]!.value / INCH;
    expect(length("P2", "axis")).toBeCloseTo(stairPost.postAxisFromTopOfPlate, 6);
    expect(length("P2", "top")).toBeCloseTo(stairPost.uphillFaceAtCentre, 6);
    expect(length("P2", "bottom")).toBeCloseTo(stairPost.downhillFaceAtCentre, 6);
    expect(length("P6", "axis")).toBeCloseTo(landingPost.fromTopOfPlate, 6);
  });

  it("carries the model's warnings on the paper", () => {
    expect(paper).toMatch(/^NOTE {5}Post P1 /m);
  });

  it("lists every piece once on the paper", () => {
    const listed = paper
      .split("\n")
      .flatMap((line) => /^(\S.*?) {3}\d+ off/.exec(line)?.[1]?.split(", ") ?? [])
      .sort();
    expect(listed).toEqual(records.pieces.map((p) => p.mark).sort());
  });

  it("writes closed meshes: each piece file is 84 + 50 n bytes and holds the recorded volume", () => {
    for (const { mark, volume } of records.pieces) {
      const bytes = readFileSync(join(folder, "pieces", `${mark}.stl`));
      const { facets } = readStlBinary(bytes);
      expect(bytes.length).toBe(84 + 50 * facets.length);
      // Divergence theorem: six times the volume is the sum of a · (b × c) over the triangles.
      const six = facets.reduce((sum, { corners: [a, b, c] }) => sum + triple(a!, b!, c!), 0);
      // Facets at 0.05 mm stand inside the outer skin and outside the bore: a few parts in a thousand of a thin wall.
      expect(Math.abs(six / 6 / volume! - 1)).toBeLessThan(0.01);
    }
  });

  it("refuses to overwrite, names the file, and changes nothing", async () => {
    const before = readFileSync(join(folder, "model.stl"));
    const again = await cli(["build", EXAMPLE, "-o", folder, "--chord", "1"]);
    expect([again.code, again.out]).toEqual([2, ""]);
    expect(again.err).toMatch(/exists already[\s\S]*--force/);
    expect(readFileSync(join(folder, "model.stl")).equals(before)).toBe(true);
  });

  it("overwrites with --force, the same bytes every time, and tells of piece files it did not write", async () => {
    writeFileSync(join(folder, "pieces/P99.stl"), "from an earlier design");
    const before = ["model.stl", "model.obj", "pieces.json", "cutlist.txt"].map((f) =>
      readFileSync(join(folder, f), "latin1"),
    );
    const again = await cli(["build", EXAMPLE, "-o", folder, "--force"]);
    expect(again.code).toBe(0);
    expect(again.err).toMatch(/not part of this build: P99\.stl/);
    const after = ["model.stl", "model.obj", "pieces.json", "cutlist.txt"].map((f) =>
      readFileSync(join(folder, f), "latin1"),
    );
    expect(after).toEqual(before);
  });

  it("writes only the formats asked for, reads standard input, and reports as JSON", async () => {
    const cwd = freshFolder();
    const stdin = readFileSync(EXAMPLE, "utf8");
    const { code, out, err } = await cli(["build", "-", "-o", "o", "--formats", "obj", "--json", "--quiet"], {
      cwd,
      stdin,
    });
    expect([code, err]).toEqual([0, ""]);
    const report = JSON.parse(out) as { ok: boolean; files: string[] };
    expect(report.ok).toBe(true);
    expect(report.files.slice().sort()).toEqual(readdirSync(join(cwd, "o")).sort());
    expect(report.files.filter((f) => f.endsWith(".stl"))).toEqual([]);
  });

  it("a finer chord makes more triangles", async () => {
    const size = async (chord: string): Promise<number> => {
      const cwd = freshFolder();
      await cli(["build", EXAMPLE, "-o", "o", "--chord", chord, "--formats", "stl"], { cwd });
      return readFileSync(join(cwd, "o/model.stl")).length;
    };
    expect(await size("0.05")).toBeGreaterThan(await size("0.5"));
  });
});

describe("a design with errors", () => {
  const broken = () => designFile({ stair: { ...(DESIGN.stair as object), risers: 0 } });

  it("is exit code 1: findings printed, nothing written", async () => {
    const cwd = freshFolder();
    const { code, out, err } = await cli(["build", broken(), "-o", "o"], { cwd });
    expect([code, out]).toEqual([1, ""]);
    expect(err).toMatch(/^error \S+.*stair\.risers/m);
    expect(err).toContain("Nothing written");
    expect(existsSync(join(cwd, "o"))).toBe(false);
  });

  it("is the same for check, on standard output", async () => {
    const { code, out, err } = await cli(["check", broken()]);
    expect([code, err]).toEqual([1, ""]);
    expect(out).toMatch(/stair\.risers/);
    const json = await cli(["check", broken(), "--json"]);
    const report = JSON.parse(json.out) as { ok: boolean; diagnostics: { severity: string; path: string }[] };
    expect([json.code, report.ok]).toEqual([1, false]);
    expect(report.diagnostics.some((d) => d.severity === "error" && d.path === "stair.risers")).toBe(true);
  });

  it("colours its findings on a terminal alone", async () => {
    const cwd = freshFolder();
    expect((await cli(["build", broken(), "-o", "o"], { cwd, tty: true })).err).toContain(
      "\u001b[31merror\u001b[0m",
    );
    expect((await cli(["build", broken(), "-o", "o"], { cwd })).err).not.toContain("\u001b");
  });

  it("names an unknown key", async () => {
    const { code, out } = await cli(["check", designFile({ risrs: 13 })]);
    expect(code).toBe(1);
    expect(out).toContain("risrs");
  });
});

describe("rakewright check", () => {
  it("is exit code 0 for the example", async () => {
    const { code, out, err } = await cli(["check", EXAMPLE]);
    expect([code, err]).toEqual([0, ""]);
    expect(out).not.toMatch(/^error/m);
  });
});

describe("what cannot be read or written is exit code 2", () => {
  const text = (content: string): string => {
    const path = join(freshFolder(), "design.json");
    writeFileSync(path, content);
    return path;
  };

  it.each<[string, () => string[], RegExp]>([
    [
      "a missing file",
      () => ["build", "no-such.json", "-o", "o"],
      /Cannot read no-such\.json: there is no such file/,
    ],
    ["a folder", () => ["check", freshFolder()], /it is a folder/],
    ["no JSON", () => ["check", text('{\n  "job": "x",\n  oops\n}')], /not JSON: .*line 3, column 3/],
    ["an empty file", () => ["check", text("")], /not JSON/],
    ["a huge file", () => ["check", text(`"${"x".repeat(5_000_000)}"`)], /larger than/],
    ["no folder given", () => ["build", EXAMPLE], /--output is missing/],
    [
      "an unknown format",
      () => ["build", EXAMPLE, "-o", "o", "--formats", "stl,dwg"],
      /expected some of stl,obj/,
    ],
    [
      "a chord that is none",
      () => ["build", EXAMPLE, "-o", "o", "--chord", "0"],
      /--chord: expected a number/,
    ],
    ["an output that is a file", () => ["build", EXAMPLE, "-o", text("x")], /is a file, not a folder/],
    ["an output below a file", () => ["build", EXAMPLE, "-o", join(text("x"), "o")], /Cannot write to/],
  ])("%s", async (_what, argv, message) => {
    const cwd = freshFolder();
    const { code, out, err } = await cli(argv(), { cwd });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(message);
    expect(readdirSync(cwd)).toEqual([]);
  });

  it("a folder that may not be written to (unless the tests run as root, whom nothing stops)", async () => {
    const cwd = freshFolder();
    mkdirSync(join(cwd, "locked"));
    chmodSync(join(cwd, "locked"), 0o500);
    const { code, err } = await cli(["build", EXAMPLE, "-o", "locked/o"], { cwd });
    expect(process.getuid?.() === 0 ? 0 : 2).toBe(code);
    if (code === 2) expect(err).toMatch(/Cannot write to/);
    chmodSync(join(cwd, "locked"), 0o700);
  });
});
