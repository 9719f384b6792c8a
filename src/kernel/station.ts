/**
 * Stations: the places across a header where a branch and the header line up.
 *
 * Equal tubes and equal widths are ordinary input, and 'equal' must be one decision, not several. The header's breaks
 * and silhouettes and the branch's own extremes in h are clustered within `STATION_MM`; the profile used for this one
 * contact is moved onto the branch's value, the header itself is not edited.
 *
 * @packageDocumentation
 */
import type { Profile, ProfilePiece } from "./profile.js";
import { loopsOf, pointOn, type Region, type Segment } from "./region.js";
import { PARALLEL_SINE, ROUNDING_MM, STATION_MM } from "./tolerance.js";

/** Values of t in [0, 1] where a segment is farthest or nearest in the direction (hu, hv): none on a straight line. */
export function extremesOf(segment: Segment, hu: number, hv: number): number[] {
  if (segment.kind === "line") return [];
  const out: number[] = [];
  const phi = Math.atan2(hv, hu);
  for (let k = -4; k <= 4; k++) {
    const t = (phi + k * Math.PI - segment.start) / segment.sweep;
    if (t > -PARALLEL_SINE && t < 1 + PARALLEL_SINE) out.push(Math.min(1, Math.max(0, t)));
  }
  return out;
}

/** Every h at which a side of the section begins, ends or turns back, in rising order. */
export function branchStations(section: Region, hu: number, hv: number, h0: number): number[] {
  const out: number[] = [];
  for (const loop of loopsOf(section)) {
    for (const s of loop) {
      const [u, v] = pointOn(s, 0);
      out.push(h0 + hu * u + hv * v);
      for (const t of extremesOf(s, hu, hv)) {
        const k = s.kind === "arc" ? s.radius : 0;
        const angle = s.kind === "arc" ? s.start + t * s.sweep : 0;
        const sign = hu * Math.cos(angle) + hv * Math.sin(angle) < 0 ? -1 : 1;
        if (s.kind === "arc") out.push(h0 + hu * s.centre[0] + hv * s.centre[1] + sign * k);
      }
    }
  }
  return out.sort((a, b) => a - b);
}

/** The profile with its breaks and silhouettes moved onto stations of the branch they equal. */
export function snapProfile(profile: Profile, stations: readonly number[]): Profile {
  const near = (h: number): number => {
    // Where several agree the outermost is the one: beyond it there is no branch to hang off.
    for (const s of [stations[0], stations.at(-1)]) {
      if (s !== undefined && Math.abs(s - h) < STATION_MM) return s;
    }
    let best = h;
    let gap: number = STATION_MM;
    for (const s of stations) {
      if (Math.abs(s - h) < gap) {
        gap = Math.abs(s - h);
        best = s;
      }
    }
    return best;
  };
  const shifts = profile.breaks.map(() => 0);
  const pieces = profile.pieces.map((p, i): ProfilePiece => {
    if (p.kind === "flat") return p;
    const [lo, hi] = [p.h - p.radius, p.h + p.radius];
    // A silhouette counts where the piece reaches it; an arc that a flat takes over from before has none there.
    const [from, to] = [profile.breaks[i] as number, profile.breaks[i + 1] as number];
    const moveLo = from - lo > ROUNDING_MM ? 0 : near(lo) - lo;
    const moveHi = hi - to > ROUNDING_MM ? 0 : near(hi) - hi;
    if (moveLo !== 0 && moveHi !== 0)
      return { ...p, h: (near(lo) + near(hi)) / 2, radius: (near(hi) - near(lo)) / 2 };
    if (moveLo === 0 && moveHi === 0) return p;
    // A corner moves along the flat it runs into, and their break with it, so that the two stay tangent; a circle without one grows or shrinks.
    const beside = profile.pieces[moveHi === 0 ? i + 1 : i - 1];
    if (beside?.kind === "flat") {
      shifts[moveHi === 0 ? i + 1 : i] = moveLo + moveHi;
      return { ...p, h: p.h + moveLo + moveHi, m: p.m + (moveLo + moveHi) * beside.slope };
    }
    return { ...p, radius: moveHi === 0 ? p.h - near(lo) : near(hi) - p.h };
  });
  const jumps = profile.jumps.map((j) => ({ ...j, h: near(j.h) }));
  const breaks = profile.breaks.map((h, k) => near(h + (shifts[k] as number)));
  return { breaks, pieces, jumps };
}
