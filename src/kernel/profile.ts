/**
 * What a straight header looks like along a branch: its first-hit profile.
 *
 * Seen along the header's axis, with h across the header and m towards where the branch goes on, the fibres of the
 * branch come from low m. The first point each meets is the lower envelope m*(h) of the header's outer loop: a chain of
 * straight and circular pieces over intervals of h. Round and rectangular headers are one case.
 *
 * @packageDocumentation
 */
import { type Loop, pointOn, reverseSegment, type Segment, tangentOn } from "./region.js";
import { ROUNDING_MM, ROUNDING_SHARE, STATION_MM, STEP_MM } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/**
 * A piece of a profile over an interval of h: a flat through the point (h, m) of it, or a circular arc's near (−) or far (+)
 * side. A flat is told from a point of its own, since a steep one carried on to h = 0 would be kilometres away.
 */
export type ProfilePiece =
  | {
      readonly kind: "flat";
      readonly h: number;
      readonly m: number;
      readonly slope: number;
      readonly segment: number;
    }
  | {
      readonly kind: "round";
      readonly h: number;
      readonly m: number;
      readonly radius: number;
      readonly root: 1 | -1;
      readonly segment: number;
    };

/** Pieces between consecutive breaks: `breaks` has one entry more than `pieces`. */
export interface Profile {
  readonly breaks: readonly number[];
  readonly pieces: readonly ProfilePiece[];
  /** Breaks at which the near side steps: beside a channel's flange, at the toe of an angle. */
  readonly jumps: readonly ProfileJump[];
}

/** A step of the near side, millimetres. */
export interface ProfileJump {
  /** Where across the header. */
  readonly h: number;
  readonly step: number;
}

/** m*(h) of one piece. */
export function pieceHeight(piece: ProfilePiece, h: number): number {
  if (piece.kind === "flat") return piece.m + piece.slope * (h - piece.h);
  const d = h - piece.h;
  return piece.m + piece.root * Math.sqrt(Math.max(0, (piece.radius - d) * (piece.radius + d)));
}

/** A loop seen in (h, m): h = u·hu + v·hv, m = u·mu + v·mv. The map may turn the loop over; the sides stay the same. */
export function projectLoop(loop: Loop, h: Vec2, m: Vec2): Segment[] {
  const at = (p: Vec2): Vec2 => [p[0] * h[0] + p[1] * h[1], p[0] * m[0] + p[1] * m[1]];
  const flips = h[0] * m[1] - h[1] * m[0] < 0;
  return loop.map((s): Segment => {
    if (s.kind === "line") return { ...s, from: at(s.from), to: at(s.to) };
    const start = at([Math.cos(s.start), Math.sin(s.start)]);
    const angle = Math.atan2(start[1], start[0]);
    return { ...s, centre: at(s.centre), start: angle, sweep: flips ? -s.sweep : s.sweep };
  });
}

interface Candidate {
  readonly lo: number;
  readonly hi: number;
  readonly piece: ProfilePiece;
}

/** Parts of a segment that face low m and are single-valued in h. `outward` is +1 when low m is on the segment's right. */
function candidatesOf(segment: Segment, index: number, outward: 1 | -1): Candidate[] {
  const ends = (a: Vec2, b: Vec2): [number, number] => (a[0] <= b[0] ? [a[0], b[0]] : [b[0], a[0]]);
  if (segment.kind === "line") {
    const [dh, dm] = tangentOn(segment, 0);
    // Walking towards +h with the material on the left means that low m is outside. A side that moves by less than a
    // station runs along the fibres.
    if (dh * outward <= STATION_MM) return [];
    const [lo, hi] = ends(segment.from, segment.to);
    const [h, m] = segment.from;
    return [{ lo, hi, piece: { kind: "flat", h, m, slope: dm / dh, segment: index } }];
  }
  const out: Candidate[] = [];
  const forward = segment.sweep > 0 ? segment : (reverseSegment(segment) as typeof segment);
  // Where the arc turns back in h: at angles 0 and π.
  const cuts = [0];
  for (let k = -2; k <= 4; k++) {
    const t = (k * Math.PI - forward.start) / forward.sweep;
    if (t > ROUNDING_SHARE && t < 1 - ROUNDING_SHARE) cuts.push(t);
  }
  cuts.push(1);
  cuts.sort((a, b) => a - b);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [ta, tb] = [cuts[i] as number, cuts[i + 1] as number];
    const mid = forward.start + ((ta + tb) / 2) * forward.sweep;
    const root = Math.sin(mid) < 0 ? -1 : 1;
    // Near sides bulge to low m on a convex arc; far sides face low m only on a hollow one.
    const convex = segment.sweep * outward > 0;
    if (convex !== (root === -1)) continue;
    const [lo, hi] = ends(pointOn(forward, ta), pointOn(forward, tb));
    out.push({
      lo,
      hi,
      piece: {
        kind: "round",
        h: segment.centre[0],
        m: segment.centre[1],
        radius: segment.radius,
        root,
        segment: index,
      },
    });
  }
  return out;
}

/** Twice the signed area of a chain of segments, by its corners and bulges' signs: only the sign is used. */
function turning(loop: readonly Segment[]): number {
  let sum = 0;
  for (const s of loop) {
    for (let i = 0; i < 8; i++) {
      const [a, b] = [pointOn(s, i / 8), pointOn(s, (i + 1) / 8)];
      sum += a[0] * b[1] - b[0] * a[1];
    }
  }
  return sum;
}

/**
 * The first-hit profile of a loop already seen in (h, m).
 *
 * @param loop - closed chain in (h, m), either sense
 * @returns the profile; where the near side steps, as at a channel's or an angle's edge, the step is in `jumps`
 */
export function firstHitProfile(loop: readonly Segment[]): Profile {
  const outward = turning(loop) > 0 ? 1 : -1;
  const candidates = loop.flatMap((s, i) => candidatesOf(s, i, outward));
  const marks = [...new Set(candidates.flatMap((c) => [c.lo, c.hi]))].sort((a, b) => a - b);
  const breaks: number[] = [];
  for (const h of marks) {
    if (breaks.length === 0 || h - (breaks[breaks.length - 1] as number) > ROUNDING_MM) breaks.push(h);
  }
  const outBreaks: number[] = [breaks[0] as number];
  const pieces: ProfilePiece[] = [];
  const jumps: ProfileJump[] = [];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const [lo, hi] = [breaks[i] as number, breaks[i + 1] as number];
    const mid = (lo + hi) / 2;
    let best: ProfilePiece | null = null;
    for (const c of candidates) {
      if (mid < c.lo || mid > c.hi) continue;
      if (best === null || pieceHeight(c.piece, mid) < pieceHeight(best, mid)) best = c.piece;
    }
    if (best === null) continue;
    const last = pieces[pieces.length - 1];
    if (last && last.segment === best.segment && last.kind === best.kind) {
      outBreaks[outBreaks.length - 1] = hi;
      continue;
    }
    const step = last ? Math.abs(pieceHeight(last, lo) - pieceHeight(best, lo)) : 0;
    if (step > STEP_MM) jumps.push({ h: lo, step });
    pieces.push(best);
    outBreaks.push(hi);
  }
  return { breaks: outBreaks, pieces: mergeRounds(outBreaks, pieces), jumps };
}

/** Two half arcs of one circle are one piece. */
function mergeRounds(breaks: number[], pieces: ProfilePiece[]): ProfilePiece[] {
  const out: ProfilePiece[] = [];
  let w = 0;
  for (const [i, p] of pieces.entries()) {
    const last = out[out.length - 1];
    const same =
      last?.kind === "round" &&
      p.kind === "round" &&
      last.root === p.root &&
      Math.abs(last.h - p.h) < ROUNDING_MM &&
      Math.abs(last.m - p.m) < ROUNDING_MM &&
      Math.abs(last.radius - p.radius) < ROUNDING_MM;
    if (same) {
      breaks[w] = breaks[i + 1] as number;
      continue;
    }
    out.push(p);
    w++;
    breaks[w] = breaks[i + 1] as number;
  }
  breaks.length = w + 1;
  return out;
}
