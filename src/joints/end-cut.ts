/**
 * The numbers of one end as the shop reads them.
 *
 * @packageDocumentation
 */

import { type CompiledEnd, outAt, sheetAt } from "../kernel/end-compile.js";
import { directionToLocal, pointToLocal } from "../kernel/frame.js";
import { type Loop, pointOn, type Region } from "../kernel/region.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Sheet } from "../kernel/sheet.js";
import { ROUNDING_MM, ROUNDING_SHARE } from "../kernel/tolerance.js";
import { addScaled, cross, dot, length, normalize, scale, type Vec2, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { type Decision, matesOf, partsOf } from "./decision.js";
import { atan2Degrees } from "./degrees.js";
import type { ArrisMark, CopeNumbers, EndCut, SawSetting } from "./piece.js";
import { outlinePlace } from "./wall.js";
import { faceWord, type Sighted, sightOf } from "./words.js";

/** The cut of one end. */
export function endCut(
  member: Member,
  end: 0 | 1,
  decision: Decision,
  compiled: CompiledEnd,
  members: ReadonlyMap<string, Member>,
): EndCut {
  const skin = decision.kind === "skin";
  const flat = compiled.root.kind === "leaf";
  const landing = compiled.sheets[sheetAt(compiled, 0, 0)];
  const saw = flat && landing ? sawSetting(landing, compiled.dir) : undefined;
  const single = compiled.root.kind === "hit" && landing?.surface.kind === "plane";
  const flatPart = single ? sawSetting(landing, compiled.dir) : undefined;
  const dihedral = skin ? dihedralRange(member.section.region, compiled) : undefined;
  return {
    end,
    kind: !flat ? "cope" : !skin && decision.miter ? "miter" : saw?.fromSquare === 0 ? "square" : "plane",
    joint: decision.joint,
    onto: matesOf(decision),
    ...(saw ? { saw } : {}),
    ...(flatPart ? { flatPart } : {}),
    arris: arrisMarks(member, compiled),
    cope:
      flat || !skin
        ? []
        : partsOf(decision).flatMap((part) =>
            part.kind === "skin"
              ? part.onto.flatMap((id) => copeNumbers(member, end, members.get(id) as Member, part.gap))
              : [],
          ),
    ...(dihedral ? { dihedral } : {}),
    fit: skin ? { step: 0, gap: decision.gap } : { step: decision.step, gap: 0 },
  };
}

/** Saw settings of a single flat cut: g is how fast the cut goes outwards towards left (u) and up (v). */
function sawSetting(sheet: Sheet, dir: 1 | -1): SawSetting {
  const gu = dir * sheet.a;
  const gv = dir * sheet.b;
  const snap = (x: number): number => (Math.abs(x) < ROUNDING_SHARE ? 0 : x);
  const [u, v] = [snap(gu), snap(gv)];
  const fromSquare = atan2Degrees(Math.hypot(u, v), 1);
  return {
    miter: atan2Degrees(u, 1),
    bevel: atan2Degrees(v, Math.hypot(1, u)),
    fromSquare,
    fromLength: 90 - fromSquare,
    clock: u === 0 && v === 0 ? 0 : atan2Degrees(v, u),
  };
}

/** Places of the section that a marker finds: corners of a rectangle, crowns of a round, middles of the sides. */
function marks(member: Member): Vec2[] {
  const { shape, region } = member.section;
  const across = extentAlong(region.outer, [1, 0]);
  const up = extentAlong(region.outer, [0, 1]);
  const crowns: Vec2[] = [
    [0, up.greatest],
    [across.greatest, 0],
    [0, up.least],
    [across.least, 0],
  ];
  if (shape.kind !== "rect-tube" && shape.kind !== "rect-bar") return crowns;
  return [...crowns, ...cornersOf(region.outer)];
}

/** Middle of each rounded corner, or the sharp corner itself. */
function cornersOf(outer: Loop): Vec2[] {
  const arcs = outer.filter((s) => s.kind === "arc");
  return arcs.length > 0 ? arcs.map((s) => pointOn(s, 0.5)) : outer.map((s) => pointOn(s, 0));
}

function arrisMarks(member: Member, end: CompiledEnd): ArrisMark[] {
  const axis = outAt(end, 0, 0);
  if (!Number.isFinite(axis)) return [];
  return marks(member).flatMap(([u, v]) => {
    const out = outAt(end, u, v);
    return Number.isFinite(out) ? [{ name: faceWord(sightOf(member), u, v), offset: out - axis }] : [];
  });
}

/** Angle, offset and toe of a branch on a round header; nothing for other headers. */
function copeNumbers(member: Member, end: 0 | 1, header: Member, gap: number): CopeNumbers[] {
  const { shape } = header.section;
  if (shape.kind !== "round-tube" && shape.kind !== "round-bar") return [];
  const d: Vec3 = end === 1 ? [0, 0, -1] : [0, 0, 1];
  let a = directionToLocal(member.frame, header.frame.z);
  if (dot(a, d) < -ROUNDING_SHARE) a = scale(a, -1);
  const sine = length(cross(a, d));
  const along = addScaled(a, d, -dot(a, d));
  const heel = length(along) === 0 ? along : normalize(along);
  const toe = scale(heel, -1);
  const side = cross(d, toe);
  const p = pointToLocal(member.frame, header.frame.origin);
  const offset = -dot(p, side);
  return [
    { onto: header.id, angle: atan2Degrees(sine, Math.max(0, dot(a, d))), offset: tidy(offset), gap, toe },
  ];
}

function tidy(x: number): number {
  return Math.abs(x) < ROUNDING_MM ? 0 : x;
}

const DIHEDRAL_STATIONS = 90;

/** Range of the angle between the branch's outside and the header's outside along the joint, degrees. */
function dihedralRange(region: Region, end: CompiledEnd): { least: number; greatest: number } | undefined {
  let [lowest, highest] = [1, -1];
  for (const segment of region.outer) {
    for (let k = 0; k <= DIHEDRAL_STATIONS; k++) {
      const { u, v, iu, iv } = outlinePlace(segment, k / DIHEDRAL_STATIONS);
      const sheet = end.sheets[sheetAt(end, u + ROUNDING_MM * iu, v + ROUNDING_MM * iv)];
      if (!sheet) continue;
      // The cut's outside is the header's inside: cos ψ = −N(header)·N(branch) = N(cut)·N(branch).
      const cos = -sheet.sense * normalShare(sheet, u, v, iu, iv);
      if (cos < lowest) lowest = cos;
      if (cos > highest) highest = cos;
    }
  }
  const degrees = (cos: number): number => (Math.acos(Math.min(1, Math.max(-1, cos))) * 180) / Math.PI;
  return highest >= lowest ? { least: degrees(highest), greatest: degrees(lowest) } : undefined;
}

/**
 * How much of the normal of a sheet's surface over (u, v) goes along the unit direction (du, dv) of the section. On a
 * cylinder the normal is (h·n + root·√(R² − h²)·m) / R, and the sheet's slopes are −k·root·m.
 */
function normalShare(
  { surface, a, b, round: r }: Sheet,
  u: number,
  v: number,
  du: number,
  dv: number,
): number {
  if (!r) return surface.frame.z[0] * du + surface.frame.z[1] * dv;
  const h = r.h0 + r.hu * u + r.hv * v;
  const rise = Math.sqrt(Math.max(0, (r.radius - h) * (r.radius + h)));
  return (h * (r.hu * du + r.hv * dv) - (rise / r.k) * (a * du + b * dv)) / r.radius;
}

/** Named side of a member that lies up on the bench, for papers that show it. */
export function sideTowardsEye(own: Sighted): { readonly faceUp: string; readonly towards: Vec3 } {
  return { faceUp: faceWord(sightOf(own), 0, 1), towards: own.frame.y };
}
