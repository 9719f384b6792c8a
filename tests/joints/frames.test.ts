/**
 * Random small guards: what must not change when a guard is moved, drawn otherwise, scaled or mirrored (design, section 9;
 * the oracle is the symmetry itself), and that every piece is a closed solid.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type JointSolution, solidOf } from "../../src/joints/index.js";
import { checkMesh, tessellate, type Vec3 } from "../../src/kernel/index.js";
import { distance } from "../../src/kernel/vec.js";
import {
  type EndMeasure,
  type Frame,
  frames,
  type Measure,
  type Move,
  measures,
  membersOf,
  solveFrame,
} from "./frames.js";
import { numbersIn } from "./models.js";

const RUNS = 60;

const clean = (s: JointSolution): boolean => s.diagnostics.every((d) => d.severity !== "error");

/** Two measures of one piece; lengths `scale` times as long, `flip` where left and right have changed sides. */
function same(a: Measure, b: Measure, scale = 1, flip: "none" | "miter" | "mirror" = "none"): void {
  const near = (x: number, y: number, size: number): void => {
    expect(Math.abs(x * (size > 10 ? scale : 1) - y)).toBeLessThanOrEqual(1e-9 * Math.max(size * scale, 1));
  };
  expect(b.status).toBe(a.status);
  for (const [i, l] of a.lengths.entries()) near(l, b.lengths[i]!, 1000);
  // A refused solid has no volume; the first test below counts them.
  const ratio = Number.isNaN(a.volume) || Number.isNaN(b.volume) ? 1 : b.volume / (a.volume * scale ** 3);
  expect(Math.abs(ratio - 1)).toBeLessThan(1e-9);
  for (const [i, e] of a.ends.entries()) sameEnd(e, b.ends[i]!, scale, flip);
}

function sameEnd(a: EndMeasure, b: EndMeasure, scale: number, flip: "none" | "miter" | "mirror"): void {
  expect(b.kind).toBe(a.kind);
  const [miter, offset] = [flip === "none" ? 1 : -1, flip === "mirror" ? -1 : 1];
  for (const [x, y] of [
    [a.fromSquare, b.fromSquare],
    [miter * a.miter, b.miter],
    [a.bevel, b.bevel],
  ] as const) {
    expect(Math.abs(x - y)).toBeLessThan(1e-8);
  }
  expect(b.arris.length).toBe(a.arris.length);
  for (const [i, x] of a.arris.entries())
    expect(Math.abs(scale * x - b.arris[i]!)).toBeLessThan(2e-6 * scale);
  expect(b.copes.map((c) => c.onto)).toEqual(a.copes.map((c) => c.onto));
  for (const [i, c] of a.copes.entries()) {
    const d = b.copes[i]!;
    expect(Math.abs(c.angle - d.angle)).toBeLessThan(1e-8);
    expect(Math.abs(scale * c.gap - d.gap)).toBeLessThan(1e-9 * scale);
    // At a right angle the sign follows the way the header is drawn (design, section 5).
    const right = Math.abs(c.angle - 90) < 1e-6;
    const [x, y] = [scale * offset * c.offset, d.offset];
    expect(right ? Math.abs(Math.abs(x) - Math.abs(y)) : Math.abs(x - y)).toBeLessThan(1e-8 * scale);
  }
  for (const [i, x] of a.dihedral.entries()) expect(Math.abs(x - b.dihedral[i]!)).toBeLessThan(1e-3);
}

/** Solves a frame as it is and moved, and compares piece by piece; frames with an error must keep it. */
function compare(frame: Frame, move: Move, how: (id: string, a: Measure, b: Measure) => void): void {
  const [still, moved] = [solveFrame(frame), solveFrame(frame, move)];
  expect(moved.diagnostics.map((d) => d.code).sort()).toEqual(still.diagnostics.map((d) => d.code).sort());
  const [first, second] = [measures(still), measures(moved)];
  for (const [id, a] of first) how(id, a, second.get(id)!);
}

const angle = fc.integer({ min: -180, max: 180 });
/** Turns about Z, Y and X, then a shift. */
const motion = fc
  .tuple(angle, angle, angle, fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -20_000, max: 20_000 }))))
  .map(([z, y, x, shift]) => {
    const turn = (p: Vec3, deg: number, i: 0 | 1 | 2, j: 0 | 1 | 2): Vec3 => {
      const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
      const out: [number, number, number] = [...p];
      out[i] = c * p[i] - s * p[j];
      out[j] = s * p[i] + c * p[j];
      return out;
    };
    const direction = (d: Vec3): Vec3 => turn(turn(turn(d, z, 0, 1), y, 2, 0), x, 1, 2);
    const point = (p: Vec3): Vec3 => {
      const q = direction(p);
      return [q[0] + shift[0]!, q[1] + shift[1]!, q[2] + shift[2]!];
    };
    return { point, direction } satisfies Move;
  });

describe("a random small guard", () => {
  it("is mostly solved, and makes closed solids or says why not; never a number that is none", () => {
    let [models, solved, pieces, blocked, refused] = [0, 0, 0, 0, 0];
    fc.assert(
      fc.property(frames, (frame) => {
        const solution = solveFrame(frame);
        models++;
        if (clean(solution)) solved++;
        expect(numbersIn(solution).every(Number.isFinite)).toBe(true);
        expect(solution.pieces.map((p) => p.id)).toEqual(frame.parts.map((p) => p.id));
        for (const piece of solution.pieces) {
          pieces++;
          if (piece.status === "blocked") {
            blocked++;
            const own = solution.diagnostics.filter(
              (d) => d.severity === "error" && d.members.includes(piece.id),
            );
            expect(own.length).toBeGreaterThan(0);
            continue;
          }
          const made = solidOf(piece);
          if (!made.ok) {
            // Where a ridge falls within a hundredth of a hair of a corner the kernel refuses, and says so.
            refused++;
            expect(made.diagnostics.map((d) => d.message.length * d.hint.length)).not.toContain(0);
            continue;
          }
          const report = checkMesh(tessellate(made.value, { chord: 0.1 }), "edges");
          expect(report.diagnostics).toEqual([]);
          expect(report.ok).toBe(true);
        }
      }),
      { numRuns: 120 },
    );
    // Quotas, so that the properties below are about something.
    expect(solved / models).toBeGreaterThan(0.7);
    expect(blocked / pieces).toBeLessThan(0.1);
    expect(refused / pieces).toBeLessThan(0.01);
  });

  it("has the same pieces wherever it stands and however it is turned", () => {
    fc.assert(
      fc.property(frames, motion, (frame, move) => compare(frame, move, (_id, a, b) => same(a, b))),
      { numRuns: RUNS },
    );
  });

  it("has the same pieces with any member drawn the other way round: its ends change places, its left its right", () => {
    fc.assert(
      fc.property(frames, fc.constantFrom("A", "B", "P0", "P1", "P2", "L"), (frame, id) => {
        compare(frame, { reverse: [id] }, (own, a, b) => {
          if (own !== id) return same(a, b);
          same(a, { ...b, ends: [b.ends[1]!, b.ends[0]!] }, 1, "miter");
        });
      }),
      { numRuns: RUNS },
    );
  });

  it("scales: lengths by the factor, volumes by its cube, angles not at all", () => {
    fc.assert(
      fc.property(frames, fc.constantFrom(0.5, 1.5, 2, 3.7), (frame, scale) => {
        compare(frame, { scale }, (_id, a, b) => same(a, b, scale));
      }),
      { numRuns: RUNS },
    );
  });

  it("mirrors: lengths and volumes stay, miters and offsets change sign", () => {
    const mirror = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
    fc.assert(
      fc.property(frames, (frame) => {
        compare(frame, { point: mirror, direction: mirror }, (_id, a, b) => same(a, b, 1, "mirror"));
      }),
      { numRuns: RUNS },
    );
  });

  it("has the same pieces in whatever order its members are given", () => {
    const shuffled = frames.chain((f) =>
      fc.tuple(
        fc.constant(f),
        fc.shuffledSubarray([...f.parts], { minLength: f.parts.length, maxLength: f.parts.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([frame, parts]) => {
        const [first, second] = [measures(solveFrame(frame)), measures(solveFrame({ ...frame, parts }))];
        for (const [id, a] of first) same(a, second.get(id)!);
        const contacts = (f: Frame) =>
          solveFrame(f)
            .contacts.map((c) => JSON.stringify(c))
            .sort();
        expect(contacts({ ...frame, parts })).toEqual(contacts(frame));
      }),
      { numRuns: RUNS },
    );
  });

  it("is trimmed, never grown: no axis reaches past its member's own but by a last rail's flush end", () => {
    fc.assert(
      fc.property(frames, (frame) => {
        const members = membersOf(frame);
        for (const [i, piece] of solveFrame(frame).pieces.entries()) {
          const drawn = distance(members[i]!.from, members[i]!.to);
          expect(piece.lengths.axis!.value).toBeLessThanOrEqual(drawn + 1e-9);
          // A fibre off the axis goes on by no more than the section's reach times the slope of the cut.
          const half = Math.max(...piece.lengths.blank.from.point.slice(0, 2).map(Math.abs), 31) * Math.SQRT2;
          const lean = piece.cuts.map((c) =>
            Math.tan(((c.saw?.fromSquare ?? 90 - (c.cope[0]?.angle ?? 90)) * Math.PI) / 180),
          );
          const round = piece.cuts.every((c) => c.saw || c.cope.length === 1);
          if (round)
            expect(piece.lengths.blank.value).toBeLessThanOrEqual(
              drawn + half * (lean[0]! + lean[1]!) + 1e-9,
            );
        }
      }),
      { numRuns: RUNS },
    );
  });
});
