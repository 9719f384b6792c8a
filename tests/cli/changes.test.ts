/**
 * `rakewright changes` between two builds of small guards, and how it finds and refuses what it is given.
 *
 * The guards are the example's (invented) with one figure changed; expected numbers are that change.
 */
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { loadSolved, piecesFrom } from "../../src/cli/load-solved.js";
import { solved, solvedText } from "../../src/layout/index.js";
import { cli, freshFolder } from "./world.js";

const EXAMPLE = fileURLToPath(new URL("../../examples/pottery-studio.json", import.meta.url));
const cwd = freshFolder();

/** Builds the example with something changed into a folder of the test's own. */
async function build(name: string, change: (d: Record<string, unknown>) => void): Promise<void> {
  const design = JSON.parse(readFileSync(EXAMPLE, "utf8")) as Record<string, unknown>;
  change(design);
  writeFileSync(join(cwd, `${name}.json`), JSON.stringify(design));
  const { code, err } = await cli(["build", `${name}.json`, "-o", name, "--formats", "obj", "--quiet"], {
    cwd,
  });
  expect([code, err]).toEqual([0, ""]);
}

const changes = (...words: string[]) => cli(["changes", ...words], { cwd });

beforeAll(async () => {
  await build("one", () => undefined);
  await build("two", (d) => {
    (d.legs as { top: string }[])[1]!.top = "42 1/8";
  });
  await build("other", (d) => {
    d.job = "Another room (invented)";
  });
}, 60_000);

describe("rakewright changes", () => {
  it("prints what moved: the landing's posts and rails, an eighth of an inch", async () => {
    const { code, out, err } = await changes("one", "two");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/^CHANGES +rakewright /);
    expect(out).toContain("Old      one, written by rakewright");
    expect(out).toContain("P6, P7   RE-CUT each of them: post");
    expect(out).toMatch(/BLANK .* \+1\/8 \(0\.125\)/);
    expect(out).not.toContain("RE-MARK");
    expect(out).toContain("CAUTION");
    expect(out.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
  });

  it("takes the file itself, and is the same for it, and twice", async () => {
    const { out } = await changes("one", "two");
    const file = await changes("one/solved.json", join(cwd, "two", "solved.json"));
    expect(file.out.split("\n").slice(4)).toEqual(out.split("\n").slice(4));
    expect((await changes("one", "two")).out).toBe(out);
  });

  it("prints JSON with old, new and difference", async () => {
    const { out } = await changes("one", "two", "--json");
    const { unit, units, changes: found, caution } = JSON.parse(out);
    expect([unit, units]).toEqual(["in", { length: "mm", angle: "degree" }]);
    expect(caution.length).toBeGreaterThan(40);
    const post = found.changed.find((own: { mark: string }) => own.mark === "P6");
    const [blank] = post.numbers;
    expect(blank.what).toBe("BLANK");
    expect(blank.difference).toBeCloseTo(25.4 / 8, 9);
    expect(blank.new - blank.old).toBeCloseTo(blank.difference, 12);
  });

  it("leaves out what moved by no more than is asked", async () => {
    expect((await changes("one", "two", "--over", "1/4", "--over-angle", "5")).out).toContain(
      "Pieces   nothing moved",
    );
    expect((await changes("one", "two", "--over", "3 mm")).out).toContain("+1/8 (0.125)");
    expect((await changes("one", "two", "--over", "6 mm", "--over-angle", "5")).out).toContain(
      "nothing moved",
    );
    expect((await changes("one", "one", "--over", "0", "--over-angle", "0")).out).toContain(
      "Pieces   nothing moved",
    );
  });

  it("says that the two are of different jobs", async () => {
    const { code, out } = await changes("one", "other");
    expect(code).toBe(0);
    expect(out.replace(/\n +/g, " ")).toContain(
      'NOTE     the two are of DIFFERENT JOBS: the old one is "Pottery studio, mezzanine stair (invented)".',
    );
  });

  it("prints in the new file's unit and says when the old one's is another", async () => {
    const file = JSON.parse(readFileSync(join(cwd, "two/solved.json"), "utf8"));
    writeFileSync(join(cwd, "metric.json"), JSON.stringify({ ...file, unit: "mm" }));
    const { out } = await changes("one", "metric.json");
    expect(out).toContain("NOTE     the old papers are in inches, these figures in millimetres.");
    expect(out).toMatch(/BLANK .* \+3\.2$/m);
    // 1/8 in is 3.175 mm; a bare number is in the new file's unit.
    expect((await changes("one", "metric.json", "--over", "3.2")).out).not.toContain("P6");
    expect((await changes("one", "metric.json", "--over", "3.1")).out).toContain("P6, P7   RE-CUT");
  });

  it("knows from either build what is made already", async () => {
    const file = JSON.parse(readFileSync(join(cwd, "one/solved.json"), "utf8"));
    const { id, mark } = file.pieces.find((own: { mark: string }) => own.mark === "P6");
    const state = { id, mark, start: "made", end: "made", holes: "made", place: "set" };
    writeFileSync(join(cwd, "made.json"), JSON.stringify({ ...file, states: [state] }));
    const { out } = await changes("made.json", "two");
    expect(out).toContain("P6   MADE ALREADY, DOES NOT FIT: post");
    expect(out).toContain("made already: no longer fits by 1/8 (0.125)");
    expect(out).toContain("P7   RE-CUT: post");
  });

  it("says when no piece of the two is the same", async () => {
    const file = JSON.parse(readFileSync(join(cwd, "one/solved.json"), "utf8"));
    const pieces = file.pieces.map((own: { id: string }) => ({ ...own, id: `x-${own.id}` }));
    writeFileSync(join(cwd, "x.json"), JSON.stringify({ ...file, pieces }));
    const { out } = await changes("one", "x.json");
    expect(out).toContain("NOTE     no piece of the new build has the id of an old one.");
    expect(out).toContain("the same to cut as the gone");
  });
});

describe("what cannot be compared", () => {
  const refused = async (...words: string[]) => {
    const { code, out, err } = await changes(...words);
    expect([code, out]).toEqual([2, ""]);
    return err;
  };

  it("nothing there, a folder without the file, no JSON, another file: said by its name", async () => {
    mkdirSync(join(cwd, "empty"));
    writeFileSync(join(cwd, "torn.json"), '{"format": ');
    writeFileSync(join(cwd, "old.json"), '{"format": "rakewright-solved", "version": 7}');
    expect(await refused("nowhere", "one")).toContain(
      "nowhere: expected the solved pieces of a build, but there is no such",
    );
    expect(await refused("one", "one.json/deeper")).toContain("there is no such file or folder");
    expect(await refused("one", "empty")).toContain("the folder has no solved.json");
    expect(await refused("torn.json", "one")).toContain(
      "torn.json: expected the solved pieces of a build, but it is not JSON",
    );
    expect(await refused("one/pieces.json", "one")).toContain(
      'expected format "rakewright-solved", got nothing',
    );
    expect(await refused("old.json", "one")).toContain(
      "old.json: The file of solved pieces: expected version 1, got 7",
    );
  });

  it("a file with faults: the first, and how many more", async () => {
    const file = JSON.parse(readFileSync(join(cwd, "one/solved.json"), "utf8"));
    for (const piece of file.pieces) piece.frame = null;
    writeFileSync(join(cwd, "faulty.json"), JSON.stringify(file));
    expect(await refused("one", "faulty.json")).toMatch(
      /pieces\[0\].*expected an object.*got null.*\(and \d+ more\)/,
    );
  });

  it("a least change that is no length, and words too few or too many", async () => {
    expect(await refused("one", "two", "--over=-1/32")).toContain(
      "--over: expected a length of 0 or more, got `-1/32`",
    );
    expect(await refused("one", "two", "--over", "wide")).toContain("--over:");
    expect(await refused("one", "two", "--over-angle", "x")).toContain("--over-angle: expected a number");
    expect(await refused("one")).toContain("changes: NEW is missing");
    expect(await refused("one", "two", "three")).toContain("did not expect `three`");
  });
});

describe("the pieces of a build, by the path a document gives", () => {
  it("start from the document's own folder, and are read once", () => {
    const load = piecesFrom(join(cwd, "jobs", "as-set.json"));
    const read = load("../one");
    expect(read.ok && read.value.length).toBeGreaterThan(20);
    expect(load("../one")).toBe(read);
    expect(load(join(cwd, "one", "solved.json")).ok).toBe(true);
  });

  it("that cannot be read are diagnostics with the path as it was given", () => {
    const load = piecesFrom(join(cwd, "as-set.json"));
    expect(load("nowhere").diagnostics).toEqual([
      expect.objectContaining({ code: "solved-unreadable", severity: "error", path: "nowhere" }),
    ]);
    expect(load("one/pieces.json").diagnostics).toEqual([
      expect.objectContaining({ code: "not-solved", path: "one/pieces.json: format" }),
    ]);
  });

  it("of a file without leave to read it", () => {
    const path = join(cwd, "locked.json");
    writeFileSync(path, solvedText(solved({ generator: "t", job: "j", unit: "in", pieces: [] })));
    expect(loadSolved(path).ok).toBe(true);
    chmodSync(path, 0o000);
    const read = loadSolved(path);
    // A superuser may read it all the same.
    if (process.getuid?.() !== 0) expect(read.diagnostics[0]?.message).toContain("permission is denied");
    else expect(read.ok).toBe(true);
    chmodSync(path, 0o600);
  });
});
