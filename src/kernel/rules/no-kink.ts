/**
 * Rule: no edge spans a kink, so that whoever samples, fits or integrates it may take it as smooth.
 *
 * Lines and conics have none. A saddle has one where a zero bracket's root changes its sign (see `saddle`): the sign must
 * hold strictly inside the edge and be the one the curve was made with. Independently of that bookkeeping, the sharpest
 * turn of the evaluated points is followed down: at a kink it stays when the stretch shrinks, on a smooth curve it fades.
 *
 * @packageDocumentation
 */
import { evaluate } from "../curve/curve.js";
import type { SaddleCurve } from "../curve/saddle.js";
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Edge, Solid } from "../solid.js";
import { CORNER_MM, KINK_AT_END } from "../tolerance.js";
import { dot, normalize, sub } from "../vec.js";

/** Stretches in which the sharpest turn is looked for. */
const STRETCHES = 48;
/** Halvings of the sharpest stretch: down to 10⁻⁸ rad, below the rounding of the tightest smooth bend, √(1e-10/r). */
const HALVINGS = 24;
/** Radians. Turns below this do not disturb a fit or an integral at the scale the search ends at. */
const TURN = 0.02;

/**
 * Edges that span a kink; empty for a good solid.
 *
 * @param solid - finite numbers
 * @example
 * ```ts
 * noKink(solid).map((d) => [d.values.edge, d.values.at]); // which edge, at which parameter
 * ```
 */
export function noKink(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  for (const [e, edge] of solid.edges.entries()) {
    const { curve } = edge;
    if (curve.kind !== "saddle") continue;
    const at = wrongSign(curve, edge.t0, edge.t1) ?? sharpTurn(edge);
    if (at === null) continue;
    out.push(
      diagnostic({
        code: "edge-spans-kink",
        message: `Edge ${e} is not smooth at parameter ${at.toFixed(6)} between ${edge.t0.toFixed(6)} and ${edge.t1.toFixed(6)}; expected its ends at every kink.`,
        hint: "Report the design: it is a fault of the kernel.",
        values: { edge: e, at },
      }),
    );
  }
  return out;
}

/** The parameter where a zero bracket's root has not the curve's sign; null when it has it all along. */
function wrongSign(c: SaddleCurve, t0: number, t1: number): number | null {
  // An edge may be carried on past its kink by as much as makes a break the corner.
  const past = Math.max(KINK_AT_END, CORNER_MM / c.radius);
  const [lo, hi] = [Math.min(t0, t1) + past, Math.max(t0, t1) - past];
  if (lo >= hi) return null;
  const half = (t: number): number => (t - c.phiN) / 2;
  for (const t of [lo, (lo + hi) / 2, hi]) {
    if (c.a0 === 0 && Math.sin(half(t)) * c.signA < 0) return t;
    if (c.b0 === 0 && Math.cos(half(t)) * c.signB < 0) return t;
  }
  return null;
}

/** Angle between the chords of the two halves of a stretch. */
function turn(edge: Edge, lo: number, hi: number): number {
  const [p, q, r] = [lo, (lo + hi) / 2, hi].map((t) => evaluate(edge.curve, t)) as [Point, Point, Point];
  return Math.acos(Math.min(1, Math.max(-1, dot(normalize(sub(q, p)), normalize(sub(r, q))))));
}

type Point = readonly [number, number, number];

/** The parameter of a turn that does not fade; null on a smooth edge. */
function sharpTurn(edge: Edge): number | null {
  const step = (edge.t1 - edge.t0) / STRETCHES;
  for (let k = 0; k + 2 <= STRETCHES; k++) {
    let [lo, hi] = [edge.t0 + k * step, edge.t0 + (k + 2) * step];
    let sharpest = turn(edge, lo, hi);
    for (let i = 0; i < HALVINGS && sharpest > TURN; i++) {
      const quarter = (hi - lo) / 4;
      const from = lo;
      sharpest = 0;
      for (let part = 0; part < 3; part++) {
        const [a, b] = [from + part * quarter, from + (part + 2) * quarter];
        const here = turn(edge, a, b);
        if (here <= sharpest) continue;
        [sharpest, lo, hi] = [here, a, b];
      }
    }
    if (sharpest > TURN) return (lo + hi) / 2;
  }
  return null;
}
