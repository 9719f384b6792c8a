/**
 * Stop heights against shop cases a23 and a24 (shared/shop-cases.json) and the demo's post heights (shared/demo-data.json),
 * all computed independently; corners, splices, feet and taped treads by hand.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildGuard, parseShop, type StopReport, stopHeight } from "../../src/layout/index.js";
import { demo, INCH, inches, shopCase } from "./cases.js";
import { example, type Loose, withFloor } from "./designs.js";

/** A flight of 7-1/2 by 10-1/2 with a rail 1-1/2 deep and posts 1-1/2 square, as in the cases. */
const flight = (change: (document: Loose) => void = () => undefined): Loose => {
  const document: Loose = {
    version: 1,
    job: "Stops (invented)",
    unit: "in",
    side: "left",
    stair: { risers: 9, floorToFloor: 67.5, going: 10.5 },
    sections: { rail: "square 1-1/2 x 0.120", post: "square 1-1/2 x 0.120" },
    rails: [{ role: "top", section: "rail" }],
    posts: { section: "post" },
    legs: [{ along: "stair", top: 36, posts: { onTreads: [2, 6], behindNosing: 6.25 } }],
  };
  change(document);
  return document;
};

const laid = (document: unknown, shop?: unknown) => {
  const read = shop === undefined ? undefined : parseShop(shop);
  const { report, diagnostics } = buildGuard(document, read?.ok ? read.value : undefined);
  if (report === undefined) throw new Error(diagnostics.map((own) => own.message).join("\n"));
  return report.laid;
};

describe("stops on a rake", () => {
  const [rail] = laid(flight());
  const stop = rail!.stops[1]!;

  it("carry the rail at their downhill corner: case a23", () => {
    const { inputs, near } = shopCase("a23");
    // The case's stop runs from −26 to −24.5 in, three risers down: tread 6 of 9, centre 6-1/4 behind its nosing.
    expect([stop.tread, stop.touches]).toEqual([6, "downhill"]);
    inches(stop.x, inputs.stop_downhill_x!);
    inches(stop.width, inputs.stop_uphill_x! - inputs.stop_downhill_x!);
    near("stop_top_above_tread", stop.aboveBase / INCH);
    inches(stop.z - stop.aboveBase, inputs.tread_z!);
    expect(stop.aboveFoot).toBeCloseTo(stop.aboveBase, 9);
    expect(stop.foot).toBe("plate");
  });

  it("stand lower than the underside at the post's middle by half their width times the slope: case a24", () => {
    const { inputs, near } = shopCase("a24");
    const behindNosing = inputs.post_centre_behind_nosing;
    const [own] = laid(flight((d) => (d.legs[0].posts = { onTreads: [4], behindNosing })));
    const found = own!.stops[0]!;
    near("underside_1p5_rail", found.aboveBase / INCH + (0.75 * 7.5) / 10.5);
  });

  it("are as wide as the shop says", () => {
    const [own] = laid(flight(), { unit: "in", stop: { width: 3 } });
    const wide = own!.stops[1]!;
    inches(wide.width, 3);
    inches(stop.aboveBase - wide.aboveBase, (0.75 * 7.5) / 10.5);
    expect(stop.x - wide.x).toBeCloseTo(0.75 * INCH, 9);
  });

  it("are told from the rail's slope and what reaches out past them", () => {
    expect(rail!.slope).toBeCloseTo((Math.atan(7.5 / 10.5) * 180) / Math.PI, 12);
    // The rail starts over nosing 1 and ends over nosing 9 (cut plumb, underside under top edge).
    const secant = Math.hypot(1, 7.5 / 10.5);
    inches(rail!.past[0], (10.5 + 6.25 - 0.75) * secant);
    inches(rail!.past[1], (3 * 10.5 - 6.25 + 0.75) * secant);
  });
});

describe("stops of random flights", () => {
  it("stand where the shop's own formula puts them (cases a23), whatever the steps, rail and stop", () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const given = fc.record({
      riser: mm(150, 210),
      going: mm(230, 320),
      height: mm(800, 1100),
      depth: mm(25, 60),
      behind: mm(60, 150),
      width: mm(10, 110),
      tread: fc.integer({ min: 2, max: 6 }),
    });
    fc.assert(
      fc.property(given, ({ riser, going, height, depth, behind, width, tread }) => {
        const document = {
          ...{ version: 1, job: "Stops (invented)", unit: "mm", side: "left" },
          stair: { risers: 8, floorToFloor: 8 * riser, going },
          sections: { rail: `rect 60 x ${depth} x 3`, post: "round 42.4 x 3.2" },
          rails: [{ role: "top", section: "rail" }],
          posts: { section: "post" },
          legs: [{ along: "stair", top: height, posts: { onTreads: [tread], behindNosing: behind } }],
        };
        const [own] = laid(document, { stop: { width } })[0]!.stops;
        const centre = (tread - 8) * going + behind;
        const wanted = stopHeight({
          ...{ height, depth, pitch: (Math.atan2(riser, going) * 180) / Math.PI },
          ...{ from: centre - width / 2, to: centre + width / 2, treadZ: (tread - 8) * riser },
        });
        expect(own!.aboveBase).toBeCloseTo(wanted.top, 8);
        expect(own!.x).toBeCloseTo(centre - width / 2, 8);
      }),
      { numRuns: 25, seed: 6 },
    );
  });
});

describe("stops of the demo guard", () => {
  const rails = laid(example());

  it("have the demo's heights from the top of the plate at the post's downhill face", () => {
    const [raking] = rails;
    expect(raking!.stops.map((own) => own.post)).toEqual(["P1", "P2", "P3", "P4"]);
    for (const own of raking!.stops.slice(1))
      inches(own.aboveFoot, demo.straight.stairPost.downhillFaceAtCentre);
  });

  it("carry a level rail on their whole top, at its underside", () => {
    const level = rails[1]!;
    expect(level.slope).toBe(0);
    for (const own of level.stops) {
      expect(own.touches).toBe("face");
      inches(own.aboveBase, demo.straight.landingPost.railUnderside);
      inches(own.aboveFoot, demo.straight.landingPost.fromTopOfPlate);
    }
  });
});

describe("stops anywhere", () => {
  const all = (document: Loose): StopReport[] => laid(document).flatMap((own) => own.stops);

  it("carry a falling rail at their uphill corner", () => {
    const [, rail] = laid(
      flight((d) =>
        d.legs.push({ along: "landing", length: 60, slope: -2, top: 36, posts: { at: [20, 50] } }),
      ),
    );
    const [one, two] = rail!.stops as [StopReport, StopReport];
    expect([one.touches, two.touches]).toEqual(["uphill", "uphill"]);
    expect(one.x).toBeCloseTo((20 + 0.75) * INCH, 9);
    expect((one.z - two.z) / (two.x - one.x)).toBeCloseTo(Math.tan((2 * Math.PI) / 180), 9);
  });

  it("stand on both sides of a break under one post, each for its own rail", () => {
    const rails = laid(
      flight((d) => {
        d.legs[0].posts = { onTreads: [2], behindNosing: 6.25 };
        d.legs.push({ along: "landing", length: 60, top: 36, posts: { at: [0.5, 50] } });
      }),
    );
    const [rake, level] = rails.map((own) =>
      own.stops.find((stop) => stop.x > -2 * INCH && stop.x < 3 * INCH),
    );
    expect(rake?.post).toBe(level?.post);
    expect(rake?.touches).toBe("downhill");
    expect(level?.touches).toBe("face");
    expect(level!.z).toBeGreaterThan(rake!.z);
  });

  it("are told from each taped tread, not from the line", () => {
    const nosings = Array.from({ length: 9 }, (_, k) => ({ run: k * 10.5, height: (k + 1) * 7.5 }));
    const even = all(flight((d) => (d.stair = { nosings })));
    nosings[5]!.height += 0.25;
    const uneven = laid(flight((d) => (d.stair = { nosings })));
    const line = buildGuard(flight((d) => (d.stair = { nosings }))).report!;
    const stop = uneven[0]!.stops[1]!;
    expect(stop.z - stop.aboveBase).toBeCloseTo((6 * 7.5 + 0.25 - 9 * 7.5) * INCH, 9);
    // The line of least greatest miss rises by half of it, so that tread has half of it less.
    expect(line.flights[0]!.worstMiss / INCH).toBeCloseTo(0.125, 6);
    expect((even[1]!.aboveBase - stop.aboveBase) / INCH).toBeCloseTo(0.125, 6);
  });

  it("are shared out to the pieces of a spliced rail", () => {
    const rails = laid(
      example((d) => {
        d.sections.sleeve = "round 1.610 x 0.1";
        d.splices = [{ leg: "stair", at: "50", sleeve: "sleeve", reach: "3" }];
      }),
    );
    expect(rails.map((own) => own.stops.map((stop) => stop.post))).toEqual([
      ["P1", "P2"],
      ["P3", "P4"],
      ["P5", "P6", "P7", "P8"],
    ]);
    expect(new Set(rails.map((own) => own.id)).size).toBe(3);
  });

  it("are left out at a corner post: its rails end against it", () => {
    const turned = flight((d) =>
      d.legs.push({
        along: "landing",
        length: 60,
        top: 36,
        turn: { angle: 90, corner: "post", past: 4 },
        posts: { at: [50] },
      }),
    );
    const found = buildGuard(turned);
    expect(found.report!.posts.filter((own) => own.corner !== undefined)).toHaveLength(1);
    expect(all(turned).map((own) => own.post)).not.toContain(
      found.report!.posts.find((own) => own.corner !== undefined)!.mark,
    );
  });

  it("are told of a floor leg from the floor", () => {
    const [floor] = laid(withFloor());
    expect(floor!.stops.map((own) => [own.leg, own.tread])).toEqual([
      ["floor", undefined],
      ["floor", undefined],
    ]);
  });
});
