/**
 * Bores against closed forms and a quadrature that knows no solids: what a straight round hole takes out of a wall is its
 * cross-section times the way it goes through the material.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Bar, Bore } from "../../src/kernel/bar.js";
import { solidOfBar } from "../../src/kernel/bar-solid.js";
import { boreWalls } from "../../src/kernel/bore.js";
import { splitsClearOf } from "../../src/kernel/bore-splits.js";
import type { EndExpression, Solid, Vec3 } from "../../src/kernel/index.js";
import { massProperties } from "../../src/kernel/mass.js";
import { checkMesh } from "../../src/kernel/mesh/gate.js";
import { tessellate } from "../../src/kernel/mesh/tessellate.js";
import { circleLoop } from "../../src/kernel/region.js";
import { eulerOf } from "../../src/kernel/rules/euler-number.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { rectTube, roundBar, roundTube, type Section } from "../../src/members/index.js";

const source = { joint: "cut", onto: "" };
const square = (z: number) => ({ kind: "plane", point: [0, 0, z], normal: [0, 0, 1], source }) as const;

function bar(section: Section, bores: readonly Bore[]): Bar {
  return { id: "bar", section: section.region, ends: [square(0), square(600)], bores };
}

function bore(direction: Vec3, more: Partial<Bore> = {}): Bore {
  return { id: "h", point: [0, 0, 300], direction, diameter: 8, through: "both", ...more };
}

function solid(b: Bar): Solid {
  const made = solidOfBar(b);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => `${d.code}: ${d.message}`).join("; "));
  return made.value;
}

/** Volume that the bores take out. */
function removed(section: Section, bores: readonly Bore[]): number {
  return massProperties(solid(bar(section, []))).volume - massProperties(solid(bar(section, bores))).volume;
}

/**
 * ∫ 2√(r² − x²)·way(x) dx over the hole's width: Gauss-Chebyshev of the second kind, nodes cos(kπ/(n+1)), weights
 * π/(n+1)·sin²(kπ/(n+1)) (Abramowitz & Stegun 25.4.40).
 */
function throughHole(r: number, way: (x: number) => number): number {
  const n = 200;
  let sum = 0;
  for (let k = 1; k <= n; k++) {
    const a = (k * Math.PI) / (n + 1);
    sum += (Math.PI / (n + 1)) * Math.sin(a) ** 2 * way(r * Math.cos(a));
  }
  return 2 * r * r * sum;
}

const sound = (s: Solid): void => {
  expect(validateSolid(s)).toEqual([]);
  for (const chord of [0.2, 0.05]) {
    const report = checkMesh(tessellate(s, { chord }), "full");
    expect(report.diagnostics).toEqual([]);
    expect(report.euler).toBe(eulerOf(s));
  }
};

describe("what a bore takes out", () => {
  it.each([0, 20, 35.44, 50])("of a flat wall at %d°: π r² t / cos (closed form)", (rake) => {
    const [c, s] = [Math.cos((rake * Math.PI) / 180), Math.sin((rake * Math.PI) / 180)];
    const section = rectTube({ width: 50, depth: 40, wall: 3 });
    const bores = [bore([0, c, s])];
    expect(removed(section, bores)).toBeCloseTo((2 * Math.PI * 16 * 3) / c, 7);
    sound(solid(bar(section, bores)));
  });

  it.each([
    [0, 0],
    [35.44, 0],
    [20, 6],
  ])("of a round tube at %d°, %d mm off the middle (quadrature across the hole)", (rake, off) => {
    const [c, s] = [Math.cos((rake * Math.PI) / 180), Math.sin((rake * Math.PI) / 180)];
    const section = roundTube({ od: 42.4, wall: 3.2 });
    const bores = [bore([0, c, s], { point: [off, 0, 300] })];
    const chord = (R: number, x: number): number => 2 * Math.sqrt(R * R - (x + off) ** 2);
    const expected = throughHole(4, (x) => (chord(21.2, x) - chord(18, x)) / c);
    expect(removed(section, bores)).toBeCloseTo(expected, 6);
    sound(solid(bar(section, bores)));
  });

  it("of a solid bar, and of one wall only", () => {
    const chord = (x: number): number => 2 * Math.sqrt(15 * 15 - x * x);
    expect(removed(roundBar({ od: 30 }), [bore([1, 0, 0])])).toBeCloseTo(throughHole(4, chord), 7);
    const wall = (x: number): number => Math.sqrt(21.2 ** 2 - x * x) - Math.sqrt(18 ** 2 - x * x);
    const one = bore([1, 0, 0], { through: "first" });
    expect(removed(roundTube({ od: 42.4, wall: 3.2 }), [one])).toBeCloseTo(throughHole(4, wall), 7);
  });

  it("does not depend on the direction round a round tube (property)", () => {
    const section = roundTube({ od: 60.3, wall: 4 });
    const want = removed(section, [bore([0.8, 0, 0.6])]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), (phi) => {
        const b = bore([0.8 * Math.cos(phi), 0.8 * Math.sin(phi), 0.6]);
        expect(removed(section, [b])).toBeCloseTo(want, 6);
        expect(validateSolid(solid(bar(section, [b])))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("adds up for ten raking bores and for bores from two directions, each a handle of the solid", () => {
    const section = rectTube({ width: 38.1, depth: 38.1, wall: 3 });
    const ten = Array.from({ length: 10 }, (_, k) =>
      bore([0, 0.8, 0.6], { id: `c${k}`, diameter: 6, point: [0, 0, 60 + 52 * k] }),
    );
    expect(removed(section, ten)).toBeCloseTo((20 * Math.PI * 9 * 3) / 0.8, 6);
    // A tube is a ring: 2 − 2·1; each wall bored adds a handle, which takes 2 off.
    expect(eulerOf(solid(bar(section, ten)))).toBe(0 - 2 * 20);
    const two = [bore([0, 0.8, 0.6], { id: "a" }), bore([1, 0, -0.3], { id: "b", point: [0, 0, 340] })];
    sound(solid(bar(section, two)));
  });
});

describe("splits of round sides", () => {
  it("move clear of the bores, and stay where no bore is near", () => {
    const { region } = roundTube({ od: 42.4, wall: 3.2 });
    expect(splitsClearOf(region, [])).toBe(region);
    const across = splitsClearOf(region, [bore([1, 0, 0])]);
    for (const s of across.outer) {
      if (s.kind !== "arc") throw new Error("round");
      expect(Math.abs(21.2 * Math.sin(s.start))).toBeGreaterThan(4);
    }
    expect(across.outer.reduce((sum, s) => sum + (s.kind === "arc" ? s.sweep : 0), 0)).toBeCloseTo(
      2 * Math.PI,
      12,
    );
    for (const hole of across.holes) {
      expect(hole.reduce((sum, s) => sum + (s.kind === "arc" ? s.sweep : 0), 0)).toBeCloseTo(
        -2 * Math.PI,
        12,
      );
    }
  });
});

describe("material left to an end", () => {
  const left = (section: Section, end: EndExpression, b: Bore): number => {
    const made = solidOfBar({ id: "bar", section: section.region, ends: [square(0), end], bores: [b] });
    expect(made.diagnostics.map((d) => d.code)).toEqual(["bore-meets-end"]);
    return made.diagnostics[0]!.values.left as number;
  };

  it("is least where the rim is square to a slanting cut, between any two samples of it", () => {
    // The cut is s = 300 + a·u, steep; the bore runs along v through the middle of the +v wall, so its rim is a circle in the
    // u-s plane: s − a·u is greatest at r·√(1 + a²) (a circle's support), wherever that lies round it.
    const box = rectTube({ width: 50, depth: 50, wall: 3 });
    for (const a of [0.1, 0.37, 1.3]) {
      const cut = { kind: "plane", point: [0, 0, 300], normal: [-a, 0, 1], source } as const;
      const reach = 4 * Math.sqrt(1 + a * a);
      const at = bore([0, 1, 0], { point: [0, 0, 300 - reach + 0.01] });
      expect(left(box, cut, at)).toBeCloseTo(-0.01, 9);
      const clear = { ...at, point: [0, 0, 300 - reach - 0.0011] as Vec3 };
      expect(solidOfBar({ id: "bar", section: box.region, ends: [square(0), cut], bores: [clear] }).ok).toBe(
        true,
      );
    }
  });

  it("is looked for between the rims too: a header's bulge reaches into a solid bar there", () => {
    // Header of radius 30 along v, its near side at s = 400 − √(30² − u²): lowest, 370, on the bar's axis. The bore runs
    // along u with its top at 371, under the rims of the cut (400 − √(900 − 225) = 374.02), but not under its middle.
    const frame = { origin: [0, 0, 400], x: [1, 0, 0], y: [0, 0, -1], z: [0, 1, 0] } as const;
    const skin = { frame, loop: circleLoop([0, 0], 30, "wall") };
    const hit = { kind: "hit", skin, source } as const;
    const at = bore([1, 0, 0], { point: [0, 0, 367] });
    expect(left(roundBar({ od: 30 }), hit, at)).toBeCloseTo(-1, 9);
  });
});

describe("bores that cannot be drilled", () => {
  const tube = roundTube({ od: 42.4, wall: 3.2 });
  const box = rectTube({ width: 50, depth: 50, wall: 3 });
  it.each<[string, Section, Bore[]]>([
    ["bad-bore", tube, [bore([1, 0, 0], { diameter: 0 })]],
    ["bad-bore", tube, [bore([1, 0, 0], { diameter: Number.NaN })]],
    ["bore-along-axis", tube, [bore([0, 0, 1])]],
    ["bore-misses", tube, [bore([1, 0, 0], { point: [0, 30, 300] })]],
    ["bore-misses", tube, [bore([1, 0, 0], { point: [0, 25.2, 300] })]],
    ["bore-leaves-section", tube, [bore([1, 0, 0], { point: [0, 25.1, 300] })]],
    ["bore-leaves-section", tube, [bore([1, 0, 0], { point: [0, -20, 300], through: "first" })]],
    ["bore-leaves-section", roundBar({ od: 30 }), [bore([1, 0, 0], { point: [0, 11, 300] })]],
    ["bore-wider-than-section", tube, [bore([1, 0, 0], { diameter: 43 })]],
    ["bore-leaves-hollow", tube, [bore([1, 0, 0], { diameter: 36 })]],
    ["bore-leaves-hollow", tube, [bore([1, 0, 0], { diameter: 40 })]],
    ["bore-leaves-hollow", tube, [bore([1, 0, 0], { point: [0, 14.5, 300], through: "first" })]],
    ["bore-leaves-hollow", box, [bore([1, 0, 0], { point: [0, 18, 300] })]],
    ["bore-touches-edge", box, [bore([1, 0, 0], { point: [0, 15, 300] })]],
    ["bore-touches-edge", box, [bore([1, 0, 0], { point: [0, 15.0009, 300] })]],
    ["bore-meets-end", tube, [bore([1, 0, 0], { point: [0, 0, 3] })]],
    ["bore-meets-end", tube, [bore([1, 0, 0], { point: [0, 0, 598] })]],
    ["bore-meets-bore", tube, [bore([1, 0, 0]), bore([1, 0, 0], { id: "g", point: [0, 0, 307] })]],
  ])("%s", (code, section, bores) => {
    const made = solidOfBar(bar(section, bores));
    expect(made.ok).toBe(false);
    expect(made.diagnostics.map((d) => d.code)).toContain(code);
    expect(made.diagnostics[0]?.bore).toBe(code === "bore-meets-bore" ? "g" : "h");
    expect(made.diagnostics[0]?.hint).not.toBe("");
  });

  it("near ones that can", () => {
    solid(bar(tube, [bore([1, 0, 0], { point: [0, 0, 4.01] })]));
    solid(bar(tube, [bore([1, 0, 0]), bore([1, 0, 0], { id: "g", point: [0, 0, 308.01] })]));
    expect("walls" in boreWalls(box.region, bore([1, 0, 0], { point: [0, 14, 300] }))).toBe(true);
    expect("walls" in boreWalls(box.region, bore([1, 0, 0], { point: [0, 15.01, 300] }))).toBe(true);
    expect("walls" in boreWalls(tube.region, bore([1, 0, 0], { diameter: 35.99 }))).toBe(true);
  });
});

describe("a bore beside others", () => {
  const tube = roundTube({ od: 42.4, wall: 3.2 });
  const box = rectTube({ width: 40, depth: 60, wall: 3 });
  it("has the walls it has alone, whatever it shares with them", () => {
    const few = <T>(...of: readonly T[]) => fc.constantFrom(...of);
    const any = fc
      .record({
        direction: few<Vec3>([1, 0, 0], [-1, 0, 0], [0.8, 0, 0.6], [0.6, 0.8, 0], [0.6, -0.8, 0], [4, 0, 3]),
        point: few<Vec3>([0, 0, 100], [0, 0, 250], [0, 3, 250], [1, 0, 300]),
        diameter: few(6, 8),
        through: few<Bore["through"]>("both", "first"),
      })
      .map((b): Bore => ({ id: "h", ...b }));
    fc.assert(
      fc.property(few(tube, box), any, fc.array(any, { maxLength: 6 }), (section, own, others) => {
        const walled = others.flatMap((b, k) => {
          const made = boreWalls(section.region, { ...b, id: `o${k}` });
          return "walls" in made ? [{ bore: b, walls: made.walls }] : [];
        });
        expect(boreWalls(section.region, own, walled)).toEqual(boreWalls(section.region, own));
      }),
      { numRuns: 1000 },
    );
  });
});
