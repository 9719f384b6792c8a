/**
 * Are bores clear of the ends of their bar and of each other?
 *
 * Each is asked twice: by bounds that cost next to nothing and settle nearly every case, then exactly. Against an end the
 * least length of material left is searched over the whole wall of the bore, not its rims alone: a cope bulges into a bar
 * between them. Two bores are taken as round-ended: as far apart as the stretches of their axes, less both radii.
 *
 * @packageDocumentation
 */
import { type BoreWall, type Opening, sideOf, tauAt, tauOf } from "./bore.js";
import { acrossBore, type BoreStance, borePoint } from "./bore-stance.js";
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import { type CompiledEnd, endAt } from "./end-compile.js";
import type { Region } from "./region.js";
import { segmentDistance } from "./segment-distance.js";
import { LEFT_BESIDE_BORE_MM } from "./tolerance.js";
import { addScaled, type Vec3 } from "./vec.js";

/** A wall with the stretch of the bore it takes up. */
export interface PlacedWall {
  readonly wall: BoreWall;
  /** Range of τ. */
  readonly range: readonly [number, number];
  /** Reach along the bar: no point of the wall lies beyond, nor of the round-ended stretch. */
  readonly low: number;
  readonly high: number;
  /** Of the axis: no point of the wall lies beyond the squares through its ends. */
  readonly stretch: readonly [Vec3, Vec3];
}

/**
 * Finds the stretch of a wall from the range of τ on its two openings.
 *
 * @param like - a wall with the same openings, if there is one
 */
export function placeWall(section: Region, wall: BoreWall, like?: PlacedWall): PlacedWall {
  const { stance } = wall;
  const { surface, rise, reach, s } = stance;
  const from = like ? like.range[0] : rangeOf(section, wall.entry, stance)[0];
  const to = like ? like.range[1] : rangeOf(section, wall.exit, stance)[1];
  const { frame, radius } = surface;
  // One millimetre of τ is reach / radius of the axis; a rim leaves the square through its middle by r·|tan ρ|.
  const tilt = radius * Math.abs(rise);
  const at = (tau: number, more: number): Vec3 =>
    addScaled(frame.origin, frame.z, (tau * reach) / radius + more);
  const stretch = [at(from, -tilt), at(to, tilt)] as const;
  const [z0, z1] = [stretch[0][2], stretch[1][2]];
  const [s0, s1] = [s + from * rise, s + to * rise];
  return {
    wall,
    range: [from, to],
    low: Math.min(s0 - reach, s1 - reach, z0 - radius, z1 - radius),
    high: Math.max(s0 + reach, s1 + reach, z0 + radius, z1 + radius),
    stretch,
  };
}

/** Least and greatest τ of an opening. */
function rangeOf(section: Region, opening: Opening, stance: BoreStance): readonly [number, number] {
  const { radius } = stance.surface;
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let from = stance.h - radius;
  for (const { segment, root, to } of opening.parts) {
    const side = sideOf(section, opening.loop, segment);
    const end = Math.min(to, stance.h + radius);
    const apex = side.kind === "arc" ? acrossBore(stance.along, ...side.centre) : from;
    for (const h of [from, end, Math.min(end, Math.max(from, apex))]) {
      const tau = tauAt(side, root, stance, h);
      least = Math.min(least, tau);
      greatest = Math.max(greatest, tau);
    }
    from = end;
  }
  return [least, greatest];
}

/** A wall that leaves no material to an end. */
export function meetsEnd(
  section: Region,
  placed: PlacedWall,
  end: CompiledEnd,
  bound: number,
): Diagnostic | null {
  const far = end.dir === 1 ? placed.high : -placed.low;
  if (bound - far > LEFT_BESIDE_BORE_MM) return null;
  const left = leftToEnd(section, placed.wall, end);
  if (left > LEFT_BESIDE_BORE_MM) return null;
  const { bore } = placed.wall;
  return diagnostic({
    code: "bore-meets-end",
    bore,
    end: end.dir === 1 ? 1 : 0,
    message: `Bore ${bore} leaves ${left.toFixed(3)} mm to an end cut; a hole must lie wholly in the side.`,
    hint: "Move the bore away from the end, or cut the end first and leave the hole out.",
    values: { left },
  });
}

/** Places looked at round a bore and through its wall, and halvings of the search from the best of them. */
const ROUND = 24;
const THROUGH = 8;
const HALVINGS = 40;

/** Least material along the bar between a wall of a bore and an end: a grid, then a search that halves its step. */
function leftToEnd(section: Region, wall: BoreWall, end: CompiledEnd): number {
  const { stance, entry, exit } = wall;
  const left = (psi: number, share: number): number => {
    const h = stance.h + stance.surface.radius * Math.sin(psi);
    const [a, b] = [tauOf(section, entry, stance, h), tauOf(section, exit, stance, h)];
    const [u, v, s] = borePoint(stance, psi, a + share * (b - a));
    return endAt(end, u, v).out - end.dir * s;
  };
  let [best, psi, share] = [Number.POSITIVE_INFINITY, 0, 0];
  const look = (p: number, f: number): boolean => {
    const value = left(p, f);
    if (!(value < best)) return false;
    [best, psi, share] = [value, p, f];
    return true;
  };
  for (let i = 0; i < ROUND; i++) {
    for (let j = 0; j <= THROUGH; j++) look((2 * Math.PI * i) / ROUND, j / THROUGH);
  }
  let [dp, df] = [Math.PI / ROUND, 0.5 / THROUGH];
  for (let k = 0; k < HALVINGS; ) {
    const moved =
      look(psi + dp, share) ||
      look(psi - dp, share) ||
      look(psi, Math.min(1, share + df)) ||
      look(psi, Math.max(0, share - df));
    if (moved) continue;
    [dp, df] = [dp / 2, df / 2];
    k++;
  }
  return best;
}

/** Two walls of different bores that leave no material between them. */
export function meetsBore(a: PlacedWall, b: PlacedWall): Diagnostic | null {
  if (a.wall.bore === b.wall.bore) return null;
  const radii = a.wall.stance.surface.radius + b.wall.stance.surface.radius;
  if (Math.max(a.low - b.high, b.low - a.high) > LEFT_BESIDE_BORE_MM) return null;
  const left = segmentDistance(...a.stretch, ...b.stretch).distance - radii;
  if (left > LEFT_BESIDE_BORE_MM) return null;
  return diagnostic({
    code: "bore-meets-bore",
    bore: a.wall.bore,
    message: `Bores ${a.wall.bore} and ${b.wall.bore} run into each other or leave only ${left.toFixed(3)} mm between them.`,
    hint: "Move one of the two bores along the bar.",
    values: { left, other: b.wall.bore },
  });
}
