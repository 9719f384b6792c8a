/**
 * Where round sides are split, so that no bore opens across a split.
 *
 * A full circle is swept as two or three faces. Where the lines between them run is free: they are turned to places that
 * no bore reaches.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { type Loop, loopsOf, type Region, type Segment } from "./region.js";

/** Candidate places for a split, one every five degrees. */
const PLACES = 72;

/** The same section with the splits of its round loops clear of the bores. */
export function splitsClearOf(section: Region, bores: readonly Bore[]): Region {
  if (bores.length === 0) return section;
  const [outer, ...holes] = loopsOf(section).map((loop) => turned(loop, bores));
  return { outer: outer as Loop, holes };
}

function turned(loop: Loop, bores: readonly Bore[]): Loop {
  const first = loop[0] as Segment;
  if (first.kind !== "arc" || !isCircle(loop, first)) return loop;
  const free = freePlaces(first, bores);
  const cuts = splits(free);
  if (!cuts) return loop;
  const sense = first.sweep > 0 ? 1 : -1;
  const angles = cuts.map((k) => (2 * Math.PI * k) / PLACES);
  const walk = sense > 0 ? angles : [...angles].reverse();
  return walk.map((start, i): Segment => {
    const next = walk[(i + 1) % walk.length] as number;
    const turn = 2 * Math.PI;
    const size = (((sense * (next - start)) % turn) + turn) % turn;
    return { ...first, start, sweep: sense * size };
  });
}

function isCircle(loop: Loop, first: Segment & { kind: "arc" }): boolean {
  return loop.every(
    (s) =>
      s.kind === "arc" &&
      s.radius === first.radius &&
      s.centre[0] === first.centre[0] &&
      s.centre[1] === first.centre[1],
  );
}

/** For every candidate place, whether it is farther from every bore than the bore is wide. */
function freePlaces({ centre, radius }: Segment & { kind: "arc" }, bores: readonly Bore[]): boolean[] {
  return Array.from({ length: PLACES }, (_, k) => {
    const angle = (2 * Math.PI * k) / PLACES;
    const [u, v] = [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    return bores.every((bore) => {
      const [du, dv] = bore.direction;
      const size = Math.hypot(du, dv);
      if (size === 0) return true;
      const off = Math.abs((u - bore.point[0]) * dv - (v - bore.point[1]) * du) / size;
      return off > bore.diameter / 2 + 0.02 * radius;
    });
  });
}

/** Two opposite free places, or three with no gap above half a turn; null when the bores leave none. */
function splits(free: readonly boolean[]): number[] | null {
  const half = PLACES / 2;
  const two = free.findIndex((ok, k) => k < half && ok && free[k + half]);
  if (two >= 0) return [two, two + half];
  const open = free.flatMap((ok, k) => (ok ? [k] : []));
  for (const a of open) {
    for (const b of open) {
      if (b <= a || b - a > half) continue;
      const c = open.find((x) => x > b && x - b <= half && a + PLACES - x <= half);
      if (c !== undefined) return [a, b, c];
    }
  }
  return null;
}
