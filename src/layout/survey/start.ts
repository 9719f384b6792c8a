/**
 * Where are the points roughly? A place to begin from, carried from the datum along the readings.
 *
 * Differences are added up; a slope with one leg known gives the other; a corner taped from two known ones is where their
 * circles meet, to the left of the first side. What is still open is set by a usual stair, and the adjustment moves it.
 *
 * @packageDocumentation
 */
import type { FixedCoordinate } from "./datum.js";
import { coordinatesIn } from "./datum.js";
import { type CoordinateName, coordinatesOf, fromOf, nameOf, type Reading } from "./reading.js";

/** A usual step (common practice, no source): only where a search begins. */
const [GOING, RISER, PITCH] = [270, 180, (35 * Math.PI) / 180];

type Known = Map<CoordinateName, number>;

/** Sets what is not known yet; says whether anything was. */
function put(known: Known, name: CoordinateName, value: number): boolean {
  if (known.has(name) || !Number.isFinite(value)) return false;
  known.set(name, value);
  return true;
}

/** Carries one coordinate over a difference, either way. */
function carry(known: Known, from: string, to: string, by: number): boolean {
  const [a, b] = [known.get(from), known.get(to)];
  if (a !== undefined && b === undefined) return put(known, to, a + by);
  if (b !== undefined && a === undefined) return put(known, from, b - by);
  return false;
}

function alongSlope(known: Known, own: Reading): boolean {
  const [x1, z1, x2, z2] = coordinatesOf(own).map(nameOf) as [string, string, string, string];
  const leg = (a: string, b: string) => {
    const [p, q] = [known.get(a), known.get(b)];
    return p === undefined || q === undefined ? undefined : Math.abs(q - p);
  };
  const [dx, dz] = [leg(x1, x2), leg(z1, z2)];
  if (own.kind === "slope") {
    if (dx !== undefined) return carry(known, z1, z2, Math.sqrt(Math.max(own.value ** 2 - dx ** 2, 0)));
    if (dz !== undefined) return carry(known, x1, x2, Math.sqrt(Math.max(own.value ** 2 - dz ** 2, 1)));
    return false;
  }
  const slope = Math.tan((own.value * Math.PI) / 180);
  if (dx !== undefined) return carry(known, z1, z2, dx * slope);
  if (dz !== undefined && slope > 0) return carry(known, x1, x2, dz / slope);
  return false;
}

/** A slope between points of which one is known whole, at a usual pitch. */
function guessSlope(known: Known, readings: readonly Reading[]): boolean {
  return readings.some((own) => {
    if (own.kind !== "slope") return false;
    const [x1, , x2] = coordinatesOf(own).map(nameOf) as [string, string, string, string];
    const level = readings.find(
      (other) => other.kind === "level" && other.from === own.from && other.to === own.to,
    );
    const pitch = level === undefined ? PITCH : (level.value * Math.PI) / 180;
    return carry(known, x1, x2, own.value * Math.cos(pitch));
  });
}

/** Where a corner may be that is so far from two known ones: to the left of them. */
function placeCorner(known: Known, readings: readonly Reading[], name: string): boolean {
  const from = readings.flatMap((own) => {
    if (own.kind !== "side" && own.kind !== "diagonal") return [];
    const other = own.from === name ? own.to : own.to === name ? own.from : undefined;
    const [x, y] = [known.get(`x${other}`), known.get(`y${other}`)];
    return x === undefined || y === undefined ? [] : [{ x, y, r: own.value }];
  });
  const [a, b] = from;
  if (a === undefined) return false;
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
  const spot = spots.reduce((best, own) => (own.y > best.y ? own : best));
  const setX = put(known, `x${name}`, spot.x);
  return put(known, `y${name}`, spot.y) || setX;
}

/** The second corner lies on the x axis: as far as it was taped. */
function placeOnAxis(known: Known, readings: readonly Reading[]): boolean {
  return readings.some((own) => {
    if (own.kind !== "side" && own.kind !== "diagonal") return false;
    const [x1, y1, x2, y2] = coordinatesOf(own).map(nameOf) as [string, string, string, string];
    return known.has(y1) && known.has(y2) && carry(known, x1, x2, own.value);
  });
}

/** One pass over the readings; says whether anything new came of it. */
function pass(known: Known, readings: readonly Reading[]): boolean {
  let grown = false;
  for (const own of readings) {
    if (own.kind === "slope" || own.kind === "level") {
      grown = alongSlope(known, own) || grown;
    } else if (typeof own.to === "number") {
      const axis = own.kind === "rise" || own.kind === "height" ? "z" : "x";
      grown = carry(known, `${axis}${fromOf(own)}`, `${axis}${own.to}`, own.value) || grown;
    }
  }
  return grown;
}

/**
 * Rough places of all points.
 *
 * @param readings - sound ones
 * @param fixed - the datum
 * @returns by coordinate name, mm; the fixed ones as they are
 */
export function startOf(readings: readonly Reading[], fixed: readonly FixedCoordinate[]): Known {
  const known: Known = new Map(fixed.map((own) => [nameOf(own), own.value]));
  const open = coordinatesIn(readings);
  const corners = [...new Set(open.map((own) => own.point).filter((own) => typeof own === "string"))];
  const openCorners = () => corners.filter((own) => !(known.has(`x${own}`) && known.has(`y${own}`)));
  for (;;) {
    if (pass(known, readings) || placeOnAxis(known, readings)) continue;
    if (guessSlope(known, readings)) continue;
    if (openCorners().some((own) => placeCorner(known, readings, own))) continue;
    const next = open.find((own) => !known.has(nameOf(own)));
    if (next === undefined) return known;
    const step = next.axis === "z" ? RISER : GOING;
    const number = typeof next.point === "number" ? next.point : corners.indexOf(next.point) + 1;
    known.set(nameOf(next), number * step);
  }
}
