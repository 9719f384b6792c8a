/**
 * Random guards whose posts all stand a little off: every solid is sound and every joint fits; nothing moves where nothing was
 * measured to have moved; a pair that is off alike is each other's mirror image.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf, solidOf } from "../../../src/joints/index.js";
import { validateSolid } from "../../../src/kernel/rules/validate.js";
import { type AsSet, type AsSetPost, buildGuard, NOTHING_SET } from "../../../src/layout/index.js";
import { mirrored, pathGuard } from "../random-path-guard.js";

/** More by hand: GUARDS=100 npx vitest run tests/layout/as-set */
const RUNS = Number(process.env.GUARDS ?? 8);
const MINUTES = 60_000 * (2 + RUNS / 2);

type Built = ReturnType<typeof buildGuard>;
const errors = (built: Built) => built.diagnostics.filter((d) => d.severity === "error");

const off = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
/** What a post is off by: along the guard, in height, across, and its two leans; one in two only in the guard's plane. */
const offs = fc.array(fc.tuple(off(6), off(4), off(1.5), off(0.6), off(0.25), fc.boolean()), {
  minLength: 30,
  maxLength: 30,
});
type Offs = readonly (readonly [number, number, number, number, number, boolean])[];

const SIGMA = { x: 1, z: 1, lean: 0.1 };

/** Every post of a built guard, off by so much; `hand` −1 turns what is across the guard over. */
function allOff(built: Built, by: Offs, hand: 1 | -1 = 1): AsSet {
  const posts = (built.report?.posts ?? []).map((post, i): AsSetPost => {
    const [x, z, across, lean, leanAcross, plane] = by[i % by.length]!;
    return {
      ...{ post: post.mark, stage: "set", x: post.x + x, baseZ: post.baseZ + z, lean },
      ...(plane ? { across: 0, leanAcross: 0 } : { across: hand * across, leanAcross: hand * leanAcross }),
      ...{ sigma: SIGMA, path: `posts[${i}]` },
    };
  });
  return { ...NOTHING_SET, posts };
}

/** Fails with everything that is unsound or does not fit. */
function sound(built: Built): void {
  const bad: string[] = [];
  for (const piece of built.pieces) {
    const solid = solidOf(piece);
    if (piece.status !== "ok" || !solid.ok || validateSolid(solid.value).length > 0) bad.push(piece.id);
  }
  for (const contact of built.contacts) {
    const fit = fitOf(contact, built.pieces);
    const fits = fit.ok && fit.value.overlap <= 2e-6 && fit.value.gap <= contact.gap + 2e-6;
    if (!fits) bad.push(`${contact.piece} on ${contact.onto}: ${JSON.stringify(fit)}`);
  }
  expect(bad).toEqual([]);
}

describe("posts that stand off", () => {
  it(
    "are cut sound and to fit, with all that meets them",
    () => {
      const seen = { built: 0, corners: 0 };
      fc.assert(
        fc.property(pathGuard, offs, (document, by) => {
          const design = { ...document, side: "left" };
          const plain = buildGuard(design);
          if (errors(plain).length > 0) return;
          const built = buildGuard(design, undefined, allOff(plain, by));
          expect(errors(built).map((d) => d.message)).toEqual([]);
          sound(built);
          seen.built++;
          seen.corners += built.report!.corners.length;
        }),
        { numRuns: RUNS, seed: 21, endOnFailure: true },
      );
      expect(seen.built).toBeGreaterThan(RUNS / 3);
      expect(seen.corners).toBeGreaterThan(0);
    },
    MINUTES,
  );

  it(
    "by nothing are the designed ones, byte for byte",
    () => {
      const still: Offs = [[0, 0, 0, 0, 0, false]];
      fc.assert(
        fc.property(pathGuard, (document) => {
          const design = { ...document, side: "left" };
          const plain = buildGuard(design);
          const built = buildGuard(design, undefined, allOff(plain, still));
          expect(JSON.stringify(built.pieces)).toBe(JSON.stringify(plain.pieces));
        }),
        { numRuns: RUNS, seed: 4, endOnFailure: true },
      );
    },
    MINUTES,
  );

  it(
    "alike on either hand are mirror images, cut to the same lengths",
    () => {
      let built = 0;
      fc.assert(
        fc.property(pathGuard, offs, (document, by) => {
          const [left, right] = [{ ...document, side: "left" }, mirrored(document)];
          const plain = buildGuard(left);
          if (errors(plain).length > 0) return;
          const one = buildGuard(left, undefined, allOff(plain, by));
          const other = buildGuard(right, undefined, allOff(buildGuard(right), by, -1));
          expect(other.members.map((own) => own.id)).toEqual(one.members.map((own) => own.id));
          one.members.forEach((own, i) => {
            const image = other.members[i]!;
            for (const key of ["from", "to"] as const) {
              expect(image[key][0], own.id).toBeCloseTo(own[key][0], 6);
              expect(image[key][1], own.id).toBeCloseTo(-own[key][1], 6);
              expect(image[key][2], own.id).toBeCloseTo(own[key][2], 6);
            }
          });
          one.pieces.forEach((own, i) => {
            const image = other.pieces[i]!;
            expect(image.lengths.blank.value, own.id).toBeCloseTo(own.lengths.blank.value, 5);
          });
          built++;
        }),
        { numRuns: Math.ceil(RUNS / 2), seed: 33, endOnFailure: true },
      );
      expect(built).toBeGreaterThan(0);
    },
    MINUTES,
  );
});
