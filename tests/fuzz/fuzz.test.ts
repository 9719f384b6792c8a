/**
 * Random ends: 200 of them every time, and every one that was ever wrong. `npm run fuzz` looks at as many as wanted.
 *
 * Oracles: closed-form distances to prisms (clearance.ts), a quadrature of ray casts, the mesh gate's exact signs.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { header, tube } from "../support/named-cases.js";
import { clearance, outsideOf } from "./clearance.js";
import { keptCases } from "./corpus.js";
import { DOMAIN, fuzzCase } from "./domain.js";
import { inspect } from "./inspect.js";
import { missedQuotas, newTally, QUOTAS } from "./tally.js";

const SEED = 7;
const COUNT = 200;
const KEPT = keptCases(fileURLToPath(new URL("../corpus/ends/", import.meta.url)));

describe("random ends", () => {
  it(`${COUNT} of them are solved, closed, clear of their headers and of the right mass`, {
    timeout: 240_000,
  }, () => {
    const tally = newTally();
    const bad: string[] = [];
    for (let number = 0; number < COUNT; number++) {
      const c = fuzzCase(SEED, number);
      const found = inspect(c, { full: number % 8 === 0, volume: number % 10 === 0, occt: null });
      tally.add(c, found.length > 0);
      if (found.length > 0) bad.push(`${c.joint.name}: ${found[0]}`);
    }
    expect(bad).toEqual([]);
    const { tags } = tally.get();
    for (const tag of Object.keys(QUOTAS)) expect(tags[tag] ?? 0, tag).toBeGreaterThan(0);
  });

  it("are the same for the same seed and number, and others for others", () => {
    expect(fuzzCase(3, 17)).toEqual(fuzzCase(3, 17));
    expect(fuzzCase(3, 17).joint).not.toEqual(fuzzCase(3, 18).joint);
    expect(fuzzCase(4, 17).joint).not.toEqual(fuzzCase(3, 17).joint);
  });

  it("fill their quotas", () => {
    const tally = newTally();
    for (let number = 0; number < 4000; number++) tally.add(fuzzCase(1, number), false);
    expect(missedQuotas(tally.get())).toEqual([]);
    const thin = newTally();
    for (let number = 0; number < 100; number++) thin.add({ ...fuzzCase(1, number), tags: [] }, false);
    expect(missedQuotas(thin.get()).length).toBeGreaterThan(0);
  });

  it("stay within the domain that DEVELOPERS.md states", () => {
    const text = readFileSync(new URL("../../DEVELOPERS.md", import.meta.url), "utf8");
    const section = text.slice(text.indexOf("## What every end may be"), text.indexOf("## Contracts"));
    for (const n of [DOMAIN.leastAngle, DOMAIN.mostTilt, ...DOMAIN.sizes, DOMAIN.mostGap]) {
      expect(section).toMatch(new RegExp(`\\b${n}\\b`));
    }
  });
});

describe("ends that were once wrong", () => {
  it.each(KEPT)("%s", { timeout: 60_000 }, (_, c) => {
    expect(inspect(c, { full: true, volume: true, occt: null })).toEqual([]);
  });
});

describe("what judges them", () => {
  const over = {
    kind: "hit" as const,
    header: header({ kind: "round", radius: 30 }, 90, { at: 100, gap: 2 }),
  };

  it("measures the way to a rounded rectangle, inside and out, in closed form", () => {
    const o = { kind: "rect" as const, width: 40, depth: 20, corner: 5 };
    expect(outsideOf(o, 23, 0)).toBe(3);
    expect(outsideOf(o, 0, 4)).toBe(-6);
    expect(outsideOf(o, 18, 9)).toBeCloseTo(0, 12);
    expect(outsideOf(o, 15 + 9, 5 + 12)).toBeCloseTo(10, 12);
  });

  it("says how far a point stays short of a header's gap, is in it, or is behind the header", () => {
    expect(clearance(over, 1, [0, 0, 68])).toBe(0);
    expect(clearance(over, 1, [0, 0, 60])).toBe(8);
    expect(clearance(over, 1, [0, 0, 69])).toBe(-1);
    expect(clearance(over, 1, [0, 0, 140])).toBe(-8);
  });

  it("leaves open only beside a silhouette whether a fibre meets the header", () => {
    const plane = { kind: "plane" as const, point: [0, 0, 60] as const, normal: [0, 0, 1] as const };
    const farther = { kind: "max" as const, of: [over, plane] };
    const nearer = { kind: "min" as const, of: [over, { ...plane, point: [0, 0, 110] as const }] };
    // The header's axis runs along y at z = 100; with its gap it is 32 mm wide on both sides.
    for (const [beside, met] of [
      [-1e-5, true],
      [1e-5, false],
    ] as const) {
      const v = 32 + beside;
      expect(clearance(farther, 1, [v, 0, 60])).toBeGreaterThan(1);
      expect(clearance(nearer, 1, [v, 0, 110]) < -1).toBe(met);
    }
    for (const beside of [-1e-7, 1e-7]) {
      expect(clearance(nearer, 1, [32 + beside, 0, 110])).toBeCloseTo(0, 12);
      expect(clearance(nearer, 1, [32 + beside, 0, 109])).toBeCloseTo(1, 12);
    }
  });

  it("sees a header that stands 0.01 mm nearer, and one that is missed", () => {
    const section = tube(42.4, 3.2);
    const plain = fuzzCase(1, 0);
    const ends = [plain.joint.ends[0], over] as const;
    const good = { ...plain, joint: { name: "plain", section, ends }, turn: 0, kinds: [], tags: [] };
    expect(inspect(good, { full: true, volume: true, occt: null })).toEqual([]);
    const miss = { ...over, header: { ...over.header, outline: { kind: "round" as const, radius: 15 } } };
    const narrow = { ...good, joint: { ...good.joint, ends: [ends[0], miss] as const } };
    expect(inspect(narrow, { full: false, volume: false, occt: null })[0]).toMatch(/branch-hangs-off/);
    expect(Math.abs(clearance(over, 1, [0, 0, 68.01]) + 0.01)).toBeLessThan(1e-12);
  });
});
