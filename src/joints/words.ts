/**
 * Which end, which face: turns directions of a piece into the words the shop uses.
 *
 * Method: the direction is carried to the layout and named by its largest part there. Members steeper than 60° have a
 * FOOT and a TOP end and their faces are UPHILL, DOWNHILL, LEFT, RIGHT; all others have ends named along the stair and
 * faces TOP, BOTTOM and the two sides. LEFT and RIGHT are seen looking uphill.
 * Uphill is the layout's X, or the piece's own heading where the guard turns in plan (see `sightOf`); section directions in
 * the piece's frame.
 *
 * @packageDocumentation
 */
import { directionToParent, type Frame } from "../kernel/frame.js";
import type { Vec3 } from "../kernel/vec.js";
import { cosDegrees, sinDegrees } from "./degrees.js";

/** sin 60°: members steeper than this are named like posts. */
const STEEP = Math.sqrt(3) / 2;
/** tan 22.5°: a direction nearer than this to an axis of the section is named by that axis alone. */
const EIGHTH = Math.SQRT2 - 1;

/** A member or a piece, as far as words need it. */
export interface Sighted {
  readonly frame: Frame;
  /** Degrees from the layout's X, + to the left: the way that is uphill for it. Default 0. */
  readonly heading?: number;
}

/**
 * The frame that words are taken from: as it would lie if its uphill were the layout's X.
 *
 * @example
 * endWord(sightOf({ frame, heading: 90 }), 1); // "UPHILL" for a rail along Y
 */
export function sightOf({ frame, heading = 0 }: Sighted): Frame {
  if (heading === 0) return frame;
  const [c, s] = [cosDegrees(heading), sinDegrees(heading)];
  const turned = ([x, y, z]: Vec3): Vec3 => [c * x + s * y, c * y - s * x, z];
  return { origin: turned(frame.origin), x: turned(frame.x), y: turned(frame.y), z: turned(frame.z) };
}

/** True for members that stand rather than lie: their axis is within 30° of plumb. */
export function isSteep(frame: Frame): boolean {
  return Math.abs(frame.z[2]) > STEEP;
}

/** The word for a level direction of the layout: UPHILL, DOWNHILL, LEFT or RIGHT. */
function levelWord(d: Vec3): string {
  if (Math.abs(d[0]) >= Math.abs(d[1])) return d[0] > 0 ? "UPHILL" : "DOWNHILL";
  return d[1] > 0 ? "LEFT" : "RIGHT";
}

/**
 * The name of an end of a piece.
 *
 * @param frame - the piece's frame in the layout
 * @param end - 0 at the frame's origin, 1 along its z
 * @returns `FOOT` or `TOP` for a steep piece, else `DOWNHILL`, `UPHILL`, `LEFT` or `RIGHT`
 * @example
 * endWord({ origin: [0, 0, 0], x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] }, 1); // "TOP"
 */
export function endWord(frame: Frame, end: 0 | 1): string {
  const sign = end === 1 ? 1 : -1;
  const out: Vec3 = [sign * frame.z[0], sign * frame.z[1], sign * frame.z[2]];
  if (isSteep(frame)) return out[2] > 0 ? "TOP" : "FOOT";
  return levelWord(out);
}

/**
 * The name of the face a direction of the section points at.
 *
 * @param frame - the piece's frame in the layout
 * @param u - along the frame's x, any scale
 * @param v - along the frame's y, same scale
 * @returns one word, or two joined by a hyphen when the direction lies between two faces, e.g. `TOP-LEFT`
 * @example
 * faceWord({ origin: [0, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] }, 0, -1); // "BOTTOM"
 */
export function faceWord(frame: Frame, u: number, v: number): string {
  const d = directionToParent(frame, [u, v, 0]);
  if (isSteep(frame)) return between(d[0], "UPHILL", "DOWNHILL", d[1], "LEFT", "RIGHT");
  const slope = Math.hypot(frame.z[0], frame.z[1]);
  const up = d[2] / slope;
  // Level direction across the member, to the left of one that runs uphill.
  const across: Vec3 = [-frame.z[1] / slope, frame.z[0] / slope, 0];
  const side = d[0] * across[0] + d[1] * across[1];
  const [plus, minus] = [levelWord(across), levelWord([-across[0], -across[1], 0])];
  return between(up, "TOP", "BOTTOM", side, plus, minus);
}

function between(a: number, aPlus: string, aMinus: string, b: number, bPlus: string, bMinus: string): string {
  const first = a > 0 ? aPlus : aMinus;
  const second = b > 0 ? bPlus : bMinus;
  if (Math.abs(b) <= EIGHTH * Math.abs(a)) return first;
  if (Math.abs(a) <= EIGHTH * Math.abs(b)) return second;
  return `${first}-${second}`;
}
