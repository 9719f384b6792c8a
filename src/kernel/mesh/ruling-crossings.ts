/**
 * Where a curve on a cylinder crosses its rulings, in closed form.
 *
 * Any conic on a cylinder, and a saddle on its own branch, turn about the axis in step with their parameter. A saddle on
 * its header does not: there each ruling has one distance h across, and the branch's fibres have it at two angles,
 * sin²(δ/2) = (R − h − a₀)/2ρ (see `curve/saddle.ts`). Half angles keep full accuracy beside a silhouette, where R ± h
 * vanishes.
 *
 * @packageDocumentation
 */
import type { ConicCurve } from "../curve/conic.js";
import type { SaddleCurve } from "../curve/saddle.js";
import type { CylinderSurface } from "../surface.js";
import { PARALLEL_SINE } from "../tolerance.js";
import { cross, dot, length } from "../vec.js";

/** How the angle of a curve about a cylinder's axis depends on the parameter; angles in radians from the frame's x. */
export type Track =
  | { readonly kind: "even"; readonly sign: 1 | -1; readonly offset: number }
  | {
      readonly kind: "across";
      readonly curve: SaddleCurve;
      /** Angle about the header = offset + sign·ψ, with sin ψ = h/R and |ψ| ≤ π/2. */
      readonly sign: 1 | -1;
      readonly offset: number;
    };

/** The track of a curve that lies on the cylinder. */
export function trackOn(curve: ConicCurve | SaddleCurve, cylinder: CylinderSurface): Track {
  const { x, y, z } = cylinder.frame;
  if (curve.kind === "conic") {
    const { major, minor } = curve;
    return {
      kind: "even",
      sign: dot(cross(major, minor), z) < 0 ? -1 : 1,
      offset: Math.atan2(dot(major, y), dot(major, x)),
    };
  }
  const n = cross(z, curve.axis);
  if (length(n) < PARALLEL_SINE) {
    return {
      kind: "even",
      sign: dot(curve.axis, z) < 0 ? -1 : 1,
      offset: Math.atan2(dot(curve.x, y), dot(curve.x, x)),
    };
  }
  // (m, n, z) is right-handed, m the branch's direction square to the header: ψ counts from m, or from −m backwards.
  const toM = Math.atan2(dot(n, y), dot(n, x)) - Math.PI / 2;
  return curve.k > 0
    ? { kind: "across", curve, sign: 1, offset: toM }
    : { kind: "across", curve, sign: -1, offset: toM + Math.PI };
}

/** The angle about the cylinder's axis at parameter `t`, continuous along the curve. */
export function angleOn(track: Track, t: number): number {
  if (track.kind === "even") return track.offset + track.sign * t;
  const { phiN, radius, a0, b0 } = track.curve;
  const half = (t - phiN) / 2;
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  return track.offset + track.sign * acrossAngle(a0 + 2 * radius * sin * sin, b0 + 2 * radius * cos * cos);
}

/** ψ from R − h and R + h. */
function acrossAngle(a: number, b: number): number {
  return Math.PI / 2 - 2 * Math.atan2(Math.sqrt(Math.max(0, a)), Math.sqrt(Math.max(0, b)));
}

/** Parameters in ascending order, and the number of the ruling that is crossed at each. */
export interface Crossings {
  count: number;
  readonly t: number[];
  readonly ruling: number[];
}

/**
 * Every crossing strictly between two parameters; where a curve turns back on a ruling it is listed twice.
 *
 * @param step - angle between two rulings, radians
 * @param lo - least parameter; `hi` greatest
 * @param out - receives them; what it held is dropped
 */
export function crossRulings(track: Track, step: number, lo: number, hi: number, out: Crossings): void {
  out.count = 0;
  if (track.kind === "across") {
    crossAcross(track, step, lo, hi, out);
    return;
  }
  const { sign, offset } = track;
  const end = (offset + sign * hi) / step;
  let g = sign * (Math.floor((sign * (offset + sign * lo)) / step) + 1);
  for (; sign * g < sign * end; g += sign) {
    addCrossing(out, sign * (g * step - offset), g);
  }
}

function addCrossing(out: Crossings, t: number, ruling: number): void {
  out.t[out.count] = t;
  out.ruling[out.count++] = ruling;
}

function crossAcross(
  { curve, sign, offset }: Extract<Track, { kind: "across" }>,
  step: number,
  lo: number,
  hi: number,
  out: Crossings,
): void {
  const { phiN, radius, a0, b0 } = curve;
  const across = (a0 + b0 + 2 * radius) / 2;
  const ends = [acrossAngle(a0 + 2 * radius, b0), acrossAngle(a0, b0 + 2 * radius)] as const;
  const [from, to] = ends.map((psi) => (offset + sign * psi) / step) as [number, number];
  // Rulings in the order of growing ψ, and how far from the crown n their two crossings are.
  const rulings: number[] = [];
  const deltas: number[] = [];
  for (let g = sign * Math.ceil(sign * from); sign * g <= sign * to; g += sign) {
    const quarter = (Math.PI / 2 - sign * (g * step - offset)) / 2;
    const sin = Math.sin(quarter);
    const cos = Math.cos(quarter);
    const far = Math.max(0, 2 * across * sin * sin - a0);
    const near = Math.max(0, 2 * across * cos * cos - b0);
    rulings.push(g);
    deltas.push(2 * Math.atan2(Math.sqrt(far), Math.sqrt(near)));
  }
  const add = (t: number, i: number): void => {
    if (t > lo && t < hi) addCrossing(out, t, rulings[i] as number);
  };
  const turn = 2 * Math.PI;
  const last = Math.floor((hi - phiN + Math.PI) / turn);
  for (let k = Math.floor((lo - phiN + Math.PI) / turn); k <= last; k++) {
    const crown = phiN + turn * k;
    for (let i = 0; i < rulings.length; i++) add(crown - (deltas[i] as number), i);
    for (let i = rulings.length - 1; i >= 0; i--) add(crown + (deltas[i] as number), i);
  }
}
