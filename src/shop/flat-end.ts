/**
 * The plane of an end that is flat, whatever decided it: a saw cut, a miter, or a rail that dies into one flat side of a
 * post.
 *
 * The solver writes every end that is flat as a plane. Millimetres, degrees, the piece's frame.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { directionToParent } from "../kernel/frame.js";
import { extentAlong } from "../kernel/region-extent.js";
import { planeSheet } from "../kernel/sheet.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import { normalize, type Vec3 } from "../kernel/vec.js";

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
  const contact = piece.ends[end];
  if (contact.kind !== "plane") return undefined;
  const dir = end === 1 ? 1 : -1;
  const sheet = planeSheet(contact.point, contact.normal, dir, contact.source);
  if (!sheet) return undefined;
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

function attitude(piece: Piece, normal: Vec3): FlatEnd["lies"] {
  if (Math.hypot(normal[0], normal[1]) < PARALLEL_SINE) return "square";
  const d = directionToParent(piece.frame, normal);
  if (Math.abs(d[2]) < PARALLEL_SINE) return "plumb";
  return Math.hypot(d[0], d[1]) < PARALLEL_SINE ? "level" : "sloping";
}
