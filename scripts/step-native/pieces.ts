/**
 * The files of the long proof: random ends of the fuzz run's domain, drilled posts, the example's guard and the fixture G1, with what
 * a reader must find in them.
 */
import { readFileSync } from "node:fs";
import { type NamedSolid, type StepOptions, toStep } from "../../src/export/index.js";
import { type Piece, solidOf, solveJoints } from "../../src/joints/index.js";
import { massProperties, solidOfBar } from "../../src/kernel/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { fuzzCase } from "../../tests/fuzz/domain.js";
import { G1 } from "../../tests/joints/g1.js";
import { barOf, onRound, square, tube } from "../../tests/support/bars.js";
import { barOf as barOfCase } from "../../tests/support/joint-case.js";

/** What must be found of one piece. */
export interface Expected {
  readonly name: string;
  readonly volume: number;
  readonly colour: readonly [number, number, number];
}

/** One file. */
export interface LongFile {
  readonly name: string;
  readonly text: string;
  readonly expected: readonly Expected[];
  /** Pieces of the domain that have no solid, and so are not in the file. */
  readonly without: number;
}

const COLOUR = [0.25, 0.5, 0.75] as const;

function fileOf(name: string, items: readonly NamedSolid[], options: StepOptions, without = 0): LongFile {
  const made = toStep(
    items.map((item) => ({ ...item, colour: COLOUR })),
    options,
  );
  if (!made.ok) throw new Error(`${name}: ${made.diagnostics[0]?.message}`);
  const expected = items.map(({ name: piece, solid }) => ({
    name: piece,
    volume: massProperties(solid).volume,
    colour: COLOUR,
  }));
  return { name, text: made.value, expected, without };
}

/** Random pieces, so many to a file. */
export function* randomFiles(seed: number, count: number, each: number): Generator<LongFile> {
  for (let from = 0; from < count; from += each) {
    const items: NamedSolid[] = [];
    for (let number = from; number < Math.min(count, from + each); number++) {
      const made = solidOfBar(barOfCase(fuzzCase(seed, number).joint));
      if (made.ok) items.push({ name: `${seed}/${number}`, solid: made.value });
    }
    const without = Math.min(count, from + each) - from - items.length;
    const options = {
      schema: from % (2 * each) === 0 ? "AP214" : "AP242",
      unit: from % (3 * each) === 0 ? "in" : "mm",
    } as const;
    yield fileOf(`random-${seed}-${from}`, items, options, without);
  }
}

/** Drilled posts and whole guards. */
export function* guardFiles(): Generator<LongFile> {
  const direction = [0, 0.8, 0.6] as const;
  const posts = [0, 1, 2, 3].map((k): NamedSolid => {
    const bores = Array.from({ length: 10 }, (_, i) => ({
      id: `b${i}`,
      point: [0, 0, 100 + 80 * i + 3 * k] as const,
      direction,
      diameter: 6 + k,
      through: "both" as const,
    }));
    const made = solidOfBar({ ...barOf(tube(42.4, 3.2), square(), onRound(48.3, 1000, 53.13)), bores });
    if (!made.ok) throw new Error("a drilled post has no solid");
    return { name: `Pfosten №${k}`, solid: made.value };
  });
  yield fileOf("drilled", posts, {});
  const guard = buildGuard(JSON.parse(readFileSync("examples/pottery-studio.json", "utf8")));
  for (const schema of ["AP214", "AP242"] as const)
    for (const unit of ["mm", "in"] as const)
      yield fileOf(`pottery-${schema}-${unit}`, named(guard.pieces), { schema, unit, name: "Töpferei" });
  const { pieces } = solveJoints(G1);
  yield fileOf("g1", named(pieces), { name: "G1" });
}

function named(pieces: readonly Piece[]): NamedSolid[] {
  return pieces.map((piece) => {
    const made = solidOf(piece);
    if (!made.ok) throw new Error(`${piece.mark} has no solid`);
    return { name: piece.mark, solid: made.value, frame: piece.frame, material: piece.material };
  });
}
