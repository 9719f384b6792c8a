/**
 * The numbers of an end against the worked cases, the plain functions of this room (themselves held to those cases), and
 * vectors.
 *
 * A saw setting of a piece is + when the long point is left or on top; the plain functions speak of the cut's normal along
 * travel. At a high end the long point is where that normal leans away from, at a low end where it leans to.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compoundMiter } from "../../src/joints/compound-miter.js";
import type { EndCut, Piece, SawSetting } from "../../src/joints/index.js";
import { saddle } from "../../src/joints/saddle.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, rectTube, roundTube, type Section } from "../../src/members/index.js";
import {
  cutPieces,
  INCH,
  pieceOf,
  post,
  RAD,
  rail,
  SQUARE40,
  solve,
  TUBE42,
  TUBE48,
  TUBE60,
} from "./models.js";
import { misses, num, record, referenceCase, referenceIds } from "./reference.js";

const SHARP = rectTube({ width: 1.5 * INCH, depth: 1.5 * INCH, wall: 3, outerRadius: 0, innerRadius: 0 });

/** Two tubes at a plan corner, walked from the first to the second; `turn` + to the left. */
function corner(slopeIn: number, slopeOut: number, turn: number, section: Section): [Piece, Piece] {
  const [t1, t2, a] = [slopeIn * RAD, slopeOut * RAD, turn * RAD];
  const first = rail("A", [-1000 * Math.cos(t1), 0, -1000 * Math.sin(t1)], [0, 0, 0], { section });
  const out: Vec3 = [
    1000 * Math.cos(t2) * Math.cos(a),
    1000 * Math.cos(t2) * Math.sin(a),
    1000 * Math.sin(t2),
  ];
  const pieces = cutPieces([first, rail("B", [0, 0, 0], out, { section })]);
  return [pieces[0]!, pieces[1]!];
}

/** The plain function's signs as a piece has them. */
const highEnd = (c: { miter: number; bevel: number; clock: number }) => ({
  miter: -c.miter,
  bevel: -c.bevel,
  clock: c.clock > 0 ? c.clock - 180 : c.clock + 180,
});

function expectSaw(
  saw: SawSetting,
  wanted: { miter: number; bevel: number; clock: number },
  fromSquare: number,
): void {
  expect(saw.miter).toBeCloseTo(wanted.miter, 8);
  expect(saw.bevel).toBeCloseTo(wanted.bevel, 8);
  // Angles round a circle: 180 and −180 are one.
  expect(Math.cos((saw.clock - wanted.clock) * RAD)).toBeCloseTo(1, 10);
  expect(saw.fromSquare).toBeCloseTo(fromSquare, 8);
  expect(saw.fromLength).toBeCloseTo(90 - fromSquare, 8);
}

const mark = (cut: EndCut, name: string): number => {
  const found = cut.arris.filter((m) => m.name === name);
  if (found.length !== 1) throw new Error(`${found.length} marks ${name}: ${cut.arris.map((m) => m.name)}`);
  return found[0]!.offset;
};

describe("saw settings and corner marks at a plan corner", () => {
  // Source: shared/shop-cases.json b10 to b18, independent script.
  it.each(referenceIds("b10-", "b11-", "b14-", "b18-"))("meet the worked corner %s", (id) => {
    const c = referenceCase(id);
    const input = ["theta1_deg", "theta2_deg", "plan_turn_deg"].map((k) => num(c.inputs, k)) as [
      number,
      number,
      number,
    ];
    const [first, second] = corner(...input, SHARP);
    const [one, two] = [record(c.expected, "tube1"), record(c.expected, "tube2")];
    const [a, b] = [first.cuts[1], second.cuts[0]];
    expect([a.kind, b.kind]).toEqual(["miter", "miter"]);
    const found = misses(c, {
      miter1: [-a.saw!.miter, one.miter_deg!],
      bevel1: [-a.saw!.bevel, one.bevel_deg!],
      miter2: [b.saw!.miter, two.miter_deg!],
      bevel2: [b.saw!.bevel, two.bevel_deg!],
      clock2: [b.saw!.clock, two.clock_deg!],
      true1: [a.saw!.fromSquare, num(c.expected, "true_miter_deg")],
      true2: [b.saw!.fromSquare, num(c.expected, "true_miter_deg")],
    });
    expect(found).toEqual([]);
    // Marks in inches past the cut on the axis, + longer towards the corner.
    const arris = record(c.expected, "tube1_arris_1p5sq");
    const marks = misses(c, {
      topLeft: [mark(a, "TOP-LEFT") / INCH, arris.top_left!],
      topRight: [mark(a, "TOP-RIGHT") / INCH, arris.top_right!],
      bottomLeft: [mark(a, "BOTTOM-LEFT") / INCH, arris.bottom_left!],
      bottomRight: [mark(a, "BOTTOM-RIGHT") / INCH, arris.bottom_right!],
    });
    expect(marks).toEqual([]);
  });

  it("are the plain function's on any corner (second route: compoundMiter)", () => {
    const slope = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(slope, slope, fc.double({ min: -120, max: 120, noNaN: true }), (t1, t2, turn) => {
        fc.pre(Math.abs(turn) > 1);
        const plain = compoundMiter({ slopeIn: t1, slopeOut: t2, turn });
        const [first, second] = corner(t1, t2, turn, TUBE42);
        expectSaw(first.cuts[1].saw!, highEnd(plain.first), plain.trueMiter);
        expectSaw(second.cuts[0].saw!, plain.second, plain.trueMiter);
      }),
      { numRuns: 60 },
    );
  });

  it("have the long point on the right at a left turn, and on top at a crest (by eye)", () => {
    const [left] = corner(0, 0, 90, SHARP);
    expect(left.cuts[1].saw!.miter).toBeCloseTo(-45, 9);
    expect(mark(left.cuts[1], "RIGHT")).toBeCloseTo(0.75 * INCH, 9);
    expect(mark(left.cuts[1], "LEFT")).toBeCloseTo(-0.75 * INCH, 9);
    const [rake, level] = corner(30, 0, 0, SHARP);
    for (const cut of [rake.cuts[1], level.cuts[0]]) {
      expect(cut.saw!.bevel).toBeCloseTo(15, 9);
      expect(mark(cut, "TOP")).toBeGreaterThan(0);
      expect(cut.saw!.clock).toBeCloseTo(90, 9);
    }
  });
});

describe("a raking rail cut plumb to a face skewed in plan", () => {
  // Source: shared/shop-cases.json c33. Its miter and bevel are of the cut's normal.
  it("meets the worked case c33", () => {
    const c = referenceCase("c33-rail-to-face-plan");
    const [t, a] = [num(c.inputs, "theta_deg") * RAD, num(c.inputs, "plan_deg") * RAD];
    const m = rail("A", [-1000 * Math.cos(t), 0, -1000 * Math.sin(t)], [0, 0, 0], { section: SHARP });
    const results = [a, -a].map((turn) => {
      const normal: Vec3 = [Math.cos(turn), Math.sin(turn), 0];
      const [p] = cutPieces(
        [m],
        [{ kind: "cut", id: "C", end: { member: "A", end: 1 }, cut: { type: "plane", normal } }],
      );
      return p!.cuts[1];
    });
    // The face of the worked case turns to the right.
    const cut = results[1]!;
    const arris = record(c.expected, "arris");
    const found = misses(c, {
      miter: [-cut.saw!.miter, num(c.expected, "miter_deg")],
      bevel: [-cut.saw!.bevel, num(c.expected, "bevel_deg")],
      true: [cut.saw!.fromSquare, num(c.expected, "true_angle_from_square_deg")],
      topLeft: [mark(cut, "TOP-LEFT") / INCH, arris.top_left!],
      topRight: [mark(cut, "TOP-RIGHT") / INCH, arris.top_right!],
      bottomLeft: [mark(cut, "BOTTOM-LEFT") / INCH, arris.bottom_left!],
      bottomRight: [mark(cut, "BOTTOM-RIGHT") / INCH, arris.bottom_right!],
    });
    expect(found).toEqual([]);
    expect(results[0]!.saw!.miter).toBeCloseTo(-cut.saw!.miter, 9);
    expect(results[0]!.saw!.bevel).toBeCloseTo(cut.saw!.bevel, 9);
  });
});

/** A plumb tube under a rail that rakes θ, its axis `beside` the rail's to the left. */
function under(
  theta: number,
  beside: number,
  branch: Section,
  header: Section,
  gap = 0,
  flip = false,
): Piece {
  const t = theta * RAD;
  const [c, s] = [800 * Math.cos(t), 800 * Math.sin(t)];
  const r = rail("R", [-c, 0, 900 - s], [c, 0, 900 + s], { section: header });
  const p = flip
    ? post("P", [0, beside, 900], [0, beside, 0], { section: branch })
    : post("P", [0, beside, 0], [0, beside, 900], { section: branch });
  const end = flip ? 0 : 1;
  return cutPieces([r, p], [{ kind: "cope", id: "K", end: { member: "P", end }, onto: ["R"], gap }])[1]!;
}

describe("the numbers of a cope", () => {
  it("has the angle between centrelines, the toe uphill under a raking rail, and the offset with its sign (design, section 5)", () => {
    const piece = under(35, 0, TUBE42, TUBE48, 1.5);
    const [cope] = piece.cuts[1].cope;
    expect(cope).toMatchObject({ onto: "R", gap: 1.5, offset: 0 });
    expect(cope!.angle).toBeCloseTo(55, 9);
    // The post's v is uphill; the acute side (heel) is its downhill face, so the toe is uphill.
    expect(cope!.toe[1]).toBeCloseTo(1, 12);
    // φ = 90 along d × toe with d down the post: (−Z) × X = −Y. An axis 4 to the left is at −4 along it.
    expect(under(35, 4, TUBE42, TUBE60).cuts[1].cope[0]!.offset).toBeCloseTo(-4, 9);
    expect(under(35, -4, TUBE42, TUBE60).cuts[1].cope[0]!.offset).toBeCloseTo(4, 9);
    // A post drawn from the top down is the same cut at its other end.
    const flipped = under(35, 4, TUBE42, TUBE60, 0, true).cuts[0].cope[0]!;
    expect(flipped.offset).toBeCloseTo(-4, 9);
    expect(flipped.angle).toBeCloseTo(55, 9);
  });

  it("makes the plain function's edge: each mark of the end is a station of the saddle (second route: saddle)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.boolean(),
        (theta, beside, gap, flip) => {
          const piece = under(theta, beside, TUBE42, TUBE60, gap, flip);
          const cut = piece.cuts[flip ? 0 : 1];
          const { angle, offset, toe } = cut.cope[0]!;
          const plain = saddle({
            branch: { od: 42.4, wall: 3.2 },
            header: { od: 60.3 },
            angle,
            offset,
            gap,
            stations: 4,
          });
          // φ of each crown of the section: from the toe towards d × toe, d along the branch away from the header.
          const d = flip ? 1 : -1;
          const side: Vec3 = [-d * toe[1], d * toe[0], 0];
          const frame = piece.frame;
          const direction: Record<string, Vec3> = {
            UPHILL: [1, 0, 0],
            DOWNHILL: [-1, 0, 0],
            LEFT: [0, 1, 0],
            RIGHT: [0, -1, 0],
          };
          expect(cut.arris).toHaveLength(4);
          const axis = piece.lengths.axis!.value;
          for (const { name, offset: past } of cut.arris) {
            const w = direction[name]!;
            const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
            const [u, v] = [dot(w, frame.x), dot(w, frame.y)];
            const phi = Math.atan2(u * side[0] + v * side[1], u * toe[0] + v * toe[1]) / RAD;
            const station = plain.stations[(Math.round(phi / 90) + 4) % 4]!;
            expect(Math.abs(((phi + 360) % 90) - 45)).toBeGreaterThan(44.999999);
            // From the point nearest the header's axis, 900 up, down to where the post ends.
            expect(axis + past).toBeCloseTo(900 - station.outer!, 7);
          }
          expect(cut.fit).toEqual({ step: 0, gap });
        },
      ),
      { numRuns: 60 },
    );
  });

  // Source: shared/shop-cases.json k01 and k05 (cos ψ = −N_header · N_branch), least angle.
  it.each(referenceIds("k01-", "k05-"))("has the worked least angle between the skins %s", (id) => {
    const c = referenceCase(id);
    const od = num(c.inputs, "branch_OD") * INCH;
    const branch = roundTube({ od, wall: od / 10 });
    const header = roundTube({ od: num(c.inputs, "header_OD") * INCH, wall: 4 });
    const theta = 90 - num(c.inputs, "axis_angle_deg");
    const cut = under(theta, -num(c.inputs, "offset") * INCH, branch, header).cuts[1];
    expect(cut.cope[0]!.offset).toBeCloseTo(num(c.inputs, "offset") * INCH, 8);
    // Read off 90 places a half turn: a least that lies between two is found to a second-order error.
    expect(Math.abs(cut.dihedral!.least - num(c.expected, "min_deg"))).toBeLessThan(0.02);
    expect(cut.dihedral!.least).toBeGreaterThan(num(c.expected, "min_deg") - 1e-5);
  });

  it("ranges over what the plain function's stations show (second route: 720 stations)", () => {
    const cut = under(30, 3, TUBE42, TUBE60).cuts[1];
    const plain = saddle({
      branch: { od: 42.4, wall: 3.2 },
      header: { od: 60.3 },
      angle: 60,
      offset: -3,
      stations: 720,
    });
    const all = plain.stations.map((s) => s.dihedral!);
    expect(Math.abs(cut.dihedral!.least - Math.min(...all))).toBeLessThan(0.02);
    expect(Math.abs(cut.dihedral!.greatest - Math.max(...all))).toBeLessThan(0.02);
  });

  // Source: shared/shop-cases.json k06: the acute corner of a raking rail on a flat plumb face is 90 − θ.
  it("on a flat face ranges from the acute to the obtuse corner (k06)", () => {
    const c = referenceCase("k06-corner-acute-rake");
    const t = num(c.inputs, "theta_deg") * RAD;
    const p = post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40 });
    const r = rail("R", [-800 * Math.cos(t), 0, 1000 - 800 * Math.sin(t)], [0, 0, 1000], { section: SHARP });
    const cut = cutPieces([p, r])[1]!.cuts[1];
    expect(cut.kind).toBe("plane");
    expect(cut.dihedral!.least).toBeCloseTo(num(c.expected, "under_rail_at_uphill_post"), 6);
    expect(cut.dihedral!.greatest).toBeCloseTo(num(c.expected, "above_rail_at_uphill_post"), 6);
  });
});

describe("kinds of an end", () => {
  const kinds = (members: Member[], end: 0 | 1, id: string) =>
    cutPieces(members).find((p) => p.id === id)!.cuts[end];

  it("are square, plane, miter and cope by what the shop does", () => {
    const p = post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40 });
    const levelRail = rail("L", [-800, 0, 900], [0, 0, 900], { section: SHARP, role: "rail" });
    const free = kinds([p, levelRail], 0, "L");
    expect(free).toMatchObject({ kind: "square", joint: "rule:free-end", onto: [], cope: [] });
    expect(free.saw).toEqual({ miter: 0, bevel: 0, fromSquare: 0, fromLength: 90, clock: 0 });
    expect(free.dihedral).toBeUndefined();
    // Against a flat face it is one square saw cut, though it is cut to the post's skin.
    expect(kinds([p, levelRail], 1, "L")).toMatchObject({
      kind: "square",
      onto: ["P"],
      joint: "rule:end-on-span",
    });
    const round = post("P", [0, 0, 0], [0, 0, 2000], { section: TUBE60 });
    const coped = kinds([round, levelRail], 1, "L");
    expect(coped.kind).toBe("cope");
    expect(coped.saw).toBeUndefined();
    expect(coped.cope).toHaveLength(1);
  });
});

describe("a square post under a flat-bottomed rail of its own width", () => {
  it("keeps the saw angle of the flat, the rake, beside the shaped corners (case c01: cut from square = rake)", () => {
    const section = rectTube({ width: 38.1, depth: 50.8, wall: 3 });
    const along = rail("R", [-500, 0, 1000 - 500 * (7.5 / 10.5)], [500, 0, 1000 + 500 * (7.5 / 10.5)], {
      section,
    });
    const under = post("P", [0, 0, 0], [0, 0, 1000], {
      section: rectTube({ width: 38.1, depth: 38.1, wall: 3 }),
    });
    const cut = pieceOf(solve([along, under]), "P").cuts[1];
    expect(cut.kind).toBe("cope");
    expect(cut.saw).toBeUndefined();
    expect(cut.flatPart?.fromSquare).toBeCloseTo(35.537677791974, 9);
    const round = post("Q", [0, 0, 0], [0, 0, 1000]);
    expect(
      pieceOf(solve([rail("S", [-500, 0, 1000], [500, 0, 1000]), round]), "Q").cuts[1].flatPart,
    ).toBeUndefined();
  });
});
