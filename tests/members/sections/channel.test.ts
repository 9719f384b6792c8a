/**
 * Channels: closed forms of area and moments, slopes of tapered flanges, where the axis is, what is refused, and a second route by
 * polygons.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../../src/kernel/diagnostic.js";
import { pointOn, tangentOn } from "../../../src/kernel/region.js";
import { sectionProperties } from "../../../src/members/properties.js";
import { type ChannelBarInput, channelBar } from "../../../src/members/sections/channel.js";
import { polygonProperties } from "../polygon-route.js";
import { expectSound, labels } from "../sound.js";

const plain: ChannelBarInput = { width: 50, depth: 100, web: 5, flange: 8, rootRadius: 0 };

describe("channelBar", () => {
  it("names its sides after where they are: back of the web at -u, flanges at top and bottom, open towards +u", () => {
    const { region } = channelBar({ ...plain, rootRadius: 9 });
    expect(labels(region.outer)).toEqual([
      ...[
        "bottom",
        "+u",
        "inner bottom",
        "inner corner",
        "inner -u",
        "inner corner",
        "inner top",
        "+u",
        "top",
        "-u",
      ],
    ]);
    const middle = (label: string) => pointOn(region.outer.find((side) => side.label === label)!, 0.5);
    expect([middle("-u"), middle("top"), middle("bottom")]).toEqual([
      [-25, 0],
      [0, 50],
      [0, -50],
    ]);
    expect(middle("inner -u")[0]).toBeCloseTo(-20, 12);
    expect(middle("inner top")[1]).toBeCloseTo(42, 12);
    expect(middle("+u")).toEqual([25, -46]);
  });

  it("has the middle of its box on the axis, as IfcUShapeProfileDef of ISO 16739 has (from memory), and is level about u", () => {
    const p = sectionProperties(channelBar({ ...plain, rootRadius: 9, toeRadius: 3, taper: 6 }));
    expect(p.centroid[1]).toBeCloseTo(0, 12);
    expect(p.majorAxis).toBe(0);
    expect(p.iMajor).toBeCloseTo(p.ix, 6);
  });

  it("sharp: three rectangles, by hand", () => {
    const p = sectionProperties(channelBar(plain));
    const area = 2 * 50 * 8 + 84 * 5;
    const cu = (84 * 5 * -22.5) / area;
    expect(p.area).toBeCloseTo(area, 10);
    expect(p.centroid[0]).toBeCloseTo(cu, 12);
    expect(p.ix).toBeCloseTo((50 * 100 ** 3 - 45 * 84 ** 3) / 12, 5);
    expect(p.iy).toBeCloseTo(
      (2 * 8 * 50 ** 3 + 84 * 5 ** 3) / 12 + 800 * cu ** 2 + 420 * (-22.5 - cu) ** 2,
      5,
    );
    expect(p.wPlasticX).toBeCloseTo(2 * (400 * 46 + (5 * 42 * 42) / 2), 8);
    // Equal-area axis: the 420 mm² of the web between the flanges, and 16 mm² a millimetre: 190/16 from the web's back.
    const back = 190 / 16;
    const wy = 8 * back ** 2 + 420 * (back - 2.5) + 8 * (50 - back) ** 2;
    expect(p.wPlasticY).toBeCloseTo(wy, 8);
    expect(Math.abs(p.ixy)).toBeLessThan(1e-8);
  });

  it("each root fillet adds (1 − π/4)r² on parallel flanges", () => {
    const area = 2 * 50 * 8 + 84 * 5 + 2 * (1 - Math.PI / 4) * 81;
    expect(sectionProperties(channelBar({ ...plain, rootRadius: 9 })).area).toBeCloseTo(area, 10);
  });

  it("a taper leaves the flange its thickness where that is measured, and slopes as asked", () => {
    for (const [taper, flangeAt] of [
      [4.57, 25],
      [9.46, 22.5],
      [9.46, 10],
    ] as const) {
      const { region, name } = channelBar({ ...plain, taper, flangeAt, rootRadius: 8, toeRadius: 4 });
      const inside = region.outer.find((side) => side.label === "inner bottom")!;
      const [from, way] = [pointOn(inside, 0), tangentOn(inside, 0)];
      expect(Math.atan2(way[1], -way[0])).toBeCloseTo((taper * Math.PI) / 180, 12);
      const at = from[1] + ((25 - flangeAt - from[0]) * way[1]) / way[0];
      expect(at + 50).toBeCloseTo(8, 12);
      expect(name).toBe(`channel 50 x 100 x 5 x 8 taper ${taper} deg`);
    }
    // Sharp, the flange's area is that of a trapezium: 45 mm times its thickness half way along.
    const sharp = sectionProperties(channelBar({ ...plain, taper: 5, flangeAt: 22.5, toeRadius: 0 }));
    expect(sharp.area).toBeCloseTo(500 + 2 * 45 * 8, 9);
  });

  it("defaults: parallel flanges with square toes (EN 10365), tapered ones with toes of half the root (DIN 1026-1)", () => {
    const of = (input: Omit<ChannelBarInput, "width" | "depth" | "web">) =>
      channelBar({ width: 50, depth: 100, web: 5, ...input }).shape;
    expect(of({ flange: 8 })).toEqual({
      kind: "channel",
      width: 50,
      depth: 100,
      web: 5,
      flange: 8,
      rootRadius: 8,
      toeRadius: 0,
    });
    expect(of({ flange: 8, taper: 4.57 })).toMatchObject({
      rootRadius: 8,
      toeRadius: 4,
      taper: 4.57,
      flangeAt: 25,
    });
    expect(of({ flange: 8, taper: 0, flangeAt: 10 })).not.toHaveProperty("taper");
  });

  it("is sound for every allowed size, and its properties are those of fine polygons (second route)", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const radius = (r: number) => (r < 0.001 ? 0 : r);
    fc.assert(
      fc.property(part, part, part, part, part, (a, b, c, d, e) => {
        const [width, depth, web, flange] = [20 + 80 * a, 60 + 200 * b, 3 + 6 * c, 8 + 8 * d];
        const taper = e < 0.3 ? 0 : 8 * (e - 0.3);
        const [rootRadius, toeRadius] = [radius(7 * d), radius(3 * b)];
        const section = channelBar({ width, depth, web, flange, taper, rootRadius, toeRadius });
        expectSound(section);
        const [p, q] = [sectionProperties(section), polygonProperties(section.region, 300)];
        expect(Math.abs(p.area / q.area - 1)).toBeLessThan(2e-5);
        expect(Math.abs(p.iy / q.iy - 1)).toBeLessThan(5e-5);
        expect(Math.abs(p.wPlasticX / q.wPlasticX - 1)).toBeLessThan(5e-5);
        expect(Math.abs(p.wPlasticY / q.wPlasticY - 1)).toBeLessThan(5e-5);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    [{ ...plain, web: 0 }, "web"],
    [{ ...plain, web: 50 }, "web below 50 mm, the width"],
    [{ ...plain, flange: 50 }, "half the depth"],
    [{ ...plain, taper: 45 }, "taper from 0 to below 45"],
    [{ ...plain, taper: -1 }, "taper"],
    [{ ...plain, flangeAt: 60 }, "flangeAt below 50"],
    [{ ...plain, taper: 20, flangeAt: 30 }, "taper times flangeAt below 8 mm"],
    [{ ...plain, toeRadius: 8.5 }, "toeRadius from 0 to 8 mm"],
    [{ ...plain, rootRadius: 42.5 }, "rootRadius from 0 to 42 mm"],
    [{ ...plain, rootRadius: Number.NaN }, "rootRadius"],
    [{ ...plain, rootRadius: 1e-4 }, "a radius no tool makes"],
  ])("case %#: refused", (input, part) => {
    expect(() => channelBar(input)).toThrow(RakewrightError);
    expect(() => channelBar(input)).toThrow(/^bad-section: /);
    expect(() => channelBar(input)).toThrow(part);
  });
});
