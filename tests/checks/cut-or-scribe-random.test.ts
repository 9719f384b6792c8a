/**
 * Random guards, counted and measured, with and without posts as set: every end of every piece has one decision and no number
 * that is none; better readings never make anything less well known.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutOrScribe } from "../../src/checks/index.js";
import {
  type AsSet,
  DEFAULT_SHOP,
  type EndDecision,
  type LaidCase,
  type Reading,
  type TapeClass,
} from "../../src/layout/index.js";
import type { Loose } from "../layout/designs.js";
import { type BuiltCase, built, designOf, nosingsOf, survey } from "../layout/uncertainty/fit-designs.js";

/** More by hand: GUARDS=100 npx vitest run tests/checks/cut-or-scribe-random.test.ts */
const RUNS = Number(process.env.GUARDS ?? 12);
const MINUTES = 60_000 * (1 + RUNS / 4);

const within = (min: number, max: number) => fc.integer({ min, max });

const guard = fc
  .record({
    steps: fc.constantFrom("counted", "taped", "surveyed"),
    risers: within(4, 9),
    riser: within(150, 200),
    going: within(240, 320),
    off: fc.array(within(-4, 4), { minLength: 20, maxLength: 20 }),
    higher: fc.constantFrom(0, 0, 120),
    turn: fc.constantFrom(0, 0, 90, -60),
    floor: fc.boolean(),
    landing: fc.boolean(),
    wall: fc.boolean(),
    both: fc.boolean(),
    bars: fc.boolean(),
    joints: fc.constantFrom([], ["breaks"], ["corners"]),
    stages: fc.array(fc.constantFrom("none", "dry-set", "set"), { minLength: 4, maxLength: 4 }),
    asSet: fc.boolean(),
  })
  .filter((g) => !(g.both && g.turn !== 0));

type Drawn = typeof guard extends fc.Arbitrary<infer T> ? T : never;

/** A survey of riser, tread, and slope readings with a sigma. */
function readings(g: Drawn, sigma: number): Reading[] {
  const n = g.risers;
  const off = (i: number) => g.off[i % 20]!;
  const all = Array.from({ length: n }, (_, i) => i + 1);
  const x = (k: number) => (k - 1) * g.going + (k === 1 ? 0 : off(k));
  const z = (k: number) => k * g.riser + off(k + 7);
  const rise = all.map((k): Reading => {
    const value = z(k) - (k === 1 ? 0 : z(k - 1));
    return { id: `R${k}`, kind: "rise", from: k - 1, to: k, value, sigma };
  });
  const run = all.slice(1).map((k): Reading => {
    return { id: `T${k}`, kind: "run", from: k - 1, to: k, value: x(k) - x(k - 1), sigma };
  });
  return [...rise, ...run, { id: "H", kind: "height", to: n, value: z(n), sigma }];
}

function documentOf(g: Drawn, nosings: readonly { run: number; height: number }[]): Loose {
  const sizes = { overhang: 20, width: 1100, inset: 60 };
  const stair =
    g.steps === "counted"
      ? { risers: g.risers, floorToFloor: g.risers * g.riser, going: g.going, ...sizes }
      : { nosings, ...sizes };
  const turned = g.turn !== 0 && g.landing;
  return {
    ...{ version: 1, job: "Random fits", unit: "mm", side: g.both ? "both" : "left", gap: 1.5 },
    stair,
    sections: { rail: "square 40 x 3", post: "square 40 x 3", low: "square 25 x 2", bar: "round bar 12" },
    rails: [
      { role: "top", section: "rail" },
      { id: "low", role: "lower", section: "low" },
    ],
    posts: { section: "post" },
    foot: { thickness: 8, along: 90, across: 90 },
    ...(g.bars ? { infill: { type: "bars", section: "bar", clear: 95 } } : {}),
    fieldJoints: g.joints,
    legs: [
      ...(g.floor
        ? [
            {
              ...{ along: "floor", top: 950, undersides: { low: 60 } },
              posts: { at: [g.going + 300, g.going + 900] },
            },
          ]
        : []),
      {
        ...{ along: "stair", top: 950, undersides: { low: 60 } },
        posts: { onTreads: [1, g.risers - 1], behindNosing: 80 },
      },
      ...(g.landing
        ? [
            {
              ...{
                along: "landing",
                length: 1800,
                top: 950 + (turned ? 0 : g.higher),
                undersides: { low: 60 },
              },
              posts: { at: [600, 1200] },
              ...(turned
                ? { turn: { angle: g.turn, corner: "post", past: 400, section: "post", above: 100, cap: 5 } }
                : {}),
              ...(g.wall ? { end: { type: "wall", endPlate: 8 } } : {}),
            },
          ]
        : []),
    ],
  };
}

function asSetOf(g: Drawn, { pieces }: BuiltCase, sigma: number): AsSet | undefined {
  if (!g.asSet) return undefined;
  const marks = pieces.filter((own) => own.role === "post").map((own) => own.mark);
  const posts = marks.flatMap((mark, i) => {
    const stage = g.stages[i % 4]!;
    if (stage === "none") return [];
    const own = { post: mark, stage: stage as "set", lean: 0, leanAcross: 0, across: 0 };
    return [{ ...own, sigma: { x: sigma, z: sigma, lean: sigma / 50 }, path: `posts[${i}]` }];
  });
  return { posts, legs: [], made: [] };
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

function decided(laid: LaidCase, own: BuiltCase): readonly EndDecision[] {
  const found = cutOrScribe(laid, own, { gap: 1.5 });
  if (!found.ok) throw new Error(found.diagnostics.map((d) => d.message).join(" "));
  return found.value;
}

/** No sigma of the second is less than the first's. */
function noBetter(fine: readonly EndDecision[], coarse: readonly EndDecision[]) {
  fine.forEach((own, i) => {
    const other = coarse[i]!;
    expect([own.piece, own.end]).toEqual([other.piece, other.end]);
    const room = 1 + 1e-9;
    expect(own.sigmaLength ?? 0).toBeLessThanOrEqual((other.sigmaLength ?? 0) * room + 1e-12);
    expect(own.sigmaAngle ?? 0).toBeLessThanOrEqual((other.sigmaAngle ?? 0) * room + 1e-12);
  });
}

describe("random guards", () => {
  it(
    "have one decision for every end, in numbers, and better readings never worsen one",
    () => {
      const seen = { guards: 0, cut: 0, scribe: 0, counted: 0, made: 0 };
      fc.assert(
        fc.property(guard, (g) => {
          const taken = survey(readings(g, 1.5));
          const nosings = nosingsOf(taken);
          const loose = documentOf(g, nosings);
          const design = designOf(loose, g.steps === "surveyed" ? taken : undefined);
          const own = built(design);
          if (own.diagnostics.some((d) => d.severity === "error")) return;
          const at = (tape: TapeClass, sigma: number) =>
            decided({ design, shop: { ...DEFAULT_SHOP, tape }, asSet: asSetOf(g, own, sigma) }, own);
          const all = at("II", 0.5);
          seen.guards++;
          expect(all.map((one) => [one.piece, one.end])).toEqual(
            own.pieces.flatMap((piece) => [0, 1].map((end) => [piece.id, end])),
          );
          // Every post stands on something, in either guard of a pair.
          const posts = new Set(own.pieces.filter((piece) => piece.role === "post").map((piece) => piece.id));
          const feet = all.filter((one) => posts.has(one.piece) && one.end === 0);
          expect(feet.filter((one) => one.rule === "free")).toEqual([]);
          for (const one of all) {
            seen[one.decision]++;
            expect(numbersIn(one).every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
            expect(one.leaveLong > 0, one.reason).toBe(one.decision === "scribe");
            expect(one.reason.length).toBeGreaterThan(10);
            expect(one.reason).not.toMatch(/undefined|NaN|null/);
            if (g.steps !== "counted") expect(one.decision).not.toBe("counted");
            else expect((one.sigmaLength === null) <= (one.decision !== "scribe")).toBe(true);
          }
          noBetter(at("I", 0.5), all);
          noBetter(all, at("III", 0.9));
          if (g.steps === "surveyed") {
            const finer = designOf(loose, survey(readings(g, 0.4)));
            noBetter(decided({ design: finer, asSet: asSetOf(g, own, 0.5) }, own), all);
          }
        }),
        { numRuns: RUNS, seed: 9 },
      );
      expect(seen.guards).toBeGreaterThan(RUNS / 2);
      for (const kind of ["cut", "scribe", "counted", "made"] as const)
        expect(seen[kind], kind).toBeGreaterThan(0);
    },
    MINUTES,
  );
});
