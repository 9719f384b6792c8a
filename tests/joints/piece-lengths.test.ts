/**
 * Lengths of pieces against worked members, the demo stair's independent numbers, and closed forms.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import demo from "../../shared/demo-data.json" with { type: "json" };
import type { CutDirection, Joint, MeasuredLength, Piece } from "../../src/joints/index.js";
import { saddle } from "../../src/joints/saddle.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, rectTube, roundTube } from "../../src/members/index.js";
import {
  cutPieces,
  INCH,
  pieceOf,
  post,
  potteryGuard,
  RAD,
  RECT60X30,
  rail,
  SQUARE40,
  TUBE42,
  TUBE48,
} from "./models.js";
import { misses, num, referenceCase } from "./reference.js";

const square = (side: number) =>
  rectTube({ width: side, depth: side, wall: 3, outerRadius: 0, innerRadius: 0 });
const SHARP = square(1.5 * INCH);
const inch = (l: MeasuredLength | undefined): number => l!.value / INCH;

/** A member from 0 to `length` along X with both ends cut flat; + tips the long point to the top. */
function tipped(length: number, low: number, high: number, section = SHARP): Piece {
  const cut = (end: 0 | 1, angle: number): Joint => {
    const t = angle * RAD;
    const normal: Vec3 = end === 1 ? [Math.cos(t), 0, -Math.sin(t)] : [-Math.cos(t), 0, -Math.sin(t)];
    return { kind: "cut", id: `C${end}`, end: { member: "R", end }, cut: { type: "plane", normal } };
  };
  const [p] = cutPieces([rail("R", [0, 0, 0], [length, 0, 0], { section })], [cut(0, low), cut(1, high)]);
  return p!;
}

describe("worked members", () => {
  // Source: shared/shop-cases.json b20, b21, independent script.
  it("trapezoid b20: both long points on top", () => {
    const c = referenceCase("b20-member-trapezoid");
    const { lengths } = tipped(
      num(c.inputs, "centreline") * INCH,
      num(c.inputs, "miter1_deg"),
      num(c.inputs, "miter2_deg"),
    );
    const found = misses(c, {
      top: [inch(lengths.top), num(c.expected, "top")],
      bottom: [inch(lengths.bottom), num(c.expected, "bottom")],
      blank: [inch(lengths.blank), num(c.expected, "blank")],
      long: [inch(lengths.longPoint), num(c.expected, "top")],
      short: [inch(lengths.shortPoint), num(c.expected, "bottom")],
      square: [inch(lengths.squareCut), num(c.expected, "blank")],
      axis: [inch(lengths.axis), num(c.inputs, "centreline")],
    });
    expect(found).toEqual([]);
    expect(lengths.longPoint.to.name).toBe("long point, TOP, UPHILL end");
    expect(lengths.shortPoint.from.name).toBe("short point, BOTTOM, DOWNHILL end");
  });

  it("parallelogram b21: plumb cuts at both ends of a rake", () => {
    const c = referenceCase("b21-member-parallelogram");
    const t = num(c.inputs, "miter1_deg") * RAD;
    const l = num(c.inputs, "centreline") * INCH;
    const plumb = (end: 0 | 1): Joint => ({
      kind: "cut",
      id: `C${end}`,
      end: { member: "R", end },
      cut: { type: "plumb" },
    });
    const m = rail("R", [0, 0, 0], [l * Math.cos(t), 0, l * Math.sin(t)], { section: SHARP });
    const [p] = cutPieces([m], [plumb(0), plumb(1)]);
    const found = misses(c, {
      top: [inch(p!.lengths.top), num(c.expected, "top")],
      bottom: [inch(p!.lengths.bottom), num(c.expected, "bottom")],
      blank: [inch(p!.lengths.blank), num(c.expected, "blank")],
      long: [inch(p!.lengths.longPoint), num(c.expected, "top")],
      short: [inch(p!.lengths.shortPoint), num(c.expected, "top")],
    });
    expect(found).toEqual([]);
  });

  // Source: shared/shop-cases.json c30: the rail by the rules alone, between the faces of two square posts.
  it("rail between posts c30", () => {
    const c = referenceCase("c30-rail-between-posts");
    const t = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run"));
    const clear = num(c.inputs, "horizontal_clear_between_posts") * INCH;
    const depth = num(c.inputs, "depth") * INCH;
    const apart = clear + 40;
    const [low, high] = [0, apart].map((x, i) =>
      post(`P${i}`, [x, 0, -2000], [x, 0, 4000], { section: SQUARE40 }),
    );
    const between = rail("R", [0, 0, 500], [apart, 0, 500 + apart * Math.tan(t)], {
      section: square(depth),
      role: "rail",
    });
    const { lengths, cuts } = pieceOf({ pieces: cutPieces([low!, high!, between]) }, "R");
    const found = misses(c, {
      edge: [inch(lengths.top), num(c.expected, "edge_length")],
      other: [inch(lengths.bottom), num(c.expected, "edge_length")],
      blank: [inch(lengths.blank), num(c.expected, "blank_length")],
      saw0: [cuts[0].saw?.fromSquare, num(c.expected, "cut_from_square_deg")],
      saw1: [cuts[1].saw?.fromSquare, num(c.expected, "cut_from_square_deg")],
    });
    expect(found).toEqual([]);
    // Its words: long point top at the uphill end, bottom at the downhill end.
    expect(cuts[1].saw!.bevel).toBeGreaterThan(0);
    expect(cuts[0].saw!.bevel).toBeLessThan(0);
  });

  // Source: shared/shop-cases.json c01: a post under a flat-bottomed raking rail, by the rules.
  it("post under a flat rail c01", () => {
    const c = referenceCase("c01-post-top-plane");
    const t = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run"));
    const depth = num(c.inputs, "rail_depth") * INCH;
    const axis = num(c.inputs, "rail_top_height_at_post_centre") * INCH - depth / 2 / Math.cos(t);
    const r = rail("R", [-500, 0, axis - 500 * Math.tan(t)], [500, 0, axis + 500 * Math.tan(t)], {
      section: square(depth),
    });
    const p = post("P", [0, 0, 0], [0, 0, axis], {
      section: square(num(c.inputs, "post_size_along_run") * INCH),
    });
    const { lengths, cuts } = cutPieces([r, p])[1]!;
    const found = misses(c, {
      centre: [inch(lengths.axis), num(c.expected, "centre")],
      uphill: [inch(lengths.top), num(c.expected, "uphill_face")],
      downhill: [inch(lengths.bottom), num(c.expected, "downhill_face")],
      long: [inch(lengths.longPoint), num(c.expected, "uphill_face")],
      blank: [inch(lengths.blank), num(c.expected, "uphill_face")],
      cut: [cuts[1].saw?.fromSquare, num(c.expected, "cut_from_square_deg")],
    });
    expect(found).toEqual([]);
    expect(lengths.longPoint.to.name).toBe("long point, UPHILL, TOP end");
  });

  // Source: shared/shop-cases.json c22: lengths to where the square-cut wall lands. Its long point is the greatest of 24
  // stations (at φ = 60); the true one lies between stations, where the inner edge lands (handbook: s(φ; rho)).
  it("post under a round rail c22", () => {
    const c = referenceCase("c22-post-under-round-rail-lengths");
    const t = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run"));
    const od = num(c.inputs, "rail_OD") * INCH;
    const axis = num(c.expected, "rail_axis_height") * INCH;
    const wall = num(c.inputs, "wall") * INCH;
    const plate = num(c.inputs, "base_plate") * INCH;
    const r = rail("R", [-500, 0, axis - 500 * Math.tan(t)], [500, 0, axis + 500 * Math.tan(t)], {
      section: roundTube({ od, wall }),
    });
    const section = roundTube({ od: num(c.inputs, "post_OD") * INCH, wall });
    const { lengths, cuts } = cutPieces([r, post("P", [0, 0, plate], [0, 0, axis], { section })])[1]!;
    const inner = od / 2 - wall;
    const landing = (phi: number): number =>
      (Math.sqrt((od / 2) ** 2 - (inner * Math.sin(phi)) ** 2) - inner * Math.cos(phi) * Math.sin(t)) /
      Math.cos(t);
    const fibre = (phi: number): number => (axis - plate - landing(phi)) / INCH;
    expect(misses(c, { station: [fibre(60 * RAD), num(c.expected, "long_point_length")] })).toEqual([]);
    const scan = Array.from({ length: 40_000 }, (_, k) => fibre((k / 40_000) * Math.PI));
    expect(Math.abs(inch(lengths.squareCut) - Math.max(...scan))).toBeLessThan(1e-8);
    expect(inch(lengths.squareCut)).toBeGreaterThan(num(c.expected, "long_point_length"));
    // The outer edge alone is longest at the ears, at the rail's axis, and shortest at the downhill crown (closed forms).
    expect(inch(lengths.longPoint)).toBeCloseTo((axis - plate) / INCH, 9);
    expect(inch(lengths.shortPoint)).toBeCloseTo(num(c.expected, "downhill_crown"), 9);
    expect(lengths.shortPoint.to.name).toBe("short point, DOWNHILL, TOP end");
    expect(inch(lengths.squareCut)).toBeLessThan(inch(lengths.blank));
    expect(cuts[1].cope[0]!.angle).toBeCloseTo(90 - t / RAD, 9);
  });

  // Source: shared/shop-cases.json z01.
  it("a whole rail, twelve nosings and eight feet of landing, z01", () => {
    const c = referenceCase("z01-whole-rail");
    const t = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run"));
    const half = (num(c.inputs, "depth") * INCH) / 2;
    const top = num(c.inputs, "height") * INCH;
    const back = num(c.expected, "rake_horizontal") * INCH;
    const along = num(c.inputs, "level_length_from_top_nosing") * INCH;
    // Top edges meet over the nosing; centrelines meet half a depth under, tan(θ/2) further over the landing.
    const knee: Vec3 = [half * Math.tan(t / 2), 0, top - half];
    const foot: Vec3 = [-back, 0, top - back * Math.tan(t) - half / Math.cos(t)];
    const rake = rail("A", foot, knee, { section: SHARP });
    const level = rail("B", knee, [along, 0, top - half], { section: SHARP });
    const plumb: Joint = { kind: "cut", id: "C", end: { member: "A", end: 0 }, cut: { type: "plumb" } };
    const [a, b] = cutPieces([rake, level], [plumb]);
    const found = misses(c, {
      rakeTop: [inch(a!.lengths.top), num(c.expected, "rake_top_edge")],
      rakeBottom: [inch(a!.lengths.bottom), num(c.expected, "rake_bottom_edge")],
      rakeBlank: [inch(a!.lengths.blank), num(c.expected, "rake_blank")],
      levelTop: [inch(b!.lengths.top), num(c.expected, "level_top_edge")],
      levelBottom: [inch(b!.lengths.bottom), num(c.expected, "level_bottom_edge")],
      miter: [a!.cuts[1].saw?.fromSquare, num(c.expected, "break_miter_deg")],
    });
    expect(found).toEqual([]);
  });
});

describe("the pottery studio's guard, from its document to its pieces", () => {
  // Source: shared/demo-data.json, computed by an independent script; inches, to 1e-6.
  const guard = potteryGuard();
  const near = (got: number, wanted: number, what: string) =>
    expect(Math.abs(got - wanted), `${what}: ${got} for ${wanted}`).toBeLessThanOrEqual(1e-6);
  const { straight } = demo;

  it("rake rail and level rail", () => {
    const rake = pieceOf(guard, "stair-top");
    near(inch(rake.lengths.top), straight.rakeRail.top, "rake top");
    near(inch(rake.lengths.bottom), straight.rakeRail.bottom, "rake bottom");
    near(inch(rake.lengths.blank), straight.rakeRail.blank, "rake blank");
    expect(Math.abs(rake.cuts[1].saw!.fromSquare - straight.miterDeg)).toBeLessThan(1e-9);
    near(
      (rake.cuts[1].arris.find((m) => m.name === "TOP")!.offset -
        rake.cuts[1].arris.find((m) => m.name === "BOTTOM")!.offset) /
        INCH,
      straight.miterLongMinusShort,
      "long less short",
    );
    const level = pieceOf(guard, "landing-top");
    near(inch(level.lengths.top), straight.levelRail.topFromBreakToEndPlateFace, "level top");
    near(inch(level.lengths.bottom), straight.levelRail.bottom, "level bottom");
  });

  it.each(["stair-post-2", "stair-post-3", "stair-post-4"])("%s", (id) => {
    const { lengths, cuts } = pieceOf(guard, id);
    const wanted = straight.stairPost;
    const plate = 0.375;
    near(inch(lengths.axis), wanted.postAxisFromTopOfPlate, "axis");
    near(inch(lengths.axis) + plate, wanted.railUndersideAtAxis, "underside");
    near(inch(lengths.top), wanted.uphillFaceAtCentre, "uphill face");
    near(inch(lengths.bottom), wanted.downhillFaceAtCentre, "downhill face");
    // The rail is round: a flat side of the post, half its width off the axis, stands higher by this all along it.
    for (const side of ["LEFT", "RIGHT"]) {
      near(cuts[1].arris.find((m) => m.name === side)!.offset / INCH, wanted.flatFaceCornersHigherBy, side);
    }
  });

  it.each(["landing-post-2", "landing-post-3"])("%s", (id) => {
    const { lengths } = pieceOf(guard, id);
    near(inch(lengths.axis), straight.landingPost.fromTopOfPlate, "axis");
    near(inch(lengths.longPoint) - inch(lengths.axis), straight.landingPost.cornersHigherBy, "corners");
    near(inch(lengths.top), straight.landingPost.fromTopOfPlate, "uphill face");
  });
});

describe("lengths in closed form", () => {
  const angle = fc.double({ min: -55, max: 55, noNaN: true });

  it("of any two flat cuts in elevation: edges are the axis ± half the depth times the tangents", () => {
    fc.assert(
      fc.property(angle, angle, (low, high) => {
        const { lengths } = tipped(1000, low, high, RECT60X30);
        const [a, b] = [15 * Math.tan(low * RAD), 15 * Math.tan(high * RAD)];
        expect(lengths.top!.value).toBeCloseTo(1000 + a + b, 8);
        expect(lengths.bottom!.value).toBeCloseTo(1000 - a - b, 8);
        expect(lengths.axis!.value).toBeCloseTo(1000, 8);
        expect(lengths.blank.value).toBeCloseTo(1000 + Math.abs(a) + Math.abs(b), 8);
        expect(lengths.longPoint.value).toBeCloseTo(1000 + Math.abs(a + b), 8);
        expect(lengths.shortPoint.value).toBeCloseTo(1000 - Math.abs(a + b), 8);
        expect(lengths.squareCut.value).toBeCloseTo(lengths.blank.value, 9);
      }),
      { numRuns: 60 },
    );
  });

  it("of a round tube: the crown of a flat cut is a radius times the tangent past the axis, whichever way it leans", () => {
    fc.assert(
      fc.property(angle, fc.double({ min: 0, max: 360, noNaN: true }), (lean, round) => {
        const [t, p] = [lean * RAD, round * RAD];
        const normal: Vec3 = [Math.cos(t), Math.sin(t) * Math.cos(p), Math.sin(t) * Math.sin(p)];
        const joint: Joint = {
          kind: "cut",
          id: "C",
          end: { member: "R", end: 1 },
          cut: { type: "plane", normal },
        };
        const [piece] = cutPieces([rail("R", [0, 0, 0], [1000, 0, 0])], [joint]);
        const past = 24.15 * Math.abs(Math.tan(t));
        expect(piece!.lengths.longPoint.value).toBeCloseTo(1000 + past, 8);
        expect(piece!.lengths.shortPoint.value).toBeCloseTo(1000 - past, 8);
      }),
      { numRuns: 60 },
    );
  });

  it("of a coped tube: extremes and landing of the plain function's stations (second route: saddle, 3600 stations)", () => {
    for (const [theta, beside] of [
      [0, 0],
      [35, 0],
      [35, 2.5],
      [55, -2.9],
    ] as const) {
      const t = theta * RAD;
      const r = rail("R", [-500, 0, 900 - 500 * Math.tan(t)], [500, 0, 900 + 500 * Math.tan(t)]);
      const p = post("P", [0, beside, 0], [0, beside, 900]);
      const [, piece] = cutPieces(
        [r, p],
        [{ kind: "cope", id: "K", end: { member: "P", end: 1 }, onto: ["R"] }],
      );
      const plain = saddle({
        branch: { od: 42.4, wall: 3.2 },
        header: { od: 48.3 },
        angle: 90 - theta,
        offset: -beside,
        stations: 3600,
      });
      const outer = plain.stations.map((s) => 900 - s.outer!);
      const landing = plain.stations.map((s) => 900 - s.effective!);
      const inner = plain.stations.map((s) => 900 - s.inner!);
      const { lengths } = piece!;
      // Between stations of 0.1° a crown hides less than 1e-4 mm: half a step squared, times half a curvature of 100 mm.
      expect(Math.abs(lengths.longPoint.value - Math.max(...outer))).toBeLessThan(1e-4);
      expect(Math.abs(lengths.shortPoint.value - Math.min(...outer))).toBeLessThan(1e-4);
      expect(Math.abs(lengths.blank.value - Math.max(...outer, ...inner))).toBeLessThan(1e-4);
      expect(Math.abs(lengths.squareCut.value - Math.max(...landing))).toBeLessThan(1e-4);
    }
  });
});

describe("the two points of a length", () => {
  const models: readonly [string, readonly Member[], readonly Joint[]][] = [
    ["a crest", [rail("A", [-900, 0, 300], [0, 0, 900]), rail("B", [0, 0, 900], [900, 0, 900])], []],
    ["a coped post", [rail("A", [-900, 0, 300], [900, 0, 1500]), post("B", [0, 0, 0], [0, 0, 900])], []],
    [
      "a plumb-cut square rail",
      [rail("A", [0, 0, 0], [900, 0, 500], { section: SQUARE40 })],
      [{ kind: "cut", id: "C", end: { member: "A", end: 0 }, cut: { type: "plumb" } satisfies CutDirection }],
    ],
    [
      "a branch between tubes",
      [
        post("P", [0, 0, 0], [0, 0, 900]),
        post("Q", [500, 0, 0], [500, 0, 900]),
        rail("A", [0, 0, 300], [500, 0, 500], { section: TUBE42, role: "rail" }),
      ],
      [],
    ],
  ];

  it.each(models)(
    "lie on the piece, as far apart along it as the length says: %s",
    (_name, members, joints) => {
      for (const { lengths, section } of cutPieces(members, joints)) {
        for (const l of [
          lengths.blank,
          lengths.longPoint,
          lengths.shortPoint,
          lengths.top!,
          lengths.bottom!,
          lengths.axis!,
        ]) {
          expect(l.to.point[2] - l.from.point[2]).toBeCloseTo(l.value, 9);
          expect(l.from.name).not.toBe(l.to.name);
          const half = Math.max(
            ...[l.from, l.to].map(({ point: [u, v] }) => Math.max(Math.abs(u), Math.abs(v))),
          );
          const widest = section.shape.kind === "round-tube" ? section.shape.od / 2 : 20;
          expect(half).toBeLessThanOrEqual(widest + 1e-9);
        }
        for (const fibre of [lengths.longPoint, lengths.shortPoint, lengths.top!, lengths.bottom!]) {
          expect(fibre.to.point.slice(0, 2)).toEqual(fibre.from.point.slice(0, 2));
        }
        expect(lengths.shortPoint.value).toBeLessThanOrEqual(lengths.longPoint.value);
        expect(lengths.longPoint.value).toBeLessThanOrEqual(lengths.blank.value + 1e-9);
        expect(lengths.squareCut.value).toBeLessThanOrEqual(lengths.blank.value + 1e-9);
      }
    },
  );

  it("name the middle of a side that is long all along", () => {
    const { lengths } = tipped(1000, 20, 20);
    expect(lengths.longPoint.to.point[0]).toBeCloseTo(0, 9);
    expect(lengths.longPoint.to.point[1]).toBeCloseTo(0.75 * INCH, 9);
    expect(lengths.shortPoint.to.point[0]).toBeCloseTo(0, 9);
    const equal = cutPieces([rail("R", [0, 0, 0], [1000, 0, 0], { section: TUBE48 })])[0]!.lengths;
    expect([equal.blank.value, equal.longPoint.value, equal.shortPoint.value]).toEqual([1000, 1000, 1000]);
  });
});
