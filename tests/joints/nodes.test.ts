import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Meeting, meetingsOf, onSpan } from "../../src/joints/nodes.js";
import type { Vec3 } from "../../src/kernel/index.js";
import type { Member } from "../../src/members/index.js";
import { rail } from "./models.js";

const NODE = 0.1;

const at = (meetings: readonly Meeting[], member: string, end: 0 | 1): Meeting =>
  meetings.find((m) => m.end.member === member && m.end.end === end)!;

describe("meetingsOf", () => {
  it("links a chain of ends each within the tolerance of the next, though its first and last are not (single link)", () => {
    // 0.08 apart along x, so 0.16 from first to last, and one that is 0.11 from the last.
    const members = [0, 0.08, 0.16, 0.27].map((x, i) => rail(`R${i}`, [x, 0, 0], [x, 1000 * (i + 1), 500]));
    const meetings = meetingsOf(members, NODE);
    expect(at(meetings, "R0", 0).ends.map((e) => e.member)).toEqual(["R1", "R2"]);
    expect(at(meetings, "R2", 0).ends.map((e) => e.member)).toEqual(["R0", "R1"]);
    expect(at(meetings, "R3", 0).ends).toEqual([]);
    expect(at(meetings, "R0", 1).ends).toEqual([]);
  });

  it("stands an end on a span only between the ends of it, each more than the tolerance away", () => {
    const long = rail("L", [0, 0, 0], [1000, 0, 0]);
    const onto = (p: Vec3): string[] => [
      ...at(meetingsOf([rail("B", p, [p[0], 500, 0]), long], NODE), "B", 0).spans,
    ];
    expect(onto([500, 0, 0])).toEqual(["L"]);
    expect(onto([500, 0.09, 0])).toEqual(["L"]);
    expect(onto([500, 0.11, 0])).toEqual([]);
    expect(onto([0.09, 0, 0])).toEqual([]);
    expect(onto([0.11, 0, 0])).toEqual(["L"]);
    expect(onto([999.91, 0, 0])).toEqual([]);
    expect(onto([1000.5, 0, 0])).toEqual([]);
  });

  /** On a grid of a third of the tolerance, so that ends often meet, and often miss by little. */
  const place = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 12 }))).map((p) => {
    const [x, y, z] = p as [number, number, number];
    return [(x * NODE) / 3, (y * NODE) / 3, (z * NODE) / 3] as Vec3;
  });
  const frames = fc
    .array(fc.tuple(place, place), { minLength: 1, maxLength: 14 })
    .map((pairs) => pairs.filter(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 0.01))
    .map((pairs) => pairs.map(([a, b], i) => rail(`R${i}`, a, b, { up: [1, Math.SQRT2, Math.PI] })));

  const flat = (m: Meeting): string =>
    `${m.end.member}.${m.end.end}: ${m.ends.map((e) => `${e.member}.${e.end}`).sort()} / ${[...m.spans].sort()}`;

  it("finds the clusters and spans that looking at every pair finds (second route: brute force)", () => {
    fc.assert(
      fc.property(frames, (members) => {
        const ends = members.flatMap((m) => [
          { key: `${m.id}.0`, p: m.from, m },
          { key: `${m.id}.1`, p: m.to, m },
        ]);
        const near = (a: Vec3, b: Vec3): boolean => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) <= NODE;
        const expected = ends.map((e) => {
          // Grow the set until no end outside it is within the tolerance of one inside.
          const inside = new Set([e]);
          for (let more = true; more; ) {
            const next = ends.filter((x) => !inside.has(x) && [...inside].some((y) => near(x.p, y.p)));
            for (const x of next) inside.add(x);
            more = next.length > 0;
          }
          inside.delete(e);
          const spans = members.filter((m) => m !== e.m && onSpan(m, e.p, NODE)).map((m) => m.id);
          return `${e.key}: ${[...inside].map((x) => x.key).sort()} / ${spans.sort()}`;
        });
        expect(meetingsOf(members, NODE).map(flat)).toEqual(expected);
      }),
      { numRuns: 300 },
    );
  });

  it("does not depend on the order of the members", () => {
    fc.assert(
      fc.property(
        frames.chain((f) => fc.tuple(fc.constant(f), shuffled(f))),
        ([members, other]) => {
          expect(meetingsOf(other, NODE).map(flat).sort()).toEqual(
            meetingsOf(members, NODE).map(flat).sort(),
          );
        },
      ),
      { numRuns: 200 },
    );
  });
});

function shuffled(members: readonly Member[]): fc.Arbitrary<Member[]> {
  return fc.shuffledSubarray([...members], { minLength: members.length, maxLength: members.length });
}

describe("onSpan", () => {
  it("measures square to the centreline, however it lies (closed form)", () => {
    // Along (3, 4, 0)/5; (−4, 3, 0)/5 is square to it.
    const m = rail("R", [10, 20, 30], [10 + 300, 20 + 400, 30]);
    const beside = (s: number, d: number): Vec3 => [10 + 0.6 * s - 0.8 * d, 20 + 0.8 * s + 0.6 * d, 30];
    expect(onSpan(m, beside(250, 0.099), NODE)).toBe(true);
    expect(onSpan(m, beside(250, 0.101), NODE)).toBe(false);
    expect(onSpan(m, beside(0.05, 0), NODE)).toBe(false);
    expect(onSpan(m, beside(499.95, 0), NODE)).toBe(false);
    expect(onSpan(m, beside(-5, 0), NODE)).toBe(false);
  });
});
