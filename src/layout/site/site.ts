/**
 * Where is every leg, in one coordinate along the guard and one upward?
 *
 * x runs along the guard from its foot to its far end, unrolled where the guard turns in plan; its origin, and that of z, is
 * the top nosing of the last flight. Between two plan turns the guard stands in one plumb plane: a reach. Millimetres.
 *
 * @packageDocumentation
 */
import { tanDegrees } from "../angles.js";
import type { Design, LegDesign, TurnDesign } from "../document/design.js";
import { stepLine } from "./measured-line.js";
import type { Nosing, NosingLine } from "./nosing-line.js";
import { type Plan, plansOf } from "./plan.js";

/** A leg in its place: the line its heights are measured from is z = groundZ + slope·x. */
export interface LegGround {
  readonly leg: LegDesign;
  readonly index: number;
  /** Which reach it stands in. */
  readonly reach: number;
  readonly slope: number;
  readonly groundZ: number;
  /** From its lower to its upper end: nosings, corners, far ends; ±∞ where nothing says. */
  readonly x: readonly [number, number];
  /** Stair legs: nosings in this coordinate, and the flight's own line. */
  readonly flight?: {
    readonly line: NosingLine;
    readonly nosings: readonly Nosing[];
    readonly overhang: number;
  };
}

/** A plan turn. */
export interface SiteCorner {
  /** Of the guard's line. */
  readonly x: number;
  /** Legs before and after, as indices. */
  readonly legs: readonly [number, number];
  /** Height of the floor or landing at the corner. */
  readonly groundZ: number;
  /** Degrees, + to the left, as this guard turns. */
  readonly angle: number;
  readonly kind: TurnDesign["corner"];
}

/** The whole site. */
export interface Site {
  readonly legs: readonly LegGround[];
  readonly corners: readonly SiteCorner[];
  /** How each reach lies in plan; one more than the corners. */
  readonly plans: readonly Plan[];
  /** The last flight. */
  readonly main: NosingLine;
}

interface Walked {
  readonly x: readonly [number, number];
  readonly z: readonly [number, number];
  readonly line?: NosingLine;
}

/** How much of the guard lies between the far end of a leg and the start of the next: on both sides of a corner. */
const between = (next: LegDesign | undefined): number => (next?.turn?.past ?? 0) + (next?.turn?.before ?? 0);

/** Level or sloping ground from (x, z) on, `length` long (infinite where nothing says). */
function level(leg: LegDesign, x: number, z: number, length: number): Walked {
  return { x: [x, x + length], z: [z, z + (leg.slope === 0 ? 0 : length * tanDegrees(leg.slope))] };
}

/** Walks up: every leg from the one before, the first at (0, 0). Heights of a floor leg are taken from the flight after it. */
function walk(design: Design): Walked[] {
  let [x, z] = [0, 0];
  return design.legs.map((leg, i): Walked => {
    const next = design.legs[i + 1];
    let walked: Walked;
    if (leg.along === "stair" && leg.stair !== undefined) {
      const line = stepLine(leg.stair);
      const [low, top] = [line.nosings[0], line.nosings.at(-1)];
      const run = (top?.x ?? 0) - (low?.x ?? 0);
      walked = { x: [x, x + run], z: [z, z - line.floorZ], line };
    } else {
      // The first leg reaches back from where the next one starts.
      const first = i === 0 && next !== undefined;
      const length = leg.length ?? Number.POSITIVE_INFINITY;
      walked = first ? { x: [x - length, x], z: [z, z] } : level(leg, x, z, length);
      if (first && leg.slope !== 0) walked = { x: walked.x, z: [z - length * tanDegrees(leg.slope), z] };
    }
    x = walked.x[1] + between(next);
    z = walked.z[1];
    return walked;
  });
}

/** x is moved so that the top nosing of the last flight is the origin, without a sum where that flight stands alone. */
function moved(walked: Walked, by: { readonly x: number; readonly z: number }, main: boolean): Walked {
  const { line, x, z } = walked;
  if (main && line !== undefined) return { line, x: [line.nosings[0]?.x ?? 0, 0], z: [line.floorZ, 0] };
  return { ...walked, x: [x[0] - by.x, x[1] - by.x], z: [z[0] - by.z, z[1] - by.z] };
}

function flightOf(leg: LegDesign, { line, x, z }: Walked): LegGround["flight"] {
  if (line === undefined) return undefined;
  const nosings = line.nosings.map((own) => ({ ...own, x: x[1] + own.x, z: z[1] + own.z }));
  return { line, nosings, overhang: leg.stair?.overhang ?? 0 };
}

function groundOf(leg: LegDesign, index: number, reach: number, walked: Walked): LegGround {
  const { x, z, line } = walked;
  const flight = flightOf(leg, walked);
  const slope = line === undefined ? (leg.slope === 0 ? 0 : tanDegrees(leg.slope)) : line.slope;
  const known = Number.isFinite(x[0]) ? 0 : 1;
  const groundZ =
    line === undefined ? z[known] - (slope === 0 ? 0 : slope * x[known]) : z[1] + line.z0 - slope * x[1];
  return { leg, index, reach, slope, groundZ, x, ...(flight === undefined ? {} : { flight }) };
}

/**
 * The site of a design: legs, corners and plans.
 *
 * @param design - from `parseDesign`: at least one stair leg
 * @param mirrored - true for the right-hand guard of a pair: plan turns change their sign
 * @param y - of the guard's plane at the top nosing of the last flight, in the layout
 */
export function siteOf(design: Design, mirrored = false, y = 0): Site {
  const walked = walk(design);
  const last = design.legs.map((leg) => leg.along).lastIndexOf("stair");
  const by = { x: walked[last]?.x[1] ?? 0, z: walked[last]?.z[1] ?? 0 };
  const placed = walked.map((own, i) => moved(own, by, i === last));
  let reach = 0;
  const legs = placed.map((own, i) => {
    const leg = design.legs[i] as LegDesign;
    if (i > 0 && leg.turn !== undefined) reach += 1;
    return groundOf(leg, i, reach, own);
  });
  const corners = legs.flatMap((ground, i): SiteCorner[] => {
    const before = placed[i - 1];
    const { turn } = ground.leg;
    if (before === undefined || turn === undefined) return [];
    const angle = mirrored ? -turn.angle : turn.angle;
    const x = before.x[1] + turn.past;
    return [{ x, legs: [i - 1, i], groundZ: before.z[1], angle, kind: turn.corner }];
  });
  const main = placed[last]?.line ?? stepLine(design.stair);
  return { legs, corners, plans: plansOf(corners, legs[last]?.reach ?? 0, y), main };
}
