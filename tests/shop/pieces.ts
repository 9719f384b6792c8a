/**
 * Pieces written down by hand from the pottery studio's mezzanine stair (invented), for tests of the papers alone.
 *
 * The rake rail: plumb over the first nosing, mitred to the level rail at the break; and a round post under it. Only the
 * planes and frames are put in; what the papers say about long points, faces and depths is for the tests to check.
 */
import type { EndCut, MeasuredLength, Piece } from "../../src/joints/piece.js";
import type { EndExpression } from "../../src/kernel/end.js";
import type { Frame } from "../../src/kernel/frame.js";
import { circleLoop, reverseLoop } from "../../src/kernel/region.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import type { Section } from "../../src/members/section.js";

export const INCH = 25.4;
const RAD = Math.PI / 180;

export function tube(od: number, wall: number, name: string): Section {
  return {
    name,
    shape: { kind: "round-tube", od, wall },
    region: {
      outer: circleLoop([0, 0], od / 2, "wall"),
      holes: [reverseLoop(circleLoop([0, 0], od / 2 - wall, "bore"))],
    },
    source: "as given",
  };
}

/** A rail's frame in the guard's plane, running uphill at a pitch: x to the left, y up. */
export function railFrame(pitch: number): Frame {
  const [s, c] = [Math.sin(pitch * RAD), Math.cos(pitch * RAD)];
  return { origin: [-3238.5, 0, -1272.6], x: [0, 1, 0], y: [-s, 0, c], z: [c, 0, s] };
}

/** A plumb post's frame with y uphill. */
export const POST_FRAME: Frame = { origin: [-3162.3, 0, -2295.5], x: [0, -1, 0], y: [1, 0, 0], z: [0, 0, 1] };

export function plane(point: Vec3, normal: Vec3): EndExpression {
  return { kind: "plane", point, normal, source: { joint: "j", onto: "" } };
}

export function span(value: number, from: string, to: string): MeasuredLength {
  return { value, from: { name: from, point: [0, 0, 0] }, to: { name: to, point: [0, 0, value] } };
}

export function cut(end: 0 | 1, kind: EndCut["kind"], rest: Partial<EndCut> = {}): EndCut {
  return { end, kind, joint: "j", onto: [], arris: [], cope: [], fit: { step: 0, gap: 0 }, ...rest };
}

export function piece(
  rest: Partial<Piece> & Pick<Piece, "id" | "frame" | "section" | "ends" | "cuts">,
): Piece {
  return {
    mark: rest.id,
    kind: "member",
    role: "top-rail",
    material: "mild steel",
    bores: [],
    lengths: {
      blank: span(1000, "farthest point of one end", "farthest point of the other"),
      longPoint: span(990, "long point a", "long point b"),
      shortPoint: span(980, "short point a", "short point b"),
      squareCut: span(1000, "farthest point of one end", "farthest point of the other"),
    },
    shopPose: { faceUp: "top", towards: [0, 0, 1] },
    hook: { end: 0, name: "long point" },
    dependsOn: [],
    status: "ok",
    identity: rest.id,
    ...rest,
  };
}

const RAIL = tube(1.9 * INCH, 0.145 * INCH, "round 1.900 x 0.145");

/** The rake rail: a plumb plane at end 0, the miter plane (half the pitch from plumb, leaning uphill) at end 1. */
export function rakeRail(pitch: number): Piece {
  const [s, c] = [Math.sin(pitch * RAD), Math.cos(pitch * RAD)];
  const half = (pitch * RAD) / 2;
  return piece({
    id: "R1",
    frame: railFrame(pitch),
    section: RAIL,
    ends: [
      // A plumb plane square to the layout's X; and the plane square to the bisector of the rake and the level.
      plane([0, 0, 0], [0, -s, c]),
      plane([0, 0, 3950], [0, -Math.sin(half), Math.cos(half)]),
    ],
    cuts: [
      cut(0, "plane", {
        saw: { miter: 0, bevel: -pitch, fromSquare: pitch, fromLength: 90 - pitch, clock: -90 },
      }),
      cut(1, "miter", {
        onto: ["R2"],
        saw: { miter: 0, bevel: pitch / 2, fromSquare: pitch / 2, fromLength: 90 - pitch / 2, clock: 90 },
      }),
    ],
  });
}

/** A round post under the rake rail: square foot, saddle on R1. The toe of its saddle is on the uphill face. */
export function roundPost(id: string, angle: number): Piece {
  return piece({
    id,
    frame: POST_FRAME,
    role: "post",
    section: tube(1.9 * INCH, 0.145 * INCH, "post 1.900 x 0.145"),
    ends: [
      plane([0, 0, 0], [0, 0, -1]),
      {
        kind: "hit",
        skin: { frame: railFrame(90 - angle), loop: circleLoop([0, 0], 0.95 * INCH, "wall") },
        source: { joint: "j", onto: "R1" },
      },
    ],
    cuts: [
      cut(0, "square", { onto: ["base plate"] }),
      cut(1, "cope", { onto: ["R1"], cope: [{ onto: "R1", angle, offset: 0, gap: 0, toe: [0, 1, 0] }] }),
    ],
    identity: "post",
  });
}
