/**
 * Where round sides are split: clear of the bores, so that openings lie in one face each.
 *
 * A full circle is swept as two faces. Where the lines between them run is free: they are turned to a place that no bore
 * reaches, or where there is none, to one that no bore only touches. A line that a bore crosses is cut by it.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { acrossBore, type BoreStance, stanceOf } from "./bore-stance.js";
import { type ArcSegment, type Loop, loopsOf, type Region } from "./region.js";

/** Candidate places for the two splits, one every five degrees of half a turn. */
const PLACES = 36;
/** Share of the circle's radius between a split and the rim of a bore. */
const BESIDE = 0.02;

/** The same section with the splits of its round loops clear of the bores. */
export function splitsClearOf(section: Region, bores: readonly Bore[]): Region {
  const stances = bores.map(stanceOf).filter((s) => s !== null);
  if (stances.length === 0) return section;
  const [outer, ...holes] = loopsOf(section).map((loop) => turned(loop, stances));
  return { outer: outer as Loop, holes };
}

function turned(loop: Loop, stances: readonly BoreStance[]): Loop {
  const [first] = loop;
  if (first?.kind !== "arc" || !isCircle(loop, first)) return loop;
  const clear = placeWhere(first, stances, (beside) => beside > 0);
  const place = clear ?? placeWhere(first, stances, () => true) ?? 0;
  if (place === 0 && loop.length === 2) return loop;
  const sweep = Math.sign(first.sweep) * Math.PI;
  const start = first.start + place;
  return [
    { ...first, start, sweep },
    { ...first, start: start + sweep, sweep },
  ];
}

function isCircle(loop: Loop, first: ArcSegment): boolean {
  return loop.every(
    (s) =>
      s.kind === "arc" &&
      s.radius === first.radius &&
      s.centre[0] === first.centre[0] &&
      s.centre[1] === first.centre[1],
  );
}

/** Turn to the first place where both splits are off every bore's rim, on a side of it that `on` takes; radians. */
function placeWhere(
  { centre, radius, start }: ArcSegment,
  stances: readonly BoreStance[],
  on: (besideRim: number) => boolean,
): number | null {
  const isFree = (angle: number): boolean => {
    const [u, v] = [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    return stances.every(({ along, h, surface }) => {
      const beside = Math.abs(acrossBore(along, u, v) - h) - surface.radius;
      return Math.abs(beside) > BESIDE * radius && on(beside);
    });
  };
  for (let k = 0; k < PLACES; k++) {
    const place = (k * Math.PI) / PLACES;
    if (isFree(start + place) && isFree(start + place + Math.PI)) return place;
  }
  return null;
}
