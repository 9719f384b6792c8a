/**
 * A second route to what is known of a piece: draw the readings a thousand times, lay the guard out each time, and take the
 * standard deviation of its lengths. Box-Muller normals; the layout and the covariance are shared, the propagation is not.
 *
 * A standard deviation of 1,000 draws is itself known to 1/√2000 = 2.2 %: three of these are allowed below. Above, the line of
 * least greatest miss changes nosings within a reading's uncertainty and the steeper side counts: what is said may be more than
 * what is drawn there, two and a half times as much where many nosings all but tie.
 */
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/kernel/vec.js";
import { distance } from "../../../src/kernel/vec.js";
import { type LaidCase, unknownsOf } from "../../../src/layout/index.js";
import { layOut } from "../../../src/layout/lay-out.js";
import { movedCase } from "../../../src/layout/uncertainty/unknown.js";
import { randomFrom } from "../../support/random.js";
import { DEMO } from "../survey/survey-cases.js";
import { designOf, document, knownOf, nosingsOf, survey } from "./fit-designs.js";

const DRAWS = 1000;
/** More by hand: STAIRS=24 npx vitest run tests/layout/uncertainty/monte-carlo.test.ts */
const STAIRS = Number(process.env.STAIRS ?? 4);

/** Lower triangle of a covariance (Cholesky); a row that follows from the others is zero from there on. */
function triangle(C: readonly (readonly number[])[]): number[][] {
  const L = C.map((row) => row.map(() => 0));
  C.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      const sum = row[j]! - L[i]!.reduce((acc, value, k) => (k < j ? acc + value * L[j]![k]! : acc), 0);
      if (i === j) L[i]![j] = Math.sqrt(Math.max(sum, 0));
      else L[i]![j] = L[j]![j]! > 1e-12 ? sum / L[j]![j]! : 0;
    }
  });
  return L;
}

/** Standard deviation of every member's length, by id. */
function drawn(laid: LaidCase, seed: number, draws = DRAWS): Map<string, number> {
  const unknowns = unknownsOf(laid);
  if (!unknowns.ok) throw new Error("unknowns");
  const { measured, covariance } = unknowns.value;
  const L = triangle(covariance);
  const random = randomFrom(seed);
  const normal = () =>
    Math.sqrt(-2 * Math.log(1 - random.between(0, 1))) * Math.cos(2 * Math.PI * random.between(0, 1));
  const sums = new Map<string, [number, number]>();
  const base = new Map(
    layOut(laid.design).members.map((own) => [own.id, distance(own.from as Vec3, own.to)]),
  );
  for (let i = 0; i < draws; i++) {
    const z = measured.map(normal);
    const moved = measured.reduce<LaidCase>(
      (one, own, k) =>
        movedCase(
          one,
          own,
          L[k]!.reduce((sum, value, j) => sum + value * z[j]!, 0),
        ),
      laid,
    );
    for (const own of layOut(moved.design).members) {
      const off = distance(own.from, own.to) - base.get(own.id)!;
      const [s, q] = sums.get(own.id) ?? [0, 0];
      sums.set(own.id, [s + off, q + off * off]);
    }
  }
  return new Map([...sums].map(([id, [s, q]]) => [id, Math.sqrt((q - (s * s) / draws) / (draws - 1))]));
}

const IDS = [
  "stair-top",
  "landing-top",
  "bay-1-low",
  "bay-2-low",
  "stair-post-1",
  "stair-post-2",
  "stair-post-3",
];

describe("a thousand draws through the layout", () => {
  it("of taped nosings nearly on a line: no length is known less well than said", () => {
    const design = designOf(document());
    const known = knownOf({ design });
    const by = drawn({ design }, 7);
    for (const id of IDS) {
      const ratio = known.get(id)!.sigmaLength / by.get(id)!;
      expect(ratio, id).toBeGreaterThan(0.93);
      expect(ratio, id).toBeLessThan(2.5);
    }
  }, 120_000);

  it("of a survey, whose places know of each other", () => {
    const read = survey(DEMO);
    const design = designOf(
      document((one) => {
        one.stair = { nosings: nosingsOf(read), overhang: 20 };
      }),
      read,
    );
    const known = knownOf({ design });
    const by = drawn({ design }, 11);
    for (const id of IDS) {
      const ratio = known.get(id)!.sigmaLength / by.get(id)!;
      expect(ratio, id).toBeGreaterThan(0.93);
      expect(ratio, id).toBeLessThan(2);
    }
  }, 120_000);

  it(
    "of random stairs, even to uneven: never less than 250 draws can tell (3 / √500 = 13 %)",
    () => {
      const random = randomFrom(31);
      const ratios: number[] = [];
      for (let stair = 0; stair < STAIRS; stair++) {
        const off = [0, 0.5, 2, 6][stair % 4]!;
        const n = 5 + 4 * (stair % 3);
        const nosings = Array.from({ length: n }, (_, i) => ({
          run: i === 0 ? 0 : 270 * i + random.between(-off, off),
          height: 190 * (i + 1) + random.between(-off, off),
        }));
        const design = designOf(
          document((one) => {
            one.stair = { nosings, overhang: 20 };
            one.legs[0].posts.onTreads = [1, 3, n - 1];
          }),
        );
        const known = knownOf({ design });
        const by = drawn({ design }, 100 + stair, 250);
        ratios.push(...IDS.map((id) => known.get(id)!.sigmaLength / by.get(id)!));
      }
      ratios.sort((a, b) => a - b);
      expect(ratios[0]!).toBeGreaterThan(0.87);
      expect(ratios[Math.floor(ratios.length / 2)]!).toBeLessThan(1.35);
      expect(ratios.at(-1)!).toBeLessThan(2.6);
    },
    60_000 * (1 + STAIRS / 8),
  );
});
