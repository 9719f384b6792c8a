/**
 * One solid of a file looked at densely: edges on their vertices, on both surfaces and on both their pcurves at the same
 * parameter; every edge used once each way; loops that join, in space and in parameters; and its volume.
 *
 * The parameters of an edge are where a reader finds them: a spline's ends, or the places of its vertices on a line,
 * circle or ellipse, the second beyond the first.
 */
import { type CurveAt, curveOf, parameterOf, type SurfaceAt, surfaceOf } from "./curves.js";
import type { Graph } from "./graph.js";

/** What was found. */
export interface BrepLook {
  readonly faults: readonly string[];
  readonly edges: number;
  readonly faces: number;
  /** Greatest distances in the file's unit. */
  readonly gap: number;
  readonly offSurface: number;
  readonly offVertex: number;
  /** Greatest jump of an angle or length from one pcurve of a loop to the next, as a length. */
  readonly jump: number;
  readonly volume: number;
}

const SHARES = 33;

interface EdgeLook {
  readonly at: (t: number) => number[];
  readonly t0: number;
  readonly t1: number;
  readonly ends: readonly [number, number];
  readonly pcurves: ReadonlyMap<number, CurveAt>;
}

/** Looks at a MANIFOLD_SOLID_BREP. */
export function lookAtBrep(g: Graph, solid: number): BrepLook {
  const faults: string[] = [];
  const most = { gap: 0, offSurface: 0, offVertex: 0, jump: 0 };
  const raise = (key: keyof typeof most, x: number): void => {
    if (!(x <= most[key])) most[key] = x;
  };
  const known = new Map<number, EdgeLook>();
  const uses = new Map<number, number[]>();
  const faces = g.refs(g.ref(solid, 1), 1);
  let volume = 0;
  for (const face of faces) {
    const surfaceId = g.ref(face, 2);
    const surface = surfaceOf(g, surfaceId);
    const bounds = g.refs(face, 1);
    if (bounds.filter((b) => g.is(b, "FACE_OUTER_BOUND")).length !== 1)
      faults.push(`#${face}: not one outer bound`);
    for (const bound of bounds) {
      const forward = g.flag(bound, 2);
      if (!forward) faults.push(`#${bound}: a bound that runs backwards`);
      const loop = g.refs(g.ref(bound, 1), 1).map((use) => ({ edge: g.ref(use, 3), along: g.flag(use, 4) }));
      loop.forEach(({ edge, along }, i) => {
        const look = known.get(edge) ?? edgeOf(g, edge, faults, raise);
        known.set(edge, look);
        uses.set(edge, [...(uses.get(edge) ?? []), along ? 1 : -1]);
        const next = loop[(i + 1) % loop.length]!;
        const [end, start] = [look.ends[along ? 1 : 0], g.ref(next.edge, next.along ? 1 : 2)];
        if (end !== start) faults.push(`#${edge}: its loop does not join there`);
        const pcurve = look.pcurves.get(surfaceId);
        if (!pcurve) {
          faults.push(`#${edge}: no pcurve on #${surfaceId}`);
          return;
        }
        for (let k = 0; k <= SHARES; k++) {
          const t = look.t0 + ((look.t1 - look.t0) * k) / SHARES;
          const p = look.at(t);
          const [u, v] = pcurve.at(t) as [number, number];
          raise("gap", Math.hypot(...surface.at(u, v).map((x, d) => x - p[d]!)));
          raise("offSurface", Math.abs(surface.away(p)));
        }
        const after = known.get(next.edge) ?? edgeOf(g, next.edge, faults, raise);
        known.set(next.edge, after);
        const [a, b] = [
          pcurve.at(along ? look.t1 : look.t0),
          after.pcurves.get(surfaceId)?.at(next.along ? after.t0 : after.t1),
        ];
        if (b) raise("jump", Math.hypot((a[0]! - b[0]!) * (surface.radius ?? 1), a[1]! - b[1]!));
        volume += (along ? 1 : -1) * edgeVolume(surface, pcurve, look.t0, look.t1);
      });
    }
  }
  for (const [edge, ways] of uses)
    if (ways.length !== 2 || ways[0]! + ways[1]! !== 0) faults.push(`#${edge}: used ${ways.join(", ")}`);
  return { faults, edges: uses.size, faces: faces.length, ...most, volume };
}

function edgeOf(
  g: Graph,
  edge: number,
  faults: string[],
  raise: (key: "offVertex", x: number) => void,
): EdgeLook {
  const ends = [g.ref(edge, 1), g.ref(edge, 2)] as const;
  const [p, q] = ends.map((v) => g.numbers(g.ref(v, 1), 1)) as [number[], number[]];
  const wrapped = g.ref(edge, 3);
  if (!g.flag(edge, 4)) faults.push(`#${edge}: runs against its curve`);
  const bound = g.is(wrapped, "SURFACE_CURVE");
  const space = bound ? g.ref(wrapped, 1) : wrapped;
  const { at, knots } = curveOf(g, space);
  const t0 = knots?.[0] ?? parameterOf(g, space, p, -1e-9);
  const t1 = knots?.[knots.length - 1] ?? parameterOf(g, space, q, t0 + 1e-12);
  if (!(t1 > t0)) faults.push(`#${edge}: ends before it begins`);
  raise("offVertex", Math.hypot(...at(t0).map((x, i) => x - p[i]!)));
  raise("offVertex", Math.hypot(...at(t1).map((x, i) => x - q[i]!)));
  const pcurves = new Map<number, CurveAt>();
  for (const pcurve of bound ? g.refs(wrapped, 2) : []) {
    const curve = curveOf(g, g.refs(g.ref(pcurve, 2), 1)[0]!);
    pcurves.set(g.ref(pcurve, 1), curve);
  }
  return { at, t0, t1, ends, pcurves };
}

const [A, B] = [0.5 - Math.sqrt(15) / 10, 0.5 + Math.sqrt(15) / 10];
/** Gauss's rule of three points. */
const GAUSS = [
  [A, 5 / 18],
  [0.5, 8 / 18],
  [B, 5 / 18],
] as const;
/** Panels of a curve, or of each piece of a spline. */
const PANELS = { whole: 24, piece: 3 } as const;

/**
 * A face's share of the volume as an integral along its pcurves: the flux of p/3 through it is the integral of f(u, v) du dv with
 * f = p·(Pu × Pv)/3, and by Green's theorem that of −F du along the boundary, F the integral of f over v. A face against its
 * surface turns both its flux and its loops about.
 */
function edgeVolume(
  { place, radius }: SurfaceAt,
  { at, slope, knots }: CurveAt,
  t0: number,
  t1: number,
): number {
  const { o, x, y, z } = place;
  const dotted = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((s, c, i) => s + c * b[i]!, 0);
  const flux = (u: number): number =>
    radius === null
      ? dotted(o, z) / 3
      : (radius * (dotted(o, x) * Math.cos(u) + dotted(o, y) * Math.sin(u)) + radius * radius) / 3;
  const breaks = knots ?? [t0, t1];
  const panels = knots ? PANELS.piece : PANELS.whole;
  let sum = 0;
  for (let piece = 1; piece < breaks.length; piece++) {
    const [from, size] = [breaks[piece - 1]!, (breaks[piece]! - breaks[piece - 1]!) / panels];
    for (let k = 0; k < panels; k++) {
      for (const [share, weight] of GAUSS) {
        const t = from + size * (k + share);
        const [u, v] = at(t) as [number, number];
        sum -= weight * size * flux(u) * v * slope(t)[0]!;
      }
    }
  }
  return sum;
}
