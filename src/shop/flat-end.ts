/**
 * The plane of an end that is flat, whatever decided it: a saw cut, a miter, or a rail that dies into one flat side of a
 * post.
 *
 * Method: the exact end is read round the section's outline; when one and the same plane closes it everywhere, the end is
 * that plane. Millimetres, degrees, the piece's frame.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { compileEnd, endAt } from "../kernel/end-compile.js";
import { directionToParent } from "../kernel/frame.js";
import { loopsOf, pointOn } from "../kernel/region.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Sheet } from "../kernel/sheet.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import { normalize, type Vec3 } from "../kernel/vec.js";

/** Places read on each side of the outline: a plane that stops short shows at a corner or on an arc. */
const PLACES = 8;

/** A flat end. */
export interface FlatEnd {
  /** Unit normal of the cut, pointing outwards along the axis. */
  readonly normal: Vec3;
  /** How it lies in the finished stair. */
  readonly lies: "square" | "plumb" | "level" | "sloping";
  /** True angle from a square cut. */
  readonly fromSquare: number;
  /** Direction of the long point in the section and how much longer it is there; absent when square. */
  readonly long?: { readonly u: number; readonly v: number; readonly minusShort: number };
}

/**
 * The flat end, or undefined when the end is shaped.
 *
 * @example flatEnd(piece, 0)?.lies; // "plumb"
 */
export function flatEnd(piece: Piece, end: 0 | 1): FlatEnd | undefined {
  const sheet = onlySheet(piece, end);
  if (sheet?.surface.kind !== "plane" || sheet.round) return undefined;
  const dir = end === 1 ? 1 : -1;
  // Outwards the end is dir·(c + a·u + b·v): its gradient points at the long point.
  const steepness = Math.hypot(sheet.a, sheet.b);
  const normal = normalize([-sheet.a * dir, -sheet.b * dir, dir]);
  const fromSquare = (Math.atan(steepness) * 180) / Math.PI;
  const lies = attitude(piece, normal);
  if (lies === "square") return { normal, lies, fromSquare: 0 };
  const [u, v] = [(dir * sheet.a) / steepness, (dir * sheet.b) / steepness];
  const reach = extentAlong(piece.section.region.outer, [u, v]);
  return { normal, lies, fromSquare, long: { u, v, minusShort: (reach.greatest - reach.least) * steepness } };
}

/** The sheet that closes the end all round, when there is only one. */
function onlySheet(piece: Piece, end: 0 | 1): Sheet | undefined {
  const compiled = compileEnd(piece.ends[end], end === 1 ? 1 : -1, piece.section.region).end;
  if (!compiled) return undefined;
  const used = new Set<number>();
  for (const segment of loopsOf(piece.section.region).flat()) {
    for (let k = 0; k <= PLACES; k++) {
      const [u, v] = pointOn(segment, k / PLACES);
      used.add(endAt(compiled, u, v).sheet);
    }
  }
  const [only, ...more] = used;
  return only === undefined || more.length > 0 ? undefined : compiled.sheets[only];
}

function attitude(piece: Piece, normal: Vec3): FlatEnd["lies"] {
  if (Math.hypot(normal[0], normal[1]) < PARALLEL_SINE) return "square";
  const d = directionToParent(piece.frame, normal);
  if (Math.abs(d[2]) < PARALLEL_SINE) return "plumb";
  return Math.hypot(d[0], d[1]) < PARALLEL_SINE ? "level" : "sloping";
}
