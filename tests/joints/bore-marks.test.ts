/**
 * Marks for drilling, against what the trade works out by hand and against a second route: the solid's own openings.
 */
import { describe, expect, it } from "vitest";
import {
  type BoreJoint,
  type BoreMark,
  member,
  type Piece,
  rectTube,
  roundTube,
  type Section,
  solidOf,
  solveJoints,
} from "../../src/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { pieceRecords } from "../../src/shop/pieces-json.js";

const RAD = Math.PI / 180;
const IN = 25.4;
/** 7-1/2 over 10-1/2: 35.5377 degrees. */
const PITCH = Math.atan2(7.5, 10.5);

function drilled(section: Section, at: Vec3, direction: Vec3, more: Partial<BoreJoint> = {}): Piece {
  const post = member({ id: "P", section, role: "post", from: [0, 0, 0], to: [0, 0, 900] });
  const joint = {
    kind: "bore",
    id: "c1",
    member: "P",
    at,
    direction,
    diameter: 8,
    through: "both",
    ...more,
  } as const;
  const { pieces, diagnostics } = solveJoints({ members: [post], joints: [joint] });
  expect(diagnostics).toEqual([]);
  return pieces[0]!;
}
const marksOf = (piece: Piece): readonly BoreMark[] => piece.bores[0]!.marks;

describe("marks of a bore", () => {
  const square = rectTube({ width: 1.5 * IN, depth: 1.5 * IN, wall: 0.12 * IN });

  it("of a raking cable: on the far face higher by depth times tan of the rake", () => {
    const piece = drilled(square, [0, 0, 400], [Math.cos(PITCH), 0, Math.sin(PITCH)]);
    const [enters, leaves] = marksOf(piece);
    // 1-1/2 in · 7.5/10.5 = 1.071429 in: similar triangles.
    const rise = (1.5 * 7.5) / 10.5;
    expect((leaves!.distance.value - enters!.distance.value) / IN).toBeCloseTo(rise, 12);
    expect(enters!.distance.value).toBeCloseTo(400 - (rise * IN) / 2, 10);
    expect([enters!.face, leaves!.face]).toEqual(["DOWNHILL", "UPHILL"]);
    for (const mark of [enters!, leaves!]) {
      expect(mark.fromSquare).toBeCloseTo(35.5377, 4);
      expect(mark.offset).toEqual({ value: expect.closeTo(0, 10), towards: "" });
      expect(mark.across).toEqual({ value: expect.closeTo(0, 10), towards: "" });
      expect(mark.distance.from.name).toMatch(/FOOT end$/);
    }
    // Going in from the downhill face the drill climbs; from the uphill face it comes down.
    expect([enters!.along, leaves!.along].map((x) => Math.round(x))).toEqual([36, -36]);
  });

  it("off the middle of a face and leaning across it", () => {
    const turn = 10 * RAD;
    const piece = drilled(square, [0, 5, 400], [Math.cos(turn), Math.sin(turn), 0], { diameter: 5 });
    const [enters, leaves] = marksOf(piece);
    // Half the depth either way, the line leaves 5 mm to the left by 19.05·tan 10°.
    const drift = 0.75 * IN * Math.tan(turn);
    expect(enters!.offset).toEqual({ value: expect.closeTo(5 - drift, 10), towards: "LEFT" });
    expect(leaves!.offset).toEqual({ value: expect.closeTo(5 + drift, 10), towards: "LEFT" });
    expect(enters!.across).toEqual({ value: expect.closeTo(10, 10), towards: "LEFT" });
    expect(leaves!.across).toEqual({ value: expect.closeTo(10, 10), towards: "RIGHT" });
    expect([enters!.along, leaves!.along]).toEqual([expect.closeTo(0, 10), expect.closeTo(0, 10)]);
  });

  it("on a rounded corner: its middle, square to it", () => {
    const [mark] = marksOf(drilled(square, [0, 0, 400], [1, 1, 0]));
    expect([mark!.side, mark!.face]).toEqual(["corner", "DOWNHILL-RIGHT"]);
    expect(mark!.offset!.value).toBeCloseTo(0, 10);
    expect(mark!.fromSquare).toBeCloseTo(0, 10);
    // The corner's outermost point: half the diagonal less (√2 − 1) radii; the radius is twice the wall.
    const reach = Math.SQRT2 * 0.75 * IN - (Math.SQRT2 - 1) * 0.24 * IN;
    const [u, v] = mark!.distance.to.point;
    expect(Math.hypot(u, v)).toBeCloseTo(reach, 10);
  });

  it("round a tube: angles half a turn apart for a bore through the axis, and the lean at one beside it", () => {
    const tube = roundTube({ od: 42.4, wall: 3.2 });
    // A post's left (u) is the layout's −Y, its up (v) the layout's X.
    const [a, b] = marksOf(drilled(tube, [0, 0, 400], [Math.cos(30 * RAD), -Math.sin(30 * RAD), 0]));
    expect([a!.angle, b!.angle]).toEqual([expect.closeTo(240, 10), expect.closeTo(60, 10)]);
    expect(a!.offset).toBeUndefined();
    const [beside] = marksOf(drilled(tube, [0, 10, 400], [1, 0, 0]));
    // sin of the lean is the offset over the radius.
    expect(beside!.fromSquare).toBeCloseTo(Math.asin(10 / 21.2) / RAD, 10);
  });

  it("lie in the middle of the solid's openings on flat faces (second route: the ellipses' centres)", () => {
    const piece = drilled(square, [0, 3, 400], [0.8, 0.1, 0.5], { diameter: 5 });
    const solid = solidOf(piece);
    if (!solid.ok) throw new Error("solid");
    const centres = solid.value.edges.flatMap((e) => (e.curve.kind === "conic" ? [e.curve.centre] : []));
    for (const { distance } of marksOf(piece)) {
      const p = distance.to.point;
      const near = Math.min(...centres.map((c) => Math.hypot(c[0] - p[0], c[1] - p[1], c[2] - p[2])));
      expect(near).toBeLessThan(1e-10);
    }
  });

  it("count from the end that a tape can hook, one mark where one wall is drilled", () => {
    const post = member({ id: "P", section: square, role: "post", from: [0, 0, 0], to: [0, 0, 900] });
    const joints = [
      { kind: "cut", id: "k", end: { member: "P", end: 0 }, cut: { type: "plane", normal: [0.3, 0, 1] } },
      {
        kind: "bore",
        id: "c1",
        member: "P",
        at: [0, 0, 400],
        direction: [1, 0, 0],
        diameter: 8,
        through: "first",
      },
    ] as const;
    const [piece] = solveJoints({ members: [post], joints }).pieces;
    expect(piece!.hook.end).toBe(1);
    const marks = marksOf(piece!);
    expect(marks).toHaveLength(1);
    expect(marks[0]!.distance.value).toBeCloseTo(500, 10);
    expect(marks[0]!.distance.from.name).toMatch(/TOP end$/);
  });

  it("are in the records, as plain data", () => {
    const piece = drilled(square, [0, 0, 400], [1, 0, 0]);
    const [record] = pieceRecords([piece], new Map(), { generator: "g", job: "Kiln room stair" }).pieces;
    expect(record!.holes[0]!.marks.map((m) => m.face)).toEqual(["DOWNHILL", "UPHILL"]);
    expect(structuredClone(piece)).toEqual(piece);
    expect(record!.holes[0]!.marks).toEqual(marksOf(piece));
  });
});
