/**
 * How much of a saddle curve is used when two cylinders are asked for the whole of their meeting.
 *
 * With h the distance across the header, δ the angle round the branch and ψ the one round the header, h = e + r cos δ =
 * R cos ψ. A branch that pierces its header meets it at every δ. Otherwise the two meet in one loop that turns back where
 * δ stops; there ψ is the good parameter. As r sin δ dδ = R sin ψ dψ, the branch's angle is the better one where
 * r |sin δ| ≤ R |sin ψ|, and that is the half plane 2eh ≤ R² − r² + e²: one value of h parts the two, whatever the root.
 *
 * @packageDocumentation
 */
import type { CylinderSurface } from "../surface.js";
import { type SaddleCurve, saddleBetween, saddleNumbers } from "./saddle.js";

/** Parameters of a curve, radians; `closed` when the end is the start again. */
export interface ParameterRange {
  readonly from: number;
  readonly to: number;
  readonly closed: boolean;
}

/** Where φ is the better parameter of the two cylinders' angles; null where nothing of the curve is left. */
export function saddleRange(c: SaddleCurve): ParameterRange | null {
  const { a0, b0, radius: r, phiN } = c;
  const whole = (from: number, closed: boolean): ParameterRange => ({ from, to: from + 2 * Math.PI, closed });
  // Where they touch the curve crosses itself: an end of the stretch.
  if (a0 === 0 && b0 >= 0) return whole(phiN, false);
  if (b0 === 0 && a0 >= 0) return whole(phiN - Math.PI, false);
  if (a0 > 0 && b0 > 0) return whole(-Math.PI, true);
  const [wider, e] = [(a0 + b0) / 2, (b0 - a0) / 2];
  const cosine = (wider * (wider + 2 * r) - e * e) / (2 * e * r);
  const turn = Math.acos(Math.min(1, Math.max(-1, cosine)));
  const [from, to] = e > 0 ? [phiN + turn, phiN + 2 * Math.PI - turn] : [phiN - turn, phiN + turn];
  return to > from ? { from, to, closed: false } : null;
}

/** Every saddle in which two cylinders that are not parallel meet, as far as `saddleRange` of each reaches. */
export function saddlesBetween(a: CylinderSurface, b: CylinderSurface): SaddleCurve[] {
  const pierces = (branch: CylinderSurface, header: CylinderSurface): boolean =>
    Math.abs(saddleNumbers(branch, header).hc) + branch.radius <= header.radius;
  const ways = pierces(a, b)
    ? [[a, b] as const]
    : pierces(b, a)
      ? [[b, a] as const]
      : ([
          [a, b],
          [b, a],
        ] as const);
  return ways.flatMap(([branch, header]) => {
    const { phiN, hc } = saddleNumbers(branch, header);
    return ([1, -1] as const).flatMap((root) => {
      const curve = saddleBetween(branch, header, root, hc > 0 ? phiN + Math.PI : phiN);
      return curve.kind === "saddle" ? [curve] : [];
    });
  });
}
