/**
 * The straight runs of a rail, reach by reach, as lines without ends: who comes after whom, and how steep and how high.
 *
 * One run a leg; two level legs in one line are one run. At a `level` corner a rake turns level before it turns in plan, so a
 * short level run stands between the rake and the corner; so it does where a corner post stands more than one going off. A run's heights are plumb, to the top edge; millimetres.
 *
 * @packageDocumentation
 */
import { NODE_MM } from "../../kernel/tolerance.js";
import type { BreakDesign, LegDesign, TurnDesign } from "../document/design.js";
import { legTops } from "../site/leg-tops.js";
import type { LegGround, Site } from "../site/site.js";
import type { PlacedSplice } from "./placed-splice.js";

/** A run before its ends are known: top edge z = z0 + slope·x. */
export interface RunLine {
  /** Of the members made of it: the leg's id, with `-corner` or `-start` for a level piece at a corner. */
  readonly id: string;
  readonly leg: LegDesign;
  readonly ground: LegGround;
  readonly reach: number;
  readonly slope: number;
  readonly z0: number;
  /** True for the short level piece at a corner. */
  readonly stub: boolean;
  /** How the rail gets here from the run before it in the same reach. */
  readonly from: BreakDesign;
  /** Of a rail under a cap: what of the cap lies below the cap's axis. */
  readonly capBelow?: number;
  /** Where it is cut in two, in order; filled in for the rail that is spliced. */
  readonly splices: readonly PlacedSplice[];
}

const MEET: BreakDesign = { type: "meet", at: 0 };

/** The rake's own line, or the straight compromise that its neighbours ask for. */
function rakeLine(site: Site, i: number, tops: readonly number[]): { slope: number; z0: number } {
  const ground = site.legs[i] as LegGround;
  const [before, after] = [site.legs[i - 1], site.legs[i + 1]];
  const own = { slope: ground.slope, z0: ground.groundZ + (tops[i] ?? 0) };
  const low = before?.reach === ground.reach && ground.leg.break.type === "compromise";
  const high = after?.reach === ground.reach && after.leg.break.type === "compromise";
  if (!(low || high) || ground.flight === undefined) return own;
  const at = (x: number, z: number) => ({ x, z });
  const [from, to] = [ground.flight.nosings[0]?.x ?? 0, ground.x[1]];
  const foot = to + ground.flight.line.footX;
  const start =
    low && before ? at(foot, before.groundZ + (tops[i - 1] ?? 0)) : at(from, own.z0 + own.slope * from);
  const end =
    high && after
      ? at(to, after.groundZ + after.slope * to + (tops[i + 1] ?? 0))
      : at(to, own.z0 + own.slope * to);
  const slope = (end.z - start.z) / (end.x - start.x);
  return { slope, z0: end.z - slope * end.x };
}

/** Plumb heights over the legs' own lines; undefined where the rail is not on a leg. */
type Heights = readonly (number | undefined)[];

/** The level piece that a rake needs before (or after) a `level` corner, at a height over the corner's ground. */
function stubOf(site: Site, i: number, corner: number, side: "below" | "above", height: number): RunLine {
  const ground = site.legs[i] as LegGround;
  const { groundZ } = site.corners[corner] as Site["corners"][number];
  return {
    id: `${ground.leg.id}-${side === "below" ? "corner" : "start"}`,
    leg: ground.leg,
    ground: { ...ground, slope: 0, groundZ },
    reach: side === "below" ? corner : corner + 1,
    slope: 0,
    z0: groundZ + height,
    stub: true,
    from: MEET,
    splices: [],
  };
}

/** Which level leg a short piece beside a corner belongs to: the one beyond the corner, between two flights the lower one. */
function stubLeg(site: Site, flight: number, side: "below" | "above"): number {
  const other = side === "below" ? flight + 1 : flight - 1;
  return site.legs[other]?.flight === undefined ? other : Math.min(flight, other);
}

/** True for a corner post so far from the flight that its rake turns level first: more than one going from the nosing. */
function farOff(
  corner: TurnDesign["corner"] | undefined,
  away: number | undefined,
  flight: NonNullable<LegGround["flight"]>,
): boolean {
  return corner === "post" && (away ?? 0) > flight.line.going + NODE_MM;
}

/** A run parallel to its leg. */
function parallel({ slope, groundZ }: LegGround, height: number): { slope: number; z0: number } {
  return { slope, z0: groundZ + height };
}

/**
 * The runs of one leg: a short level piece after a corner, the leg itself, a short level piece before a corner.
 *
 * @param heights - of the rail over every leg
 * @param lineOf - the run's own line where it is not parallel to the leg
 */
export function runsOfLeg(site: Site, i: number, heights: Heights, lineOf = parallel): RunLine[] {
  const ground = site.legs[i] as LegGround;
  const { leg, reach, flight } = ground;
  const height = heights[i];
  if (height === undefined) return [];
  const [before, after] = [leg.turn?.corner, site.legs[i + 1]?.leg.turn?.corner];
  const stub = (side: "below" | "above"): RunLine[] => {
    const of = stubLeg(site, i, side);
    const corner = site.corners.findIndex((own) => own.legs[side === "below" ? 0 : 1] === i);
    const high = heights[of];
    return high === undefined ? [] : [stubOf(site, of, corner, side, high)];
  };
  const start = flight !== undefined && (before === "level" || farOff(before, leg.turn?.before, flight));
  const from = before === undefined || start ? leg.break : MEET;
  const upper = site.legs[i + 1]?.leg;
  const end = flight !== undefined && (after === "level" || farOff(after, upper?.turn?.past, flight));
  const reached = upper?.along === "stair" ? MEET : (upper?.break ?? MEET);
  return [
    ...(start ? stub("above") : []),
    { ...{ id: leg.id, leg, ground, reach, ...lineOf(ground, height), stub: false, from, splices: [] } },
    ...(end ? stub("below").map((own) => ({ ...own, from: reached })) : []),
  ];
}

/** All runs of the top edge, from the foot upward, and the height in fact laid over each leg (see `legTops`). */
export function railRuns(site: Site): {
  readonly runs: readonly RunLine[];
  readonly tops: readonly number[];
} {
  const tops = legTops(site);
  const lineOf = (ground: LegGround, height: number) =>
    ground.flight === undefined ? parallel(ground, height) : rakeLine(site, ground.index, tops);
  return { runs: oneLineOneRun(site.legs.flatMap((_, i) => runsOfLeg(site, i, tops, lineOf))), tops };
}

/** Runs that lie in one line are one. */
export function oneLineOneRun(lines: readonly RunLine[]): RunLine[] {
  const runs: RunLine[] = [];
  for (const next of lines) {
    const last = runs.at(-1);
    const one = last?.reach === next.reach && last.slope === next.slope && last.z0 === next.z0;
    if (!one) runs.push(next);
  }
  return runs;
}
