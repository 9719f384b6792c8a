import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrisMarks } from "../../src/joints/compound-miter.js";
import { planeCutOrdinates, plumbCut } from "../../src/joints/plane-cut.js";
import { cross, dot, normalize, type Vec3 } from "../../src/kernel/vec.js";
import { list, misses, num, record, referenceCase, referenceIds } from "./reference.js";

const RAD = Math.PI / 180;

describe("planeCutOrdinates", () => {
  // Source: shared/shop-cases.json, independent script from the cited formulas.
  it.each(referenceIds("c28-"))("meets the worked template %s", (id) => {
    const c = referenceCase(id);
    const expected = list(c.expected, "ordinates");
    const cut = planeCutOrdinates({
      od: 2 * num(c.inputs, "branch_radius"),
      angle: num(c.inputs, "cut_from_square_deg"),
      stations: num(c.inputs, "stations"),
    });
    expect(cut.stations).toHaveLength(expected.length);
    const found = misses(c, {
      max: [cut.longMinusShort, num(c.expected, "max")],
      ...Object.fromEntries(expected.map((e, i) => [`at ${i}`, [cut.stations[i]?.ordinate, e] as const])),
    });
    expect(found).toEqual([]);
  });

  // Source: shared/published-joints.json, bisector mitre: a round tube's miter is a plane cut.
  it.each(referenceIds("mitre-"))("has the long-to-short difference of the published mitre %s", (id) => {
    const c = referenceCase(id);
    const { longMinusShort } = planeCutOrdinates({
      od: num(c.inputs, "width_or_OD_mm"),
      angle: num(c.expected, "saw_angle_from_square_deg"),
    });
    expect(misses(c, { long: [longMinusShort, num(c.expected, "long_to_short_mm")] })).toEqual([]);
  });

  it("puts every ordinate in one plane (second route: a plane through three points)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.integer({ min: 5, max: 60 }),
        (od, angle, stations) => {
          const cut = planeCutOrdinates({ od, angle, stations });
          const points = cut.stations.map(
            ({ phi, ordinate }): Vec3 => [
              (od / 2) * Math.cos(phi * RAD),
              (od / 2) * Math.sin(phi * RAD),
              ordinate,
            ],
          );
          const [a, b, c] = points as [Vec3, Vec3, Vec3, ...Vec3[]];
          const n = normalize(
            cross([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]),
          );
          for (const p of points) expect(Math.abs(dot(n, p) - dot(n, a))).toBeLessThan(1e-8 * od);
          expect(Math.acos(Math.min(1, Math.abs(n[2]))) / RAD).toBeCloseTo(angle, 4);
          expect(cut.stations[0]?.ordinate).toBe(0);
        },
      ),
    );
  });

  it("is flat for a square cut", () => {
    expect(planeCutOrdinates({ od: 42.4, angle: 0 }).stations.every((s) => s.ordinate === 0)).toBe(true);
  });

  it.each([
    ["od", { od: -1, angle: 30 }],
    ["angle", { od: 42.4, angle: 90 }],
    ["angle", { od: 42.4, angle: -1 }],
    ["stations", { od: 42.4, angle: 30, stations: 2 }],
    ["stations", { od: 42.4, angle: 30, stations: 24.5 }],
  ])("names a wrong %s", (field, input) => {
    expect(() => planeCutOrdinates(input)).toThrow(`bad-plane-cut: \`${field}\``);
  });
});

describe("plumbCut", () => {
  // Source: shared/shop-cases.json, independent script from the cited formulas.
  it.each(referenceIds("c33-"))("meets the worked cut %s", (id) => {
    const c = referenceCase(id);
    const cut = plumbCut({ slope: num(c.inputs, "theta_deg"), planAngle: num(c.inputs, "plan_deg") });
    const marks = arrisMarks(cut, 1.5, 1.5);
    const arris = record(c.expected, "arris");
    const found = misses(c, {
      miter: [cut.miter, num(c.expected, "miter_deg")],
      bevel: [cut.bevel, num(c.expected, "bevel_deg")],
      trueAngle: [cut.trueAngle, num(c.expected, "true_angle_from_square_deg")],
      topLeft: [marks.topLeft, num(arris, "top_left")],
      topRight: [marks.topRight, num(arris, "top_right")],
      bottomLeft: [marks.bottomLeft, num(arris, "bottom_left")],
      bottomRight: [marks.bottomRight, num(arris, "bottom_right")],
    });
    expect(found).toEqual([]);
  });

  // Source: shared/shop-cases.json c30, a rail between plumb faces: long point on top at the uphill end, d·tan θ.
  it.each(referenceIds("c30-"))("leaves the long point on top at the uphill end: %s", (id) => {
    const c = referenceCase(id);
    const depth = num(c.inputs, "depth");
    const slope = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run")) / RAD;
    const marks = arrisMarks(plumbCut({ slope }), depth, depth);
    const extra = num(c.expected, "blank_length") - num(c.expected, "edge_length");
    expect(misses(c, { long: [marks.topLeft - marks.bottomLeft, extra] })).toEqual([]);
    expect(
      misses(c, { angle: [plumbCut({ slope }).trueAngle, num(c.expected, "cut_from_square_deg")] }),
    ).toEqual([]);
  });

  // Source: shared/published-joints.json, compound-angle joinery table. The strip's width leans 90 − S from level and its
  // mitred edge is cut to a plumb face turned C/2 in plan; the table counts the miter from the other edge.
  it.each(referenceIds("compound-mitre-"))("gives the joinery table's angles: %s", (id) => {
    const c = referenceCase(id);
    const cut = plumbCut({
      slope: 90 - num(c.inputs, "spring_deg"),
      planAngle: num(c.inputs, "corner_deg") / 2,
    });
    const found = misses(c, {
      miter: [90 - Math.abs(cut.miter), num(c.expected, "mitre_deg")],
      bevel: [Math.abs(cut.bevel), num(c.expected, "bevel_deg")],
    });
    expect(found).toEqual([]);
  });

  const slope = fc.double({ min: -80, max: 80, noNaN: true });

  it("lands all four arrises on the plumb face (second route: points in space)", () => {
    fc.assert(
      fc.property(slope, slope, (t, planAngle) => {
        const marks = arrisMarks(plumbCut({ slope: t, planAngle }), 40, 60);
        const [a, s] = [planAngle * RAD, t * RAD];
        // The face is x = 0; the rail heads planAngle to the left of +x.
        const along: Vec3 = [Math.cos(s) * Math.cos(a), Math.cos(s) * Math.sin(a), Math.sin(s)];
        const left: Vec3 = [-Math.sin(a), Math.cos(a), 0];
        const up = cross(along, left);
        const corners = [
          [20, 30, marks.topLeft],
          [-20, 30, marks.topRight],
          [20, -30, marks.bottomLeft],
          [-20, -30, marks.bottomRight],
        ] as const;
        for (const [y, z, offset] of corners) {
          expect(Math.abs(y * left[0] + z * up[0] + offset * along[0])).toBeLessThan(
            1e-9 * (1 + Math.abs(offset)),
          );
        }
      }),
    );
  });

  it("turns over in a mirror and leaves a level, square rail square", () => {
    fc.assert(
      fc.property(slope, slope, (t, planAngle) => {
        const [a, b] = [plumbCut({ slope: t, planAngle }), plumbCut({ slope: t, planAngle: -planAngle })];
        expect(b.miter).toBeCloseTo(-a.miter, 10);
        expect(b.bevel).toBeCloseTo(a.bevel, 10);
        expect(b.trueAngle).toBeCloseTo(a.trueAngle, 10);
      }),
    );
    expect(plumbCut({ slope: 0 })).toEqual({ miter: 0, bevel: 0, clock: 0, trueAngle: 0 });
  });

  it.each([
    ["slope", { slope: 90 }],
    ["planAngle", { slope: 0, planAngle: Number.NaN }],
  ])("names a wrong %s", (field, input) => {
    expect(() => plumbCut(input)).toThrow(`bad-plane-cut: \`${field}\``);
  });
});
