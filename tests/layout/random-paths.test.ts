/**
 * Random guards of up to four legs with plan turns, on either side or both: every design that reads and lays out without an
 * error builds closed solids that fit their neighbours; the mirrored design gives mirrored pieces.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf, solidOf } from "../../src/joints/index.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { buildGuard } from "../../src/layout/index.js";
import type { Loose } from "./designs.js";

/** More by hand: GUARDS=200 npx vitest run tests/layout/random-paths.test.ts */
const RUNS = Number(process.env.GUARDS ?? 12);
const MINUTES = 60_000 * (1 + RUNS / 4);

const mm = (min: number, max: number) => fc.integer({ min, max });

const guard = fc
  .record({
    risers: fc.array(mm(3, 9), { minLength: 2, maxLength: 2 }),
    riser: mm(150, 200),
    going: mm(240, 320),
    top: mm(850, 1100),
    higher: fc.constantFrom(0, 0, 150),
    how: fc.constantFrom("meet", "drop", "compromise", "riser"),
    rail: fc.constantFrom("round 48.3 x 3.2", "square 40 x 3", "rect 60 x 40 x 3"),
    post: fc.constantFrom("round 42.4 x 2.6", "square 40 x 3"),
    low: fc.constantFrom("square 25 x 2", "round bar 16"),
    turns: fc.array(fc.constantFrom(0, 90, -90, 60, -35), { minLength: 3, maxLength: 3 }),
    corner: fc.constantFrom("post", "level"),
    legs: mm(1, 4),
    floor: fc.boolean(),
    wall: fc.boolean(),
    both: fc.boolean(),
  })
  .map((g): Loose => {
    const turn = (i: number, more: Loose) =>
      g.turns[i] === 0
        ? {}
        : {
            turn: {
              ...{ angle: g.turns[i], corner: g.corner, ...more },
              ...(g.corner === "post" ? { section: "corner", above: 40, cap: 5 } : {}),
            },
          };
    const stair = (n: number) => ({
      ...{ along: "stair", top: g.top, undersides: { low: 60 } },
      stair: { risers: g.risers[n], floorToFloor: g.risers[n]! * g.riser, going: g.going, overhang: 20 },
      posts: { onTreads: [1, g.risers[n]! - 1], behindNosing: 80 },
    });
    const landing = { along: "landing", top: g.top, undersides: { low: 60 } };
    const all = [
      stair(0),
      { ...landing, length: 1600, ...turn(0, { past: 400 }), posts: { at: [600, 1200] } },
      // Straight on, the landing ends at the next nosing; at a corner, 500 in front of it.
      { ...stair(1), ...turn(1, { before: 500 }) },
      {
        ...{ ...landing, top: g.top + g.higher, length: 1500, ...turn(2, { past: 400 }) },
        ...(g.turns[2] === 0 && g.higher > 0 ? { break: g.how } : {}),
        posts: { spacing: { from: 400, to: 1300, greatest: 700 } },
        ...(g.wall ? { end: { type: "wall", endPlate: 8 } } : {}),
      },
    ].slice(0, g.legs);
    if (g.legs === 2 && g.wall) Object.assign(all[1]!, { end: { type: "wall", endPlate: 8 } });
    const floor = {
      along: "floor",
      top: g.top,
      undersides: { low: 60 },
      posts: { at: [g.going + 300, g.going + 900] },
    };
    return {
      ...{ version: 1, job: "Random path", unit: "mm", side: g.both ? "both" : "left" },
      stair: { risers: 4, floorToFloor: 700, going: 260, width: 1100, inset: 60 },
      sections: { rail: g.rail, post: g.post, low: g.low, corner: "square 60 x 4" },
      rails: [
        { role: "top", section: "rail" },
        { id: "low", role: "lower", section: "low" },
      ],
      posts: { section: "post" },
      foot: { thickness: 8, along: 90, across: 90, holes: { diameter: 11, along: 60, across: 60 } },
      legs: g.floor ? [floor, ...all] : all,
    };
  });

/** Turns a design over: the other side, turns the other way. */
function mirrored(document: Loose): Loose {
  const other = structuredClone(document);
  other.side = "right";
  for (const leg of other.legs) if (leg.turn) leg.turn.angle = -leg.turn.angle;
  return other;
}

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
