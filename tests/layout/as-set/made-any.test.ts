/**
 * Whatever of a guard is made, while nothing has moved nothing changes: every piece is what it was, and fits.
 *
 * Drawn sets of made features (seeded) over guards with breaks, corners, shoulders, root gaps, drilled posts and handrails.
 */
import { describe, expect, it } from "vitest";
import { fitsOf, type Piece, solidOf } from "../../../src/joints/index.js";
import {
  type BuiltGuard,
  buildGuard,
  type Feature,
  type MadePiece,
  NOTHING_SET,
} from "../../../src/layout/index.js";
import { pieceChanges } from "../../../src/shop/index.js";
import { type Random, randomFrom } from "../../support/random.js";
import { example, type Loose, withFloor } from "../designs.js";

const FEATURES: readonly Feature[] = ["start", "end", "holes"];

const GUARDS: Readonly<Record<string, unknown>> = {
  "the example, its wide posts closed at mid-depth": example(),
  "with a floor below and a root gap under two breaks": withFloor((d: Loose) => {
    d.gap = "1/16";
  }),
  "with bars through its posts": example((d) => {
    d.endPosts = undefined;
    d.sections.bar = "round bar 1/2";
    d.infill = { type: "rails", section: "bar", clear: "4", through: true, clearance: "1/32", past: "1" };
  }),
};

/** A drawn part of what can be made. */
function drawn(pieces: readonly Piece[], random: Random): MadePiece[] {
  return pieces.flatMap((piece): MadePiece[] => {
    const features = FEATURES.filter(() => random.chance(0.5));
    const set = random.chance(0.3);
    return random.chance(0.6) ? [{ piece, features, set, path: piece.mark }] : [];
  });
}

describe.each(Object.entries(GUARDS))("%s", (_, document) => {
  const plain: BuiltGuard = buildGuard(document);
  const codes = plain.diagnostics.map((own) => own.code);

  it.each([1, 2, 3, 4])("whatever is made of it changes nothing (draw %i)", (seed) => {
    const made = drawn(plain.pieces, randomFrom(seed));
    expect(made.length).toBeGreaterThan(5);
    const guard = buildGuard(document, undefined, { ...NOTHING_SET, made });
    expect(guard.diagnostics.map((own) => own.code)).toEqual(codes);
    expect(guard.misfits).toEqual([]);
    // A plane that is handed on by the layout comes back rounded: 1e-12 mm, far below 1e-6.
    const moved = pieceChanges(plain.pieces, guard.pieces, { over: 1e-6, overAngle: 1e-7 });
    expect(moved).toMatchObject({ changed: [], added: [], gone: [] });
    for (const { piece: was, features } of made) {
      const piece = guard.pieces.find((own) => own.id === was.id) as Piece;
      for (const end of [0, 1] as const) {
        if (!features.includes(end === 0 ? "start" : "end")) continue;
        expect([piece.ends[end], piece.cuts[end]]).toEqual([was.ends[end], was.cuts[end]]);
      }
    }
    expect(guard.pieces.filter((own) => !solidOf(own).ok)).toEqual([]);
    const [before, after] = [fitsOf(plain), fitsOf(guard)];
    expect(after).toHaveLength(before.length);
    for (const [i, fit] of after.entries()) {
      const was = before[i];
      if (!fit.ok || !was?.ok) throw new Error("no fit");
      expect(Math.abs(fit.value.gap - was.value.gap)).toBeLessThan(2e-6);
      expect(fit.value.overlap).toBeLessThan(2e-6);
    }
  });
});
