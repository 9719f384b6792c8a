/**
 * How high is a raking rail above the tread, and how high must a stop be that carries it?
 *
 * Rail top above the tread = h + p·tan θ for a place p behind the nosing; the underside is d/cos θ lower, plumb. A flat
 * stop under a raking rail carries it at its downhill corner (trade geometry). Millimetres, degrees, x from the top
 * nosing.
 *
 * @packageDocumentation
 */
import { cosDegrees, tanDegrees } from "./angles.js";

/**
 * Plumb from a tread to the top and the underside of the raking rail.
 *
 * @param input - height above the nosing line, place behind that tread's nosing, pitch, depth of the rail (default 0)
 * @example
 * ```ts
 * railAboveTread({ height: 36, behindNosing: 3, pitch: 35.537677791974, depth: 1.5 }).top; // 38.142…
 * ```
 */
export function railAboveTread(input: {
  readonly height: number;
  readonly behindNosing: number;
  readonly pitch: number;
  readonly depth?: number;
}): { readonly top: number; readonly underside: number } {
  const top = input.height + input.behindNosing * tanDegrees(input.pitch);
  return { top, underside: top - (input.depth ?? 0) / cosDegrees(input.pitch) };
}

/**
 * Height of a flat stop that carries a raking rail, above the tread it stands on.
 *
 * @param input - rail height and depth, pitch, both ends of the stop (x, mm) and the tread's height (z, mm)
 * @returns `top` above the tread: where the rail touches the downhill corner; `undersideUphill`: the rail at the other
 * @example
 * ```ts
 * stopHeight({ height: 36, depth: 1.5, pitch: 35.537677791974, from: -26, to: -24.5, treadZ: -22.5 }).top; // 38.085…
 * ```
 */
export function stopHeight(input: {
  readonly height: number;
  readonly depth: number;
  readonly pitch: number;
  readonly from: number;
  readonly to: number;
  readonly treadZ: number;
}): { readonly top: number; readonly undersideUphill: number } {
  const { height, depth, pitch, from, to, treadZ } = input;
  const undersideAt = (x: number) => height - depth / cosDegrees(pitch) + x * tanDegrees(pitch) - treadZ;
  return {
    top: Math.min(undersideAt(from), undersideAt(to)),
    undersideUphill: undersideAt(Math.max(from, to)),
  };
}
