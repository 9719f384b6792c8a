/**
 * Where are the corners of a landing roughly? A corner taped from two known ones is where their circles meet, one read square
 * from a wall lies beside it; to the left of the first side where nothing says.
 *
 * @packageDocumentation
 */
import { carry, type Known, put } from "./known.js";
import { coordinatesOf, nameOf, type Reading } from "./reading.js";

interface Arc {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Known corners that a corner is taped from. */
function arcsTo(known: Known, readings: readonly Reading[], name: string): Arc[] {
  return readings.flatMap((own) => {
    if (own.kind !== "side" && own.kind !== "diagonal") return [];
    const other = own.from === name ? own.to : own.to === name ? own.from : undefined;
    const [x, y] = [known.get(`x${other}`), known.get(`y${other}`)];
    return x === undefined || y === undefined ? [] : [{ x, y, r: own.value }];
  });
}

/** Of two places the one that further tapes come nearer to; without any the one to the left of the first side. */
function better(spots: readonly { x: number; y: number }[], arcs: readonly Arc[]) {
  const misfit = (own: { x: number; y: number }) =>
    arcs.reduce((sum, arc) => sum + Math.abs(Math.hypot(own.x - arc.x, own.y - arc.y) - arc.r), 0);
  return spots.reduce((best, own) => {
    const gain = misfit(best) - misfit(own);
    return gain > 1 || (gain > -1 && own.y > best.y) ? own : best;
  });
}

/** Where a corner may be that is so far from at least so many known ones. */
function placeCorner(known: Known, readings: readonly Reading[], name: string, least: 1 | 2): boolean {
  const arcs = arcsTo(known, readings, name);
  const [a, b, ...more] = arcs;
  if (a === undefined || arcs.length < least) return false;
  if (b === undefined) {
    const onAxis = known.has(`y${name}`);
    return put(known, `x${name}`, a.x + (onAxis ? a.r : 0)) || put(known, `y${name}`, a.y + a.r);
  }
  const [u, w] = [b.x - a.x, b.y - a.y];
  const d = Math.hypot(u, w) || 1;
  const along = (a.r ** 2 - b.r ** 2 + d ** 2) / (2 * d);
  const off = Math.sqrt(Math.max(a.r ** 2 - along ** 2, 0));
  const spots = [1, -1].map((way) => ({
    x: a.x + (along * u - way * off * w) / d,
    y: a.y + (along * w + way * off * u) / d,
  }));
  const spot = better(spots, more);
  const setX = put(known, `x${name}`, spot.x);
  return put(known, `y${name}`, spot.y) || setX;
}

/** A corner read square from a known wall: to the left of its line, as far along as it is taped from a known corner. */
function placeOffset(known: Known, readings: readonly Reading[], name: string): boolean {
  return readings.some((own) => {
    if (own.kind !== "offset" || own.at !== name) return false;
    const [, , x1, y1, x2, y2] = coordinatesOf(own).map((at) => known.get(nameOf(at)));
    if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return false;
    const d = Math.hypot(x2 - x1, y2 - y1) || 1;
    const [u, w] = [(x2 - x1) / d, (y2 - y1) / d];
    const [arc] = arcsTo(known, readings, name);
    // Along and off the wall, in its own frame.
    const [t, n] = arc
      ? [u * (arc.x - x1) + w * (arc.y - y1), u * (arc.y - y1) - w * (arc.x - x1)]
      : [d / 2, 0];
    const along = t + (arc ? Math.sqrt(Math.max(arc.r ** 2 - (own.value - n) ** 2, 0)) : 0);
    const setX = put(known, `x${name}`, x1 + along * u - own.value * w);
    return put(known, `y${name}`, y1 + along * w + own.value * u) || setX;
  });
}

/** The second corner lies on the x axis: as far as it was taped. */
export function placeOnAxis(known: Known, readings: readonly Reading[]): boolean {
  return readings.some((own) => {
    if (own.kind !== "side" && own.kind !== "diagonal") return false;
    const [x1, y1, x2, y2] = coordinatesOf(own).map(nameOf) as [string, string, string, string];
    return known.has(y1) && known.has(y2) && carry(known, x1, x2, own.value);
  });
}

/** Places one more corner: first by two tapes, then by a wall, then by one tape; says whether any could be. */
export function placeNext(known: Known, readings: readonly Reading[], open: readonly string[]): boolean {
  return (
    open.some((own) => placeCorner(known, readings, own, 2)) ||
    open.some((own) => placeOffset(known, readings, own)) ||
    open.some((own) => placeCorner(known, readings, own, 1))
  );
}
