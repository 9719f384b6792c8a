/**
 * Solved pieces as a file: what is read back is what was written, and a broken file says where and why.
 *
 * The judges are the pieces themselves, their solids, and the kernel's own volume; JSON as Node reads it.
 */
import { describe, expect, it } from "vitest";
import { massOf, type Piece, solidOf, solveJoints } from "../../../src/joints/index.js";
import { buildGuard, parseSolved, solved, solvedText } from "../../../src/layout/index.js";
import { G1 } from "../../joints/g1.js";
import { example, type Loose } from "../designs.js";

const guard = buildGuard(example());
const HEADER = { generator: "test 1", job: "Pottery studio (invented)", unit: "in" } as const;
const TEXT = solvedText(solved({ ...HEADER, pieces: guard.pieces }));

/** The file with something changed in it. */
function broken(change: (file: Loose) => void): unknown {
  const file: Loose = JSON.parse(TEXT);
  change(file);
  return file;
}

const findings = (file: unknown) => parseSolved(file).diagnostics.map((d) => [d.code, d.path]);

function readBack(pieces: readonly Piece[]): readonly Piece[] {
  const read = parseSolved(JSON.parse(solvedText(solved({ ...HEADER, pieces }))));
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  return read.value.pieces;
}

describe("a file of solved pieces", () => {
  it("reads back equal to the last bit, -0 too", () => {
    expect(guard.pieces.length).toBeGreaterThan(20);
    // toEqual tells 0 from -0 by Object.is.
    expect(readBack(guard.pieces)).toEqual(guard.pieces);
    const [first] = guard.pieces as [Piece];
    const turned: Piece = { ...first, frame: { ...first.frame, origin: [-0, 1e-320, 0.1 + 0.2] } };
    const [again] = readBack([turned]) as [Piece];
    expect(Object.is(again.frame.origin[0], -0)).toBe(true);
    expect(again.frame.origin[1]).toBe(1e-320);
    expect(again.frame.origin[2]).toBe(0.1 + 0.2);
  });

  it("gives the same solids, faces, edges and volume", () => {
    for (const [i, piece] of readBack(guard.pieces).entries()) {
      const [before, after] = [solidOf(guard.pieces[i] as Piece), solidOf(piece)];
      expect(after, piece.id).toEqual(before);
      if (!before.ok || !after.ok) throw new Error(piece.id);
      expect(massOf(piece, after.value)).toEqual(massOf(guard.pieces[i] as Piece, before.value));
    }
  });

  it("holds ends of every kind: the guard with everything in it", () => {
    const { pieces } = solveJoints(G1);
    const kinds = new Set(JSON.stringify(pieces.map((p) => p.ends)).match(/"kind":"\w+"/g));
    expect(kinds.size).toBeGreaterThanOrEqual(4);
    expect(readBack(pieces)).toEqual(pieces);
  });

  it("is the same bytes for the same pieces, one line a piece", () => {
    const again = solvedText(solved({ ...HEADER, pieces: buildGuard(example()).pieces }));
    expect(again).toBe(TEXT);
    expect(solvedText(parseSolvedOf(TEXT))).toBe(TEXT);
    const lines = TEXT.split("\n").filter((line) => line.startsWith('    {"id":'));
    expect(lines).toHaveLength(guard.pieces.length);
  });

  it("says the caution, the job, the units and what wrote it", () => {
    const file = JSON.parse(TEXT) as Record<string, unknown>;
    expect(Object.keys(file)).toEqual([
      ...["format", "version", "generator", "job", "unit", "units", "caution", "pieces", "states", "misfits"],
    ]);
    expect(file.units).toEqual({ length: "mm", angle: "degree" });
    expect(String(file.caution).length).toBeGreaterThan(40);
  });

  it("refuses to write a number JSON cannot hold", () => {
    const [first] = guard.pieces as [Piece];
    const bad = { ...first, heading: Number.NaN };
    expect(() => solvedText(solved({ ...HEADER, pieces: [bad] }))).toThrow("not-finite");
  });
});

describe("a broken file of solved pieces", () => {
  it.each([[null], [[]], ["text"], [{}], [{ format: "pieces", version: 1 }]])(
    "%j is not one: said",
    (json) => {
      expect(findings(json)).toEqual([["not-solved", "format"]]);
    },
  );

  it("of another version is told from one of this", () => {
    expect(findings(broken((f): unknown => (f.version = 2)))).toEqual([["solved-version", "version"]]);
    expect(findings(broken((f): unknown => (f.version = "1")))).toEqual([["solved-version", "version"]]);
    expect(findings(broken(() => undefined))).toEqual([]);
  });

  it.each([
    [
      "a key too many",
      (f: Loose): unknown => (f.pieces[0].colour = "red"),
      "unknown-key",
      "pieces[0].colour",
    ],
    ["a key too few", (f: Loose): unknown => delete f.pieces[1].section, "missing", "pieces[1].section"],
    [
      "a word for a number",
      (f: Loose): unknown => (f.pieces[0].frame.origin[2] = "3"),
      "wrong-type",
      "pieces[0].frame.origin[2]",
    ],
    [
      "null, as NaN is written",
      (f: Loose): unknown => (f.pieces[0].heading = null),
      "wrong-type",
      "pieces[0].heading",
    ],
    [
      "a frame that is skew",
      (f: Loose): unknown => (f.pieces[2].frame.x = [1, 1, 0]),
      "bad-value",
      "pieces[2].frame",
    ],
    [
      "a left-handed frame",
      (f: Loose): unknown => (f.pieces[2].frame.x = f.pieces[2].frame.x.map((k: number) => -k)),
      "bad-value",
      "pieces[2].frame",
    ],
    [
      "an outline that is not closed",
      (f: Loose): unknown =>
        f.pieces[0].section.region.outer.splice(0, 1, { kind: "line", from: [0, 0], to: [1, 0] }),
      "bad-value",
      "pieces[0].section.region.outer",
    ],
    [
      "an unknown shape",
      (f: Loose): unknown => (f.pieces[0].section.shape.kind = "star"),
      "wrong-type",
      undefined,
    ],
    ["one end", (f: Loose): unknown => f.pieces[0].ends.pop(), undefined, "pieces[0].ends"],
    [
      "a hole without a size",
      (f: Loose): unknown =>
        f.pieces[0].bores.push({
          ...{ id: "b", point: [0, 0, 9], direction: [1, 0, 0] },
          ...{ diameter: 0, through: "both", marks: [] },
        }),
      "out-of-range",
      "pieces[0].bores[0].diameter",
    ],
  ] as const)("%s", (_, change, code, path) => {
    const read = parseSolved(broken(change));
    expect(read.ok).toBe(false);
    const [first] = read.diagnostics;
    if (code) expect(first?.code).toBe(code);
    if (path) expect(first?.path.startsWith(path)).toBe(true);
    expect(first?.message).toMatch(/expected .*, got /);
    expect(first?.hint.length).toBeGreaterThan(3);
  });

  it("an end that cuts to nothing is refused deep inside", () => {
    const bad = broken((f) => {
      f.pieces[0].ends[0] = { kind: "min", of: [{ kind: "max", of: [] }] };
    });
    const [first] = parseSolved(bad).diagnostics;
    expect([first?.code, first?.path]).toEqual(["out-of-range", "pieces[0].ends[0].of[0].of"]);
  });

  it("with an id or a mark twice names both places", () => {
    const twice = broken((f) => f.pieces.push(f.pieces[0]));
    const last = guard.pieces.length;
    expect(findings(twice)).toEqual([
      ["duplicate-id", `pieces[${last}].id`],
      ["duplicate-id", `pieces[${last}].mark`],
    ]);
  });

  it("with faults without number lists the first of them", () => {
    const bad = broken((f) => {
      for (const piece of f.pieces) for (let i = 0; i < 5; i++) piece[`extra${i}`] = 1;
    });
    const found = parseSolved(bad).diagnostics;
    expect(found.at(-1)?.code).toBe("more-findings");
    expect(found).toHaveLength(51);
  });
});

function parseSolvedOf(text: string) {
  const read = parseSolved(JSON.parse(text));
  if (!read.ok) throw new Error("not read");
  return read.value;
}
