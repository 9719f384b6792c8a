/**
 * Mass properties of an exact solid: no mesh, no volume elements, only integrals along its edges.
 *
 * The divergence theorem turns volume integrals into face integrals, Green's theorem turns those into edge integrals:
 * on a plane in its own (x, y), on a cylinder in (φ, z), where every integrand is a polynomial in y or z and is
 * integrated exactly in that direction. Along an edge a 12-point Gauss rule is halved until it agrees with itself to a
 * rounding; where a saddle runs nearly tangent the halves grade towards the tangency by themselves.
 *
 * An edge may lie beside its face's surface: a line that stands for a slender ellipse by RULING_SAGITTA_MM, one on a surface
 * that was snapped by STATION_MM. Then the strip between the edge and its foot on the surface counts as well. Without it the
 * faces would not close, and the volume would hang on the point it is counted from.
 *
 * @packageDocumentation
 */
import { type Curve, derivatives, evaluate } from "./curve/curve.js";
import { lineThrough } from "./curve/intersect.js";
import { GAUSS_3, GAUSS_12, type GaussRule } from "./gauss.js";
import type { Edge, EdgeUse, Face, Solid } from "./solid.js";
import { distanceTo, normalAt } from "./surface.js";
import { INTEGRAL_FLOOR, INTEGRAL_RELATIVE, ROUNDING_MM, ROUNDING_SHARE } from "./tolerance.js";
import { cross, distance, dot, length, sub, type Vec3 } from "./vec.js";

/** Mass properties per unit of density, in the solid's frame. */
export interface MassProperties {
  /** mm³ */
  readonly volume: number;
  /** mm² of surface */
  readonly area: number;
  /** Centre of volume, mm. */
  readonly centroid: Vec3;
  /** Second moments ∫ about the centroid, mm⁵: xx = ∫x² dV … yz = ∫yz dV. */
  readonly moments: {
    readonly xx: number;
    readonly yy: number;
    readonly zz: number;
    readonly xy: number;
    readonly yz: number;
    readonly zx: number;
  };
}

/** volume, area, x, y, z, xx, yy, zz, xy, yz, zx */
const N = 11;
const RULE = GAUSS_12;
const INNER = GAUSS_3;

/** Exact mass properties of a closed solid. */
export function massProperties(solid: Solid): MassProperties {
  const centre = middleOf(solid.vertices);
  const sum = new Float64Array(N);
  const parts: Part[] = [];
  const total = [0, 0];
  for (const face of solid.faces) {
    for (const loop of face.loops) {
      for (const use of loop) {
        const edge = solid.edges[use.edge] as Edge;
        const side: Side = { face, edge, isOff: isOff(face, edge) };
        const { surface } = face;
        // Along a ruling φ stands still and the integral is zero; a line may also be the chord of a slender ellipse.
        if (surface.kind === "cylinder" && !side.isOff && isRuling(edge.curve, surface.frame.z)) continue;
        const [a, b] = use.forward ? [edge.t0, edge.t1] : [edge.t1, edge.t0];
        const whole = panel(side, centre, a, b);
        parts.push({ side, a, b, whole });
        for (const k of [0, 1]) total[k] = (total[k] as number) + (whole.size[k] as number);
      }
      for (const edge of gapsOf(solid, loop)) {
        const { value } = panel({ face, edge, isOff: isOff(face, edge) }, centre, edge.t0, edge.t1);
        for (let k = 0; k < N; k++) sum[k] = (sum[k] as number) + (value[k] as number);
      }
    }
  }
  const scale = scaleOf(solid, centre, total[0] as number, total[1] as number);
  for (const { side, a, b, whole } of parts) {
    const depth = side.edge.curve.kind === "line" ? 0 : MAX_DEPTH;
    refine(side, centre, a, b, whole, scale, depth, { left: MOST_PANELS }, sum);
  }
  const [v = 0, area = 0, mx = 0, my = 0, mz = 0, xx = 0, yy = 0, zz = 0, xy = 0, yz = 0, zx = 0] = sum;
  const c: Vec3 = [mx / v, my / v, mz / v];
  return {
    volume: v,
    area,
    centroid: [centre[0] + c[0], centre[1] + c[1], centre[2] + c[2]],
    moments: {
      xx: xx - v * c[0] * c[0],
      yy: yy - v * c[1] * c[1],
      zz: zz - v * c[2] * c[2],
      xy: xy - v * c[0] * c[1],
      yz: yz - v * c[1] * c[2],
      zx: zx - v * c[2] * c[0],
    },
  };
}

/**
 * Where one edge of a loop ends a hair beside the start of the next, as one that is carried on past its kink: the straight
 * way between them. Open, a loop's integral would be off by the gap times its distance from the middle.
 */
function gapsOf({ edges }: Solid, loop: readonly EdgeUse[]): Edge[] {
  const last = loop[loop.length - 1] as EdgeUse;
  let p = endOf(edges[last.edge] as Edge, last.forward);
  const out: Edge[] = [];
  for (const { edge, forward } of loop) {
    const e = edges[edge] as Edge;
    const q = endOf(e, !forward);
    const long = distance(p, q);
    if (long > ROUNDING_MM) out.push({ curve: lineThrough(p, q), t0: 0, t1: long, from: -1, to: -1 });
    p = endOf(e, forward);
  }
  return out;
}

function endOf({ curve, t0, t1 }: Edge, atEnd: boolean): Vec3 {
  return evaluate(curve, atEnd ? t1 : t0);
}

/** True for an edge that lies beside a face's surface, seen at a quarter and in its middle. */
function isOff({ surface }: Face, { curve, t0, t1 }: Edge): boolean {
  return [1 / 4, 1 / 2].some(
    (k) => Math.abs(distanceTo(surface, evaluate(curve, t0 + k * (t1 - t0)))) > ROUNDING_MM,
  );
}

function isRuling(curve: Curve, axis: Vec3): boolean {
  return curve.kind === "line" && length(cross(curve.direction, axis)) < ROUNDING_SHARE;
}

const MAX_DEPTH = 48;
/** Halvings of one edge, some twenty times what the nearest tangency needs: an edge that is only rounding ends here. */
const MOST_PANELS = 4000;
/** What each integral is large or small against: symmetry can make an integral itself nothing but rounding. */
function scaleOf(solid: Solid, centre: Vec3, volume: number, area: number): readonly number[] {
  const reach = solid.vertices.reduce((far, p) => Math.max(far, distance(p, centre)), 0);
  return Array.from({ length: N }, (_, k) =>
    k === 1 ? area : volume * (k === 0 ? 1 : k < 5 ? reach : reach * reach),
  );
}

/** An edge as a side of one face. */
interface Side {
  readonly face: Face;
  readonly edge: Edge;
  readonly isOff: boolean;
}

/** One use of an edge and its first panel. */
interface Part {
  readonly side: Side;
  readonly a: number;
  readonly b: number;
  readonly whole: Panel;
}

interface Panel {
  readonly value: Float64Array;
  /** Sum of absolute contributions: what rounding is relative to. */
  readonly size: Float64Array;
}

function refine(
  side: Side,
  centre: Vec3,
  a: number,
  b: number,
  whole: Panel,
  scale: readonly number[],
  depth: number,
  budget: { left: number },
  sum: Float64Array,
): void {
  const mid = (a + b) / 2;
  if (depth > 0 && budget.left-- > 0) {
    const left = panel(side, centre, a, mid);
    const right = panel(side, centre, mid, b);
    let agrees = true;
    for (let k = 0; k < N && agrees; k++) {
      const difference = Math.abs(
        (left.value[k] as number) + (right.value[k] as number) - (whole.value[k] as number),
      );
      // Written so that a number that is not finite ends the halving.
      agrees = !(
        difference >
        INTEGRAL_RELATIVE * (whole.size[k] as number) + INTEGRAL_FLOOR * (scale[k] as number)
      );
    }
    if (!agrees) {
      refine(side, centre, a, mid, left, scale, depth - 1, budget, sum);
      refine(side, centre, mid, b, right, scale, depth - 1, budget, sum);
      return;
    }
    for (let k = 0; k < N; k++) {
      sum[k] = (sum[k] as number) + ((left.value[k] as number) + (right.value[k] as number));
    }
    return;
  }
  for (let k = 0; k < N; k++) sum[k] = (sum[k] as number) + (whole.value[k] as number);
}

/** One Gauss panel of the edge integral of a face. */
function panel({ face, edge, isOff }: Side, centre: Vec3, a: number, b: number): Panel {
  const value = new Float64Array(N);
  const size = new Float64Array(N);
  const { surface, sense } = face;
  const { frame } = surface;
  const origin = sub(frame.origin, centre);
  const half = (b - a) / 2;
  const g = new Float64Array(N);
  const add = (weight: number): void => {
    for (let k = 0; k < N; k++) {
      const term = weight * (g[k] as number);
      value[k] = (value[k] as number) + term;
      size[k] = (size[k] as number) + Math.abs(term);
    }
  };
  for (let i = 0; i < RULE.nodes.length; i++) {
    const t = (a + b) / 2 + half * (RULE.nodes[i] as number);
    const { p, d1 } = derivatives(edge.curve, t);
    const w = sub(p, frame.origin);
    const x = dot(w, frame.x);
    const y = dot(w, frame.y);
    let weight = -sense * half * (RULE.weights[i] as number);
    if (surface.kind === "plane") {
      weight *= dot(d1, frame.x);
      const start: Vec3 = along(origin, frame.x, x);
      inner(INNER, start, frame.y, y, [sense * frame.z[0], sense * frame.z[1], sense * frame.z[2]], g);
    } else {
      const r2 = x * x + y * y;
      // r dφ/dt, with φ and the radius taken from the point itself.
      weight *= ((x * dot(d1, frame.y) - y * dot(d1, frame.x)) / r2) * surface.radius;
      const r = Math.sqrt(r2);
      const n: Vec3 = [
        (x * frame.x[0] + y * frame.y[0]) / r,
        (x * frame.x[1] + y * frame.y[1]) / r,
        (x * frame.x[2] + y * frame.y[2]) / r,
      ];
      const start = along(origin, n, surface.radius);
      inner(INNER, start, frame.z, dot(w, frame.z), [sense * n[0], sense * n[1], sense * n[2]], g);
    }
    add(weight);
    if (!isOff) continue;
    // From the foot out to the edge; going along with the face on its left, the strip faces out as the face does.
    const out = normalAt(surface, p);
    const off = distanceTo(surface, p);
    inner(INNER, sub(along(p, out, -off), centre), out, off, cross(out, d1), g);
    g[1] = 0;
    add(half * (RULE.weights[i] as number));
  }
  return { value, size };
}

function along(p: Vec3, d: Vec3, k: number): Vec3 {
  return [p[0] + k * d[0], p[1] + k * d[1], p[2] + k * d[2]];
}

/** ∫₀^h of every integrand along a straight line with a constant normal: polynomials of degree 3, exact with 3 points. */
function inner(rule: GaussRule, start: Vec3, d: Vec3, h: number, n: Vec3, g: Float64Array): void {
  g.fill(0);
  const half = h / 2;
  for (let i = 0; i < rule.nodes.length; i++) {
    const [x, y, z] = along(start, d, half * (1 + (rule.nodes[i] as number)));
    const w = half * (rule.weights[i] as number);
    const add = (k: number, f: number): void => {
      g[k] = (g[k] as number) + w * f;
    };
    add(0, (x * n[0] + y * n[1] + z * n[2]) / 3);
    add(1, 1);
    add(2, (x * x * n[0]) / 2);
    add(3, (y * y * n[1]) / 2);
    add(4, (z * z * n[2]) / 2);
    add(5, (x * x * x * n[0]) / 3);
    add(6, (y * y * y * n[1]) / 3);
    add(7, (z * z * z * n[2]) / 3);
    add(8, (x * x * y * n[0]) / 2);
    add(9, (y * y * z * n[1]) / 2);
    add(10, (z * z * x * n[2]) / 2);
  }
}

function middleOf(points: readonly Vec3[]): Vec3 {
  const c: [number, number, number] = [0, 0, 0];
  for (const p of points) for (const k of [0, 1, 2] as const) c[k] += p[k] / points.length;
  return c;
}
