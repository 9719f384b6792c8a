/**
 * Where are the points roughly? A place to begin from, carried from the datum along the readings.
 *
 * Differences are added up; a slope with one leg known gives the other; corners are placed by `start-corners.ts`. What is still
 * open is set by a usual stair, and the adjustment moves it.
 *
 * @packageDocumentation
 */
import type { FixedCoordinate } from "./datum.js";
import { coordinatesIn } from "./datum.js";
import { carry, type Known } from "./known.js";
import { coordinatesOf, fromOf, nameOf, type Reading } from "./reading.js";
import { placeNext, placeOnAxis } from "./start-corners.js";

/** A usual step (common practice, no source): only where a search begins. */
const [GOING, RISER, PITCH] = [270, 180, (35 * Math.PI) / 180];

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
    if (placeNext(known, readings, openCorners())) continue;
    const next = open.find((own) => !known.has(nameOf(own)));
    if (next === undefined) return known;
    const step = next.axis === "z" ? RISER : GOING;
    const number = typeof next.point === "number" ? next.point : corners.indexOf(next.point) + 1;
    known.set(nameOf(next), number * step);
  }
}
