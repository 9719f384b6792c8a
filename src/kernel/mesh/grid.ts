/**
 * Rulings: how finely each cylinder is divided so that flat strips stay within the chord tolerance.
 *
 * A full turn is divided into n equal steps, the same for every face of that cylinder, counted from its frame's x. Two
 * neighbouring rulings of radius r bound a strip that leaves the cylinder by r(1 − cos(π/n)) at most. Every edge is
 * sampled where it crosses a ruling of either of its faces, so each face falls into strips without new points.
 *
 * @packageDocumentation
 */
import type { Surface } from "../surface.js";
import { RULING_MM } from "../tolerance.js";

/** Steps round a full turn, a multiple of four so that crowns and sides are rulings. */
export function stepsPerTurn(radius: number, chord: number): number {
  const half = Math.acos(Math.max(0, 1 - chord / radius));
  return Math.min(1 << 16, Math.max(8, 4 * Math.ceil(Math.PI / half / 4)));
}

/** Steps of each face's surface; 0 for planes. */
export function gridOf(surface: Surface, chord: number): number {
  return surface.kind === "plane" ? 0 : stepsPerTurn(surface.radius, chord);
}

/**
 * How near to each other (mm) two points of an edge are one point, and a point and a ruling belong together: RULING_MM, or a
 * sixteenth of a finer chord, so that what is left out stays small beside the tolerance.
 */
export function nearRuling(chord: number): number {
  return Math.min(RULING_MM, chord / 16);
}
