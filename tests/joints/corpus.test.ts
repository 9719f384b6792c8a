/**
 * Small models with known answers: every file of tests/corpus, as it is, turned about plumb and moved away, and mirrored.
 * Each file names the source of its numbers; none comes from this library.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { massOf, type Piece, type PieceLengths, solveJoints } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, member, parseSection, type Role } from "../../src/members/index.js";

type Expected = Partial<Record<keyof PieceLengths, number>> & {
  readonly kinds: readonly string[];
  readonly fromSquare?: readonly number[];
  /** mm³ */
  readonly volume?: number;
  readonly copeAngle?: number;
  readonly copeOffset?: number;
};
interface CorpusModel {
  readonly what: string;
  readonly source: string;
  readonly members: readonly { id: string; section: string; from: Vec3; to: Vec3; role: Role }[];
  readonly expected: {
    readonly codes: string[];
    readonly contacts: number;
    readonly pieces: Record<string, Expected>;
  };
}

const FOLDER = new URL("../corpus/", import.meta.url);
const MODELS = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as CorpusModel] as const);

type Place = (p: Vec3, isPoint: boolean) => Vec3;
const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
const VARIANTS: Readonly<Record<string, Place>> = {
  "as it is": (p) => p,
  "turned about plumb and moved": ([x, y, z], isPoint) => {
    const k = isPoint ? 1 : 0;
    return [c * x - s * y + 8000 * k, s * x + c * y - 3000 * k, z + 500 * k];
  },
  mirrored: ([x, y, z]) => [x, -y, z],
};

function membersOf(model: CorpusModel, place: Place): Member[] {
  return model.members.map((m) => {
    const read = parseSection(m.section, "mm");
    if (!read.ok) throw new Error(`${m.section}: no section`);
    const own = { id: m.id, role: m.role, section: read.value };
    const plain = member({ ...own, from: m.from, to: m.to });
    return member({
      ...own,
      from: place(m.from, true),
      to: place(m.to, true),
      up: place(plain.frame.y, false),
    });
  });
}

const LENGTHS = ["blank", "longPoint", "shortPoint", "top", "bottom", "axis"] as const;

function missesOf(piece: Piece, expected: Expected): string[] {
  const out: string[] = [];
  const near = (what: string, got: number | undefined, wanted: number | undefined, within: number): void => {
    if (wanted === undefined) return;
    if (!(Math.abs((got ?? Number.NaN) - wanted) <= within))
      out.push(`${piece.id} ${what}: ${got} for ${wanted}`);
  };
  // An ear of equal tubes is a square root: a rounding of 1e-14 across shows as 1e-6 along.
  for (const name of LENGTHS) near(name, piece.lengths[name]?.value, expected[name], 2e-6);
  for (const end of [0, 1] as const)
    near(`saw ${end}`, piece.cuts[end].saw?.fromSquare, expected.fromSquare?.[end], 1e-9);
  const cope = piece.cuts.flatMap((cut) => cut.cope)[0];
  near("cope angle", cope?.angle, expected.copeAngle, 1e-9);
  near("cope offset", cope?.offset, expected.copeOffset, 1e-9);
  if (expected.volume !== undefined) {
    const made = massOf(piece);
    near("volume", made.ok ? made.value.volume : undefined, expected.volume, 1e-9 * expected.volume);
  }
  return out;
}

describe("the corpus", () => {
  it("has models, each with its source", () => {
    expect(MODELS.length).toBeGreaterThanOrEqual(8);
    for (const [name, model] of MODELS) expect(model.source.length, name).toBeGreaterThan(20);
  });

  for (const [name, model] of MODELS) {
    it.each(Object.entries(VARIANTS))(`${name} %s`, (_variant, place) => {
      const { pieces, contacts, diagnostics } = solveJoints({ members: membersOf(model, place) });
      const { expected } = model;
      expect(diagnostics.map((d) => d.code)).toEqual(expected.codes);
      expect(contacts).toHaveLength(expected.contacts);
      expect(pieces).toHaveLength(model.members.length);
      expect(Object.keys(expected.pieces).length).toBeGreaterThan(0);
      for (const [id, wanted] of Object.entries(expected.pieces)) {
        const piece = pieces.find((p) => p.id === id)!;
        expect(piece.cuts.map((cut) => cut.kind)).toEqual(wanted.kinds);
        expect(missesOf(piece, wanted)).toEqual([]);
      }
    });
  }
});
