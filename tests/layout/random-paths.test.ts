/**
 * Random guards of up to four legs with plan turns, on either side or both: every design that reads and lays out without an
 * error builds closed solids that fit their neighbours; the mirrored design gives mirrored pieces.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf, solidOf } from "../../src/joints/index.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { buildGuard } from "../../src/layout/index.js";
import { pathGuard as guard, mirrored } from "./random-path-guard.js";

/** More by hand: GUARDS=200 npx vitest run tests/layout/random-paths.test.ts */
const RUNS = Number(process.env.GUARDS ?? 12);
const MINUTES = 60_000 * (1 + RUNS / 4);

const errors = (built: ReturnType<typeof buildGuard>) =>
  built.diagnostics.filter((d) => d.severity === "error").map((d) => d.code);

describe("random paths", () => {
  it(
    "build closed solids without an error, or say what is in the way",
    () => {
      const seen = { built: 0, refused: 0, corners: 0, pieces: 0 };
      /** What a path drawn blindly may run into; anything else is a fault of ours. */
      const fair = new Set([
        "guard-crosses-itself",
        "guards-meet",
        "bay-without-line",
        "rail-too-short",
        "drop-too-short",
        "corner-level-too-short",
        "corner-rails-miss",
        "rails-never-meet",
        "posts-overlap",
      ]);
      fc.assert(
        fc.property(guard, (document) => {
          const built = buildGuard(document);
          const bad = errors(built);
          if (bad.length > 0) {
            expect(bad.filter((code) => !fair.has(code))).toEqual([]);
            seen.refused++;
            return;
          }
          seen.built++;
          seen.corners += built.report!.corners.length;
          for (const piece of built.pieces) {
            expect(piece.status, piece.id).toBe("ok");
            const solid = solidOf(piece);
            expect(solid.ok, piece.id).toBe(true);
            if (solid.ok) expect(validateSolid(solid.value), piece.id).toEqual([]);
            seen.pieces++;
          }
          expect(built.assemblies.flatMap((own) => own.pieces).sort()).toEqual(
            built.pieces.map((p) => p.id).sort(),
          );
        }),
        { numRuns: RUNS, seed: 5 },
      );
      expect(seen.built).toBeGreaterThan(RUNS / 2);
      expect(seen.corners).toBeGreaterThan(RUNS / 4);
      expect(seen.pieces).toBeGreaterThan(12 * RUNS);
    },
    MINUTES,
  );

  it(
    "fit: no piece lies in its neighbour, no cut stands open wider than its gap",
    () => {
      fc.assert(
        fc.property(guard, (document) => {
          const built = buildGuard({ ...document, side: "left" });
          if (errors(built).length > 0) return;
          for (const contact of built.contacts) {
            const fit = fitOf(contact, built.pieces);
            expect(fit.ok, contact.joint).toBe(true);
            if (!fit.ok) continue;
            expect(fit.value.overlap, `${contact.piece} in ${contact.onto}`).toBeLessThanOrEqual(2e-6);
            expect(fit.value.gap, `${contact.piece} on ${contact.onto}`).toBeLessThanOrEqual(
              contact.gap + 2e-6,
            );
          }
        }),
        { numRuns: Math.ceil(RUNS / 4), seed: 11 },
      );
    },
    MINUTES,
  );

  it(
    "mirror: the other hand has mirrored members, pieces of the same lengths, and hands told apart",
    () => {
      fc.assert(
        fc.property(guard, (document) => {
          const [one, other] = [buildGuard({ ...document, side: "left" }), buildGuard(mirrored(document))];
          expect(errors(other)).toEqual(errors(one));
          one.members.forEach((own, i) => {
            const image = other.members[i]!;
            expect(image.id).toBe(own.id);
            for (const key of ["from", "to"] as const) {
              expect(image[key][0]).toBeCloseTo(own[key][0], 6);
              expect(image[key][1]).toBeCloseTo(-own[key][1], 6);
              expect(image[key][2]).toBeCloseTo(own[key][2], 6);
            }
          });
          one.pieces.forEach((own, i) => {
            const image = other.pieces[i]!;
            expect(image.lengths.blank.value, own.id).toBeCloseTo(own.lengths.blank.value, 5);
            expect(image.lengths.shortPoint.value, own.id).toBeCloseTo(own.lengths.shortPoint.value, 5);
          });
        }),
        { numRuns: Math.ceil(RUNS / 3), seed: 3 },
      );
    },
    MINUTES,
  );
});
