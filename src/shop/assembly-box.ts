/**
 * How large is an assembly, as it stands and as it is carried?
 *
 * Directions: in plan the one across which it is thinnest; in the plumb plane along it the one across which it is least
 * deep. Both are looked for among its pieces' own directions, level and plumb, and the sides of the hull of points of its
 * edges. Sizes along them are exact: a straight reach is greatest at an edge (`extremesAlong`), also on round faces, whose
 * rulings end at edges. Layout frame, millimetres, degrees.
 *
 * @packageDocumentation
 */
import { evaluate } from "../kernel/curve/curve.js";
import { extremesAlong } from "../kernel/edge-extremes.js";
import { directionToLocal, type Frame, pointToParent } from "../kernel/frame.js";
import type { Solid } from "../kernel/solid.js";
import { PARALLEL_SINE, ROUNDING_MM } from "../kernel/tolerance.js";
import { dot, type Vec2, type Vec3 } from "../kernel/vec.js";
import { convexHull } from "./convex-hull.js";

/** A solid where it stands. */
export interface PlacedSolid {
  readonly solid: Solid;
  /** Piece → layout. */
  readonly frame: Frame;
}

/** Sizes of an assembly. */
export interface AssemblyBox {
  /** Along `direction`, across it in the plumb plane, and across that plane, mm. */
  readonly length: number;
  readonly depth: number;
  readonly thickness: number;
  /** Unit, layout; uphill or, where it is plumb, up. */
  readonly direction: Vec3;
  /** Of `direction` from level, degrees, −90 to 90; + climbs uphill. */
  readonly rise: number;
  /** As it stands: level in its plumb plane, and plumb, mm. */
  readonly standing: { readonly length: number; readonly height: number };
  /** Where its low end is along `direction`, mm from the layout's origin. */
  readonly start: number;
}

/** Points of an edge that its hull is taken from, besides its ends. */
const STATIONS = 8;

type Range = { readonly least: number; readonly greatest: number };
const size = ({ least, greatest }: Range): number => greatest - least;

/**
 * The box of some solids.
 *
 * @param parts - at least one solid with its frame
 * @example
 * assemblyBox([{ solid, frame: piece.frame }]).length;
 */
export function assemblyBox(parts: readonly PlacedSolid[]): AssemblyBox {
  const points = parts.flatMap(pointsOf);
  const axes = parts.map(({ frame }) => frame.z);
  const inPlan = points.map(([x, y]): Vec2 => [x, y]);
  const walk = thinnest([...axes.map(([x, y]): Vec2 => [x, y]), ...sidesOf(inPlan)], ([x, y]) =>
    reach(parts, [-y, x, 0]),
  );
  const along = forward(walk);
  const ahead: Vec3 = [along[0], along[1], 0];
  const upright = points.map((p): Vec2 => [dot(p, ahead), p[2]]);
  const lie = thinnest(
    [[1, 0], [0, 1], ...axes.map((z): Vec2 => [dot(z, ahead), z[2]]), ...sidesOf(upright)],
    ([s, z]) => reach(parts, [-z * ahead[0], -z * ahead[1], s]),
  );
  const [s, z] = forward(lie);
  const direction: Vec3 = [s * ahead[0], s * ahead[1], z];
  const length = reach(parts, direction);
  return {
    length: size(length),
    depth: size(reach(parts, [-z * ahead[0], -z * ahead[1], s])),
    thickness: size(reach(parts, [-ahead[1], ahead[0], 0])),
    direction,
    rise: (Math.atan2(z, s) * 180) / Math.PI,
    standing: { length: size(reach(parts, ahead)), height: size(reach(parts, [0, 0, 1])) },
    start: length.least,
  };
}

/** Of directions of any length, the unit one across which the parts reach least; the first of equals. */
function thinnest(directions: readonly Vec2[], across: (unit: Vec2) => Range): Vec2 {
  let best: { readonly unit: Vec2; readonly width: number } | undefined;
  for (const unit of distinct(directions)) {
    const width = size(across(unit));
    if (best === undefined || width < best.width - ROUNDING_MM) best = { unit, width };
  }
  return best?.unit ?? [1, 0];
}

/** Unit directions, each once whichever way it points; with each its square, so that the least deep is never the length. */
function distinct(directions: readonly Vec2[]): readonly Vec2[] {
  const kept: Vec2[] = [];
  for (const [x, y] of directions) {
    const far = Math.hypot(x, y);
    if (far <= ROUNDING_MM) continue;
    for (const unit of [
      [x / far, y / far],
      [-y / far, x / far],
    ] as const) {
      if (kept.every((own) => Math.abs(own[0] * unit[1] - own[1] * unit[0]) > PARALLEL_SINE)) kept.push(unit);
    }
  }
  return kept;
}

/** Uphill, or left or up where it is square to that. */
function forward([x, y]: Vec2): Vec2 {
  const back = Math.abs(x) > PARALLEL_SINE ? x < 0 : y < 0;
  return back ? [-x, -y] : [x, y];
}

/** The side of the hull across which it is thinnest. */
function sidesOf(points: readonly Vec2[]): readonly Vec2[] {
  const hull = convexHull(points);
  const sides = hull.map((p, i): Vec2 => {
    const q = hull[(i + 1) % hull.length] as Vec2;
    return [q[0] - p[0], q[1] - p[1]];
  });
  const width = ([x, y]: Vec2): number => {
    const over = hull.map((p) => (p[1] * x - p[0] * y) / Math.hypot(x, y));
    return Math.max(...over) - Math.min(...over);
  };
  const widths = sides.map(width);
  const least = Math.min(...widths);
  return sides.filter((_, i) => widths[i] === least).slice(0, 1);
}

function pointsOf({ solid, frame }: PlacedSolid): readonly Vec3[] {
  return solid.edges.flatMap(({ curve, t0, t1 }) =>
    Array.from({ length: STATIONS + 1 }, (_, k) =>
      pointToParent(frame, evaluate(curve, t0 + ((t1 - t0) * k) / STATIONS)),
    ),
  );
}

/** How far the parts reach along a unit direction of the layout, exact. */
function reach(parts: readonly PlacedSolid[], direction: Vec3): Range {
  const ranges = parts.flatMap(({ solid, frame }) => {
    const gradient = directionToLocal(frame, direction);
    const found = extremesAlong(solid.edges, (p) => ({ value: dot(p, gradient), gradient }));
    const offset = dot(frame.origin, direction);
    return found ? [{ least: found.least.value + offset, greatest: found.greatest.value + offset }] : [];
  });
  return {
    least: Math.min(...ranges.map((r) => r.least)),
    greatest: Math.max(...ranges.map((r) => r.greatest)),
  };
}
