/**
 * Saddle curves: where the surface of one cylinder, the branch, meets another cylinder, the header.
 *
 * The parameter is the angle φ round the branch. A fibre at φ starts at o + ρ(cos φ·x + sin φ·y) and meets the header at
 *
 *   s(φ) = s₀ + sa·cos φ + sb·sin φ + k·√(A·B),   A = R − h = a₀ + 2ρ sin²(δ/2),   B = R + h = b₀ + 2ρ cos²(δ/2)
 *
 * with h the fibre's distance across the header, δ = φ − φn the angle from where h is greatest, a₀ = R − hc − ρ and
 * b₀ = R + hc − ρ. Written so, nothing cancels where the tubes are of equal size. Where a bracket a₀ or b₀ is zero its
 * root is taken with a sign (sin or cos of δ/2), smooth on each side of the kink; no edge spans a kink.
 *
 * @packageDocumentation
 */
import type { Frame } from "../frame.js";
import type { CylinderSurface } from "../surface.js";
import { BRACKET_MM } from "../tolerance.js";
import { addScaled, cross, dot, length, scale, sub, type Vec3 } from "../vec.js";
import { type ConicCurve, conicFromConjugates } from "./conic.js";
import type { CurveDerivatives } from "./derivatives.js";

/** A saddle curve; all data plain numbers, millimetres, parameter φ in radians (dimensionless). */
export interface SaddleCurve {
  readonly kind: "saddle";
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly axis: Vec3;
  readonly radius: number;
  readonly phiN: number;
  readonly a0: number;
  readonly b0: number;
  readonly s0: number;
  readonly sa: number;
  readonly sb: number;
  readonly k: number;
  /** Signs of sin(δ/2) and cos(δ/2) on the stretch the curve is used on; they matter only where a bracket is zero. */
  readonly signA: 1 | -1;
  readonly signB: 1 | -1;
}

/** How a branch cylinder stands to a header: the numbers of the saddle between them. */
export interface SaddleNumbers {
  readonly sine: number;
  readonly n: Vec3;
  readonly m: Vec3;
  readonly hc: number;
  readonly phiN: number;
}

/**
 * n across the header (h grows along it), m along the branch square to the header, sine of the angle between the axes.
 *
 * @param branch - branch cylinder; its frame's z is the direction in which distances grow
 * @param header - header cylinder; must not be parallel to the branch
 */
export function saddleNumbers(branch: CylinderSurface, header: CylinderSurface): SaddleNumbers {
  const d = branch.frame.z;
  const a = header.frame.z;
  const ad = cross(a, d);
  const sine = length(ad);
  const n = scale(ad, 1 / sine);
  const m = scale(addScaled(d, a, -dot(a, d)), 1 / sine);
  const hc = dot(sub(branch.frame.origin, header.frame.origin), n);
  return { sine, n, m, hc, phiN: Math.atan2(dot(n, branch.frame.y), dot(n, branch.frame.x)) };
}

/**
 * The curve in which a branch cylinder meets a header.
 *
 * @param root - −1 for the near side of the header seen along the branch's z, +1 for the far side
 * @param phiMid - a parameter inside the stretch that will be used; picks the side of a kink
 * @returns a saddle, or one exact ellipse where the cylinders are equal and their axes meet
 */
export function saddleBetween(
  branch: CylinderSurface,
  header: CylinderSurface,
  root: 1 | -1,
  phiMid: number,
): SaddleCurve | ConicCurve {
  const { frame, radius: r } = branch;
  const { sine, m, hc, phiN } = saddleNumbers(branch, header);
  return saddleOf(
    frame,
    r,
    {
      phiN,
      a0: header.radius - hc - r,
      b0: header.radius + hc - r,
      s0: -dot(sub(frame.origin, header.frame.origin), m) / sine,
      sa: (-r * dot(frame.x, m)) / sine,
      sb: (-r * dot(frame.y, m)) / sine,
      k: root / sine,
    },
    phiMid,
  );
}

/**
 * The same from the numbers of s(φ) = s₀ + sa·cos φ + sb·sin φ + k·√(A·B), for who has them already.
 *
 * @param frame - of the branch cylinder
 * @param radius - of the branch cylinder, millimetres
 */
export function saddleOf(
  frame: Frame,
  radius: number,
  numbers: Pick<SaddleCurve, "phiN" | "a0" | "b0" | "s0" | "sa" | "sb" | "k">,
  phiMid: number,
): SaddleCurve | ConicCurve {
  const { phiN, s0, sa, sb, k } = numbers;
  const a0 = Math.abs(numbers.a0) < BRACKET_MM ? 0 : numbers.a0;
  const b0 = Math.abs(numbers.b0) < BRACKET_MM ? 0 : numbers.b0;
  const half = (phiMid - phiN) / 2;
  const signA = Math.sin(half) < 0 ? -1 : 1;
  const signB = Math.cos(half) < 0 ? -1 : 1;
  if (a0 === 0 && b0 === 0) {
    // √(A·B) = 2ρ|sin(δ/2) cos(δ/2)| = ±ρ sin δ: s is a pure sine, the curve an ellipse.
    const q = k * radius * signA * signB;
    const sCos = sa - q * Math.sin(phiN);
    const sSin = sb + q * Math.cos(phiN);
    return conicFromConjugates(
      addScaled(frame.origin, frame.z, s0),
      addScaled(scale(frame.x, radius), frame.z, sCos),
      addScaled(scale(frame.y, radius), frame.z, sSin),
    );
  }
  return {
    kind: "saddle",
    origin: frame.origin,
    x: frame.x,
    y: frame.y,
    axis: frame.z,
    radius,
    phiN,
    a0,
    b0,
    s0,
    sa,
    sb,
    k,
    signA,
    signB,
  };
}

/** √(R − h) and its first two derivatives in φ. */
function rootA(c: SaddleCurve, half: number): readonly [number, number, number] {
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  if (c.a0 === 0) {
    const f = c.signA * Math.sqrt(2 * c.radius);
    return [f * sin, (f * cos) / 2, (-f * sin) / 4];
  }
  const f = Math.sqrt(Math.max(0, c.a0 + 2 * c.radius * sin * sin));
  const g1 = c.radius * 2 * sin * cos;
  const g2 = c.radius * (cos * cos - sin * sin);
  return [f, g1 / (2 * f), g2 / (2 * f) - (g1 * g1) / (4 * f * f * f)];
}

/** √(R + h) and its first two derivatives in φ. */
function rootB(c: SaddleCurve, half: number): readonly [number, number, number] {
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  if (c.b0 === 0) {
    const f = c.signB * Math.sqrt(2 * c.radius);
    return [f * cos, (-f * sin) / 2, (-f * cos) / 4];
  }
  const f = Math.sqrt(Math.max(0, c.b0 + 2 * c.radius * cos * cos));
  const g1 = -c.radius * 2 * sin * cos;
  const g2 = -c.radius * (cos * cos - sin * sin);
  return [f, g1 / (2 * f), g2 / (2 * f) - (g1 * g1) / (4 * f * f * f)];
}

/** Distance s(φ) along the branch. */
export function saddleHeight(c: SaddleCurve, phi: number): number {
  const half = (phi - c.phiN) / 2;
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  const root = Math.sqrt(
    Math.max(0, c.a0 + 2 * c.radius * sin * sin) * Math.max(0, c.b0 + 2 * c.radius * cos * cos),
  );
  return c.s0 + c.sa * Math.cos(phi) + c.sb * Math.sin(phi) + c.k * root;
}

/** The point at φ. */
export function saddleAt(c: SaddleCurve, phi: number): Vec3 {
  const s = saddleHeight(c, phi);
  const u = c.radius * Math.cos(phi);
  const v = c.radius * Math.sin(phi);
  const { origin: o, x, y, axis: d } = c;
  return [
    o[0] + u * x[0] + v * y[0] + s * d[0],
    o[1] + u * x[1] + v * y[1] + s * d[1],
    o[2] + u * x[2] + v * y[2] + s * d[2],
  ];
}

/** P, P′, P″ of a saddle curve. */
export function saddleDerivatives(c: SaddleCurve, phi: number): CurveDerivatives {
  const half = (phi - c.phiN) / 2;
  const [fa, fa1, fa2] = rootA(c, half);
  const [fb, fb1, fb2] = rootB(c, half);
  const cos = Math.cos(phi);
  const sin = Math.sin(phi);
  const s1 = -c.sa * sin + c.sb * cos + c.k * (fa1 * fb + fa * fb1);
  const s2 = -c.sa * cos - c.sb * sin + c.k * (fa2 * fb + 2 * fa1 * fb1 + fa * fb2);
  const turn = (cu: number, cv: number, cs: number): Vec3 =>
    addScaled(addScaled(scale(c.x, cu * c.radius), c.y, cv * c.radius), c.axis, cs);
  return { p: saddleAt(c, phi), d1: turn(-sin, cos, s1), d2: turn(-cos, -sin, s2) };
}

/** The parameter in (−π, π] of a point on (or near) the branch cylinder. */
export function saddleParameter(c: SaddleCurve, p: Vec3): number {
  const w = sub(p, c.origin);
  return Math.atan2(dot(w, c.y), dot(w, c.x));
}
