/**
 * Angle bars: closed forms of area and moments (two rectangles, quarter circles), where the axis is, what is refused, and a
 * second route by polygons.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../../src/kernel/diagnostic.js";
import { pointOn } from "../../../src/kernel/region.js";
import { sectionProperties } from "../../../src/members/properties.js";
import { angleBar } from "../../../src/members/sections/angle.js";
import { polygonProperties } from "../polygon-route.js";
import { expectSound, labels } from "../sound.js";

const sharp = { rootRadius: 0, toeRadius: 0 };

describe("angleBar", () => {
  it("names its sides after where they are: heel between -u and bottom, insides by the leg they belong to", () => {
    const { region } = angleBar({ width: 60, depth: 40, thickness: 5, rootRadius: 6, toeRadius: 3 });
    expect(labels(region.outer)).toEqual([
      ...["bottom", "+u", "corner", "inner bottom", "inner corner", "inner -u", "corner", "top", "-u"],
    ]);
    const middle = (label: string) => pointOn(region.outer.find((side) => side.label === label)!, 0.5);
    expect([middle("bottom"), middle("-u")]).toEqual([
      [0, -20],
      [-30, 0],
    ]);
    expect(middle("inner bottom")[1]).toBeCloseTo(-15, 12);
    expect(middle("inner -u")[0]).toBeCloseTo(-25, 12);
    expect(middle("top")[1]).toBe(20);
    expect(middle("+u")[0]).toBe(30);
  });

  it("has the middle of its box on the axis, as IfcLShapeProfileDef of ISO 16739 has (from memory)", () => {
    const { region } = angleBar({ width: 60, depth: 40, thickness: 5 });
    const corners = region.outer.filter((side) => side.kind === "line").map((side) => pointOn(side, 0));
    expect(Math.min(...corners.map((p) => p[0]))).toBe(-30);
    expect(Math.max(...corners.map((p) => p[0]))).toBe(30);
    expect(Math.min(...corners.map((p) => p[1]))).toBe(-20);
    expect(Math.max(...corners.map((p) => p[1]))).toBe(20);
    // The heel is the only corner that both outer faces share.
    expect(corners).toContainEqual([-30, -20]);
  });

  it("sharp: two rectangles, by hand", () => {
    const p = sectionProperties(angleBar({ width: 60, depth: 40, thickness: 5, ...sharp }));
    // 60 x 5 lying at v = -17.5, 5 x 35 standing on it at (-27.5, 2.5).
    const [a1, a2] = [300, 175];
    const [cu, cv] = [(a2 * -27.5) / 475, (a1 * -17.5 + a2 * 2.5) / 475];
    expect(p.area).toBeCloseTo(475, 10);
    expect(p.centroid[0]).toBeCloseTo(cu, 12);
    expect(p.centroid[1]).toBeCloseTo(cv, 12);
    const ix = (60 * 5 ** 3 + 5 * 35 ** 3) / 12 + a1 * (-17.5 - cv) ** 2 + a2 * (2.5 - cv) ** 2;
    const iy = (5 * 60 ** 3 + 35 * 5 ** 3) / 12 + a1 * cu ** 2 + a2 * (-27.5 - cu) ** 2;
    const ixy = a1 * (0 - cu) * (-17.5 - cv) + a2 * (-27.5 - cu) * (2.5 - cv);
    expect(p.ix).toBeCloseTo(ix, 6);
    expect(p.iy).toBeCloseTo(iy, 6);
    expect(p.ixy).toBeCloseTo(ixy, 6);
    expect(Math.tan((2 * p.majorAxis * Math.PI) / 180)).toBeCloseTo((-2 * ixy) / (ix - iy), 10);
    expect(p.iMajor + p.iMinor).toBeCloseTo(ix + iy, 6);
    expect(p.iMajor * p.iMinor).toBeCloseTo(ix * iy - ixy ** 2, 0);
    // Equal-area axis: 237.5 of 475 mm² in the lying leg is 237.5/60 from the bottom.
    const up = 237.5 / 60;
    const wx = (60 * up ** 2) / 2 + (60 * (5 - up) ** 2) / 2 + 175 * (22.5 - up);
    expect(p.wPlasticX).toBeCloseTo(wx, 9);
  });

  it("the root adds (1 − π/4)r², each toe takes as much; the torsion constant of sharp legs is Σbt³/3 within what their joint adds", () => {
    const area = (rootRadius: number, toeRadius: number) =>
      sectionProperties(angleBar({ width: 50, depth: 50, thickness: 5, rootRadius, toeRadius })).area;
    expect(area(7, 3.5)).toBeCloseTo(475 + (1 - Math.PI / 4) * (49 - 2 * 3.5 ** 2), 10);
    expect(area(0, 5)).toBeCloseTo(475 - 2 * (1 - Math.PI / 4) * 25, 10);
    const { torsion = 0 } = sectionProperties(angleBar({ width: 50, depth: 50, thickness: 1, ...sharp }));
    expect(torsion / (99 / 3)).toBeCloseTo(1, 2);
  });

  it("defaults: root the thickness, toe half the root (EN 10056-1's ratio); toes as thick as the leg leave no flat", () => {
    expect(angleBar({ width: 50, depth: 50, thickness: 5 }).shape).toMatchObject({
      rootRadius: 5,
      toeRadius: 2.5,
    });
    expect(angleBar({ width: 12, depth: 12, thickness: 8 }).shape).toMatchObject({
      rootRadius: 2,
      toeRadius: 1,
    });
    const round = angleBar({ width: 50, depth: 50, thickness: 5, toeRadius: 5 });
    expect(labels(round.region.outer)).not.toContain("top");
    expect(labels(round.region.outer)).not.toContain("+u");
    expectSound(round);
  });

  it("is sound for every allowed size, and its properties are those of fine polygons (second route)", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const leg = fc.double({ min: 10, max: 150, noNaN: true });
    const radius = (r: number) => (r < 0.001 ? 0 : r);
    fc.assert(
      fc.property(leg, leg, part, part, part, (width, depth, x, y, z) => {
        const thickness = (0.02 + 0.9 * x) * Math.min(width, depth);
        const room = Math.min(width, depth) - thickness;
        const toeRadius = radius(y * Math.min(thickness, room));
        const rootRadius = radius(z * (room - toeRadius));
        const section = angleBar({ width, depth, thickness, rootRadius, toeRadius });
        expectSound(section);
        const [p, q] = [sectionProperties(section), polygonProperties(section.region, 300)];
        expect(Math.abs(p.area / q.area - 1)).toBeLessThan(2e-5);
        expect(Math.abs(p.ixy - q.ixy)).toBeLessThan(5e-5 * Math.max(q.ix, q.iy));
        expect(Math.abs(p.wPlasticX / q.wPlasticX - 1)).toBeLessThan(5e-5);
        expect(Math.abs(p.wPlasticY / q.wPlasticY - 1)).toBeLessThan(5e-5);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    [{ width: 0, depth: 50, thickness: 5 }, "width"],
    [{ width: 50, depth: Number.NaN, thickness: 5 }, "depth"],
    [{ width: 50, depth: 40, thickness: 40 }, "below 40 mm, the shorter leg"],
    [{ width: 50, depth: 50, thickness: 5, toeRadius: 5.1 }, "toeRadius from 0 to 5 mm, the thickness"],
    [{ width: 50, depth: 20, thickness: 5, rootRadius: 13, toeRadius: 3 }, "rootRadius from 0 to 12 mm"],
    [{ width: 50, depth: 50, thickness: 5, rootRadius: -1 }, "rootRadius from 0"],
    [{ width: 50, depth: 50, thickness: 5, rootRadius: 0.0005 }, "a radius no tool makes"],
  ])("refuses %j", (input, part) => {
    expect(() => angleBar(input)).toThrow(RakewrightError);
    expect(() => angleBar(input)).toThrow(/^bad-section: /);
    expect(() => angleBar(input)).toThrow(part);
  });
});
