/** Volume, area, centroid and inertia against closed forms. */
import { describe, expect, it } from "vitest";
import { frameFromAxis } from "../../src/kernel/frame.js";
import { massProperties } from "../../src/kernel/mass.js";
import { num, referenceCase, referenceIds } from "../joints/reference.js";
import { turned } from "../support/bar-moves.js";
import { barOf, box, onRound, plane, rect, rod, solidFor, square, tube } from "../support/bars.js";
import { integrate } from "../support/gauss-kronrod.js";

const ratio = (got: number, expected: number): number => Math.abs(got / expected - 1);

describe("massProperties", () => {
  // Source: closed forms of a right prism; corners by (4 − π)r².
  it("of a rectangular tube", () => {
    const m = massProperties(solidFor(barOf(rect(50, 40, 3, 6, 3), square(), square(500))));
    const [out, inn] = [50 * 40 - (4 - Math.PI) * 36, 44 * 34 - (4 - Math.PI) * 9];
    const round = [2 * (50 + 40) - (8 - 2 * Math.PI) * 6, 2 * (44 + 34) - (8 - 2 * Math.PI) * 3];
    expect(ratio(m.volume, (out - inn) * 500)).toBeLessThan(1e-13);
    expect(ratio(m.area, 2 * (out - inn) + 500 * (round[0]! + round[1]!))).toBeLessThan(1e-13);
    expect(m.centroid).toEqual([expect.closeTo(0, 10), expect.closeTo(0, 10), expect.closeTo(250, 10)]);
    expect(ratio(m.moments.zz, ((out - inn) * 500 ** 3) / 12)).toBeLessThan(1e-12);
  });

  // Source: closed forms of a box and a cylinder (∫x² = V·w²/12, V·r²/4).
  it("second moments of a box and of a cylinder", () => {
    const b = massProperties(solidFor(barOf(box(60, 20), square(), square(300)))).moments;
    const v = 60 * 20 * 300;
    expect(ratio(b.xx, (v * 60 ** 2) / 12)).toBeLessThan(1e-13);
    expect(ratio(b.yy, (v * 20 ** 2) / 12)).toBeLessThan(1e-13);
    expect(ratio(b.zz, (v * 300 ** 2) / 12)).toBeLessThan(1e-13);
    for (const k of ["xy", "yz", "zx"] as const) expect(Math.abs(b[k])).toBeLessThan(1e-9 * b.yy);
    const c = massProperties(solidFor(barOf(rod(48), square(), square(300)))).moments;
    const w = Math.PI * 24 ** 2 * 300;
    expect(ratio(c.xx, (w * 24 ** 2) / 4)).toBeLessThan(1e-13);
    expect(ratio(c.yy, (w * 24 ** 2) / 4)).toBeLessThan(1e-13);
    expect(ratio(c.zz, (w * 300 ** 2) / 12)).toBeLessThan(1e-13);
  });

  // Source: the tensor of a turned box, Ixy = (Ixx − Iyy)/2 · sin 2α.
  it("product moment of a turned box", () => {
    const m = massProperties(solidFor(turned(barOf(box(60, 20), square(), square(300)), 0.4))).moments;
    const v = 60 * 20 * 300;
    const [xx, yy] = [(v * 3600) / 12, (v * 400) / 12];
    expect(ratio(m.xy, ((xx - yy) / 2) * Math.sin(0.8))).toBeLessThan(1e-12);
    expect(ratio(m.xx, xx * Math.cos(0.4) ** 2 + yy * Math.sin(0.4) ** 2)).toBeLessThan(1e-12);
  });

  // Source: a right prism cut askew has its area times its length along the centroid's axis; the oblique face A/cos α,
  // the wall perimeter · mean length; ∫z over the section gives the centroid: y = −tan α · I/(A·L), z = L/2 + tan²α · I/(2AL).
  it("of a tube cut askew", () => {
    const [r1, r2, length, slope] = [24, 20, 500, 0.75];
    const m = massProperties(solidFor(barOf(tube(48, 4), square(), plane([0, 0, length], [0, slope, 1]))));
    const area = Math.PI * (r1 ** 2 - r2 ** 2);
    const inertia = (Math.PI / 4) * (r1 ** 4 - r2 ** 4);
    expect(ratio(m.volume, area * length)).toBeLessThan(1e-13);
    const wall = 2 * Math.PI * (r1 + r2) * length;
    expect(ratio(m.area, wall + area * (1 + Math.hypot(1, slope)))).toBeLessThan(1e-13);
    expect(m.centroid[1]).toBeCloseTo((-slope * inertia) / (area * length), 10);
    expect(m.centroid[2]).toBeCloseTo(length / 2 + (slope ** 2 * inertia) / (2 * area * length), 10);
  });

  // Source: shared/published-joints.json, elliptic integrals at 30 digits; r = R is half of Steinmetz' bicylinder.
  it.each(referenceIds("cope-volume-"))("of a coped rod, %s", (id) => {
    const c = referenceCase(id);
    const [r, R, angle] = [num(c.inputs, "r_mm"), num(c.inputs, "R_mm"), num(c.inputs, "axis_angle_deg")];
    const m = massProperties(solidFor(barOf(rod(2 * r), square(), onRound(2 * R, 400, angle))));
    const cutOff = Math.PI * r * r * 400 - m.volume;
    // The file prints the volumes to 1e-8 mm³ of 4e4.
    expect(ratio(cutOff, c.expected as number)).toBeLessThan(1e-10);
  });

  it("Steinmetz: the tee of two equal rods shares 16R³/3", () => {
    const m = massProperties(solidFor(barOf(rod(42.4), onRound(42.4, 0, 90), onRound(42.4, 1000, 90))));
    expect(ratio(Math.PI * 21.2 ** 2 * 1000 - m.volume, (16 / 3) * 21.2 ** 3)).toBeLessThan(1e-12);
    expect(m.centroid).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9), expect.closeTo(500, 9)]);
  });

  // Source: closed form across, ∫√(R² − h²) dh = (h√(R² − h²) + R² asin(h/R))/2, a quadrature along. The sides are stored
  // as lines there, 3·10⁻⁷ mm beside the header (RULING_SAGITTA_MM).
  it("of a bar whose sides run along their header but for 4·10⁻⁴ rad, counted from anywhere", () => {
    const [half, radius, turn, z] = [10, 25, 4e-4, 400];
    const [a, b] = [Math.cos(turn), Math.sin(turn)];
    const { skin, ...contact } = onRound(2 * radius, z, 90);
    const frame = frameFromAxis([0, 0, z], [-b, a, 0], [a, b, 0]);
    const solid = solidFor(barOf(box(20, 20), square(), { ...contact, skin: { ...skin, frame } }));
    const upTo = (h: number): number =>
      (h * Math.sqrt(radius ** 2 - h ** 2) + radius ** 2 * Math.asin(h / radius)) / 2;
    const across = (v: number): number => (upTo(a * half + b * v) - upTo(b * v - a * half)) / a;
    const wanted = z * (2 * half) ** 2 - integrate(across, -half, half, 1e-11);
    for (const far of [
      [0, 0, 0],
      [9000, 0, 0],
      [0, 9000, 0],
      [0, 0, 9000],
    ] as const) {
      const { volume } = massProperties({ ...solid, vertices: [...solid.vertices, far] });
      expect(ratio(volume, wanted)).toBeLessThan(1e-13);
    }
  });

  // The rounding of coordinates is a large share of so small a corner's own integrals.
  it.each([1e-2, 1e-3])("comes to an end on a corner of %s mm", (corner) => {
    const m = massProperties(solidFor(barOf(box(60, 32, corner), square(), square(500))));
    expect(ratio(m.volume, (60 * 32 - (4 - Math.PI) * corner ** 2) * 500)).toBeLessThan(1e-12);
  });

  it("comes to an end on a solid that is none", () => {
    const solid = solidFor(barOf(rod(42.4), square(), onRound(48.3, 300, 60)));
    const [first, ...rest] = solid.vertices;
    const broken = { ...solid, vertices: [[first![0], Number.NaN, first![2]] as const, ...rest] };
    expect(massProperties(broken).volume).toBeNaN();
  });
});
