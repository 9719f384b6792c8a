/**
 * Where a piece is marked for drilling: on every face that a bore opens outwards, the place of its axis.
 *
 * The axis pierces the outer surface in closed form (see `bore-stance`). The place is said as the shop sets it out: along the
 * piece from the end the tape hooks, off the middle of its face or round the tube, and how the drill leans there.
 * Millimetres and degrees; piece's frame.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type BoreWall, type Opening, partOf, sideOf, tauOf } from "../kernel/bore.js";
import { splitsClearOf } from "../kernel/bore-splits.js";
import { axisPoint } from "../kernel/bore-stance.js";
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { CompiledEnd } from "../kernel/end-compile.js";
import { planBores } from "../kernel/plan-bores.js";
import { arcFraction, type Region, type Segment, segmentLength, tangentOn } from "../kernel/region.js";
import { PARALLEL_SINE, ROUNDING_MM } from "../kernel/tolerance.js";
import { negate, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { atan2Degrees } from "./degrees.js";
import type { BoreMark, MeasuredLength, NamedPoint, PieceBore } from "./piece.js";
import { faceWord, sightOf } from "./words.js";

/** Where the axis of a bore pierces the outside of its member. */
interface Pierced {
  readonly bore: string;
  readonly point: Vec3;
  readonly side: Segment;
  /** Of the drill, going in from there. */
  readonly into: Vec3;
}

/** Where the bores of a member open on its outside, in the order each goes through it, and what cannot be drilled. */
export interface Drilled {
  readonly pierced: readonly Pierced[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Plans the bores of a member between its ends; nothing where an end is missing. */
export function drilledMember(
  member: Member,
  bores: readonly Bore[],
  low: CompiledEnd | null,
  high: CompiledEnd | null,
): Drilled {
  const section = splitsClearOf(member.section.region, bores);
  if (!low || !high) return { pierced: [], diagnostics: [] };
  const { walls, diagnostics } = planBores(section, bores, low, high);
  const pierced = walls.flatMap((wall) =>
    [wall.entry, wall.exit]
      .filter((opening) => opening.loop === 0)
      .map((opening) => piercedAt(section, wall, opening)),
  );
  const named = diagnostics.map((d) => ({
    ...d,
    members: [member.id],
    message: `${member.id}: ${d.message}`,
  }));
  return { pierced, diagnostics: named };
}

function piercedAt(section: Region, { stance, bore }: BoreWall, opening: Opening): Pierced {
  const { z } = stance.surface.frame;
  return {
    bore,
    point: axisPoint(stance, tauOf(section, opening, stance, stance.h)),
    side: sideOf(section, opening.loop, partOf(opening, stance.h).segment),
    into: opening.into ? z : negate(z),
  };
}

/**
 * Bores with their marks.
 *
 * @param hook - the end the tape hooks
 * @param blank - farthest point to farthest point of the piece
 */
export function boreMarks(
  bores: readonly Bore[],
  { pierced }: Drilled,
  member: Member,
  hook: 0 | 1,
  blank: MeasuredLength,
): PieceBore[] {
  const from = hook === 0 ? blank.from : blank.to;
  return bores.map((bore) => {
    const own = pierced.filter((p) => p.bore === bore.id);
    return { ...bore, marks: own.map((place) => markOf(member, place, hook, from)) };
  });
}

function markOf(
  member: Member,
  { bore, point, side, into: [x, y, z] }: Pierced,
  hook: 0 | 1,
  from: NamedPoint,
): BoreMark {
  const { shape } = member.section;
  const sight = sightOf(member);
  const share = shareOf(side, point);
  const [du, dv] = tangentOn(side, share);
  const size = Math.hypot(du, dv);
  const [tu, tv] = [du / size, dv / size];
  const face = faceWord(sight, tv, -tu);
  // Outside lies to the right of the outline. The drill is looked at going in from there, on either face.
  const [square, across, away] = [y * tu - x * tv, x * tu + y * tv, hook === 0 ? z : -z];
  const round = shape.kind === "round-tube" || shape.kind === "round-bar";
  const towards = (k: number): string => faceWord(sight, Math.sign(k) * tu, Math.sign(k) * tv);
  const off = (share - 0.5) * segmentLength(side);
  return {
    side: side.label ?? "",
    face,
    distance: {
      value: hook === 0 ? point[2] - from.point[2] : from.point[2] - point[2],
      from,
      to: { name: `hole ${bore}, ${face} face`, point },
    },
    ...(round
      ? { angle: (atan2Degrees(point[1], point[0]) + 360) % 360 }
      : { offset: { value: Math.abs(off), towards: Math.abs(off) > ROUNDING_MM ? towards(off) : "" } }),
    fromSquare: atan2Degrees(Math.hypot(across, z), square),
    along: atan2Degrees(away, square),
    across: {
      value: atan2Degrees(Math.abs(across), square),
      towards: Math.abs(across) > PARALLEL_SINE ? towards(across) : "",
    },
  };
}

/** How far along a side (0 to 1) a point of it lies. */
function shareOf(side: Segment, [u, v]: Vec3): number {
  if (side.kind === "arc") return arcFraction(side, Math.atan2(v - side.centre[1], u - side.centre[0]));
  const [du, dv] = tangentOn(side, 0);
  return ((u - side.from[0]) * du + (v - side.from[1]) * dv) / (du * du + dv * dv);
}
