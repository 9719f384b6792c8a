/**
 * The lower or upper edge of a sheet: the lines of a rail's face, moved in, and where they cross.
 *
 * x along the guard, z up, millimetres.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Vec2 } from "../../kernel/vec.js";
import { crossX, type PlumbLine, xAt } from "../posts/post-line.js";
import type { Boundary } from "./boundary.js";

/** A sloping side z = z0 + slope·x, or the plumb face of a leg at x, free on the side that `way` points to. */
export type Side =
  | { readonly kind: "line"; readonly z0: number; readonly slope: number }
  | { readonly kind: "plumb"; readonly x: number; readonly way: 1 | -1 };

type SlopingSide = Extract<Side, { kind: "line" }>;

/** The sides of a boundary in one reach, in order; where two of its faces do not meet, a plumb one stands between. */
export function sidesOf({ lines }: Boundary, reach: number): Side[] {
  const own = lines.filter((line) => line.reach === reach);
  return own.flatMap((line, i): Side[] => {
    const side: Side = { kind: "line", z0: line.face, slope: line.slope };
    const before = own[i - 1];
    if (before === undefined) return [side];
    const x = line.x[0];
    const step = line.face + line.slope * x - (before.face + before.slope * x);
    if (Math.abs(step) <= STATION_MM) return [side];
    // Under a ceiling that steps up the room is uphill of the step.
    return [{ kind: "plumb", x, way: step > 0 ? 1 : -1 }, side];
  });
}

/** Sides moved into the room, square to themselves: up (+1) from a floor, down (−1) from a ceiling. */
export function movedSides(sides: readonly Side[], by: number, way: 1 | -1): Side[] {
  return sides.map((side) =>
    side.kind === "line"
      ? { ...side, z0: side.z0 + way * by * Math.hypot(1, side.slope) }
      : { ...side, x: side.x + side.way * by },
  );
}

function zOf(side: Side | undefined, x: number): number {
  return side?.kind === "line" ? side.z0 + side.slope * x : Number.NaN;
}

/** Where two sides in order cross. */
function crossing(a: Side, b: Side): Vec2 {
  if (a.kind === "line" && b.kind === "line") {
    const x = (b.z0 - a.z0) / (a.slope - b.slope);
    return [x, zOf(a, x)];
  }
  const plumb = a.kind === "plumb" ? a : b;
  const x = plumb.kind === "plumb" ? plumb.x : 0;
  return [x, zOf(a.kind === "plumb" ? b : a, x)];
}

/** Sides of which something is left: one whose two crossings have changed places is overrun by its neighbours. */
function lasting(sides: readonly Side[]): readonly Side[] {
  const at = sides.slice(1).map((side, i) => crossing(sides[i] as Side, side)[0]);
  const gone = at.findIndex((x, i) => i > 0 && x < (at[i - 1] ?? x) - STATION_MM);
  return gone < 0 ? sides : lasting(sides.filter((_, i) => i !== gone));
}

/** An edge from left to right: its corners, and the sides at its two ends. */
export interface EdgeChain {
  readonly points: readonly Vec2[];
  readonly ends: readonly [SlopingSide, SlopingSide];
}

/** The edge that sides make between two plumb or leaning lines. */
export function edgeChain(sides: readonly Side[], left: PlumbLine, right: PlumbLine): EdgeChain {
  const last = lasting(sides);
  const nodes = last.slice(1).map((side, i) => crossing(last[i] as Side, side));
  const skipped = nodes.filter(([x, z]) => x <= xAt(left, z) + STATION_MM).length;
  const inside = nodes.slice(skipped).filter(([x, z]) => x < xAt(right, z) - STATION_MM);
  const [first, final] = [last[skipped] as SlopingSide, last[skipped + inside.length] as SlopingSide];
  const [low, high] = [crossX(left, first), crossX(right, final)];
  return {
    points: [[low, zOf(first, low)], ...inside, [high, zOf(final, high)]],
    ends: [first, final],
  };
}

/** Heights of an edge just before and just after x: they differ at a step. */
export function heightsAt(points: readonly Vec2[], x: number): Vec2 {
  const along = (a: Vec2 | undefined, b: Vec2 | undefined): number =>
    a === undefined || b === undefined ? Number.NaN : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  const pairs = points.slice(1).flatMap((b, k) => {
    const a = points[k];
    return a !== undefined && b[0] > a[0] ? [[a, b] as const] : [];
  });
  const before = pairs.filter(([a]) => a[0] < x).at(-1) ?? pairs[0];
  const after = pairs.find(([, b]) => b[0] > x) ?? pairs.at(-1);
  return [along(before?.[0], before?.[1]), along(after?.[0], after?.[1])];
}
