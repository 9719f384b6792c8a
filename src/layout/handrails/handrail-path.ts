/**
 * Where a handrail's runs start and end: at breaks in elevation, at plan corners of its own line, at its two ends.
 *
 * Its line is the guard's, moved `inward` across: at a plan corner of angle α it turns inward·tan(α/2) before the guard's corner
 * and goes on as far after it where the guard turns towards the walking side, later where it turns away (plan geometry of two
 * parallel offsets). x runs along the guard; millimetres.
 *
 * @packageDocumentation
 */
import { PARALLEL_SINE } from "../../kernel/tolerance.js";
import { bisectorShift, tanDegrees } from "../angles.js";
import type { Place } from "../part.js";
import type { RailEdge } from "../rails/path-break.js";
import type { PathCorner, RailRun } from "../rails/rail-path.js";
import type { RunLine } from "../rails/rail-runs.js";
import type { SectionExtent } from "../section-extent.js";
import type { SiteCorner } from "../site/site.js";
import type { HandrailLines } from "./handrail-lines.js";

type Edges = Readonly<Record<RailEdge, number>>;

/** The path of a handrail. */
export interface HandrailPath {
  readonly runs: readonly RailRun[];
  /** In elevation: indices of the runs, and x of each line's break. */
  readonly breaks: readonly { readonly runs: readonly [number, number]; readonly x: Edges }[];
  readonly corners: readonly PathCorner[];
}

const EDGES = ["top", "axis", "underside"] as const;

/** How far before the guard's corner the offset line turns; negative: after it. */
export function cornerShift(place: Place, corner: SiteCorner, inward: number): number {
  const towards = place.side === "left" ? -corner.angle : corner.angle;
  return inward * tanDegrees(towards / 2);
}

function meet(lower: RunLine, upper: RunLine, extent: SectionExtent): Edges {
  const climb = lower.slope - upper.slope;
  const rise = upper.z0 - lower.z0;
  // Two legs in one line: they meet anywhere, so at the leg's start.
  const x = Math.abs(climb) <= PARALLEL_SINE ? upper.ground.x[0] : rise === 0 ? 0 : rise / climb;
  const shift = bisectorShift(lower.slope, upper.slope);
  return { top: x, axis: x + extent.above * shift, underside: x + extent.depth * shift };
}

const same = (x: number): Edges => ({ top: x, axis: x, underside: x });

/**
 * The path of a handrail.
 *
 * @param lines - from `handrailLines`
 * @param ends - x of its two ends: plumb cuts, the same for every line
 */
export function handrailPath(
  place: Place,
  { lines }: Pick<HandrailLines, "lines">,
  ends: readonly [number, number],
  extent: SectionExtent,
  inward: number,
): HandrailPath {
  const breaks: HandrailPath["breaks"][number][] = [];
  const starts: Edges[] = [same(ends[0])];
  const stops: Edges[] = [];
  lines.slice(1).forEach((upper, i) => {
    const lower = lines[i] as RunLine;
    const corner = place.site.corners[lower.reach];
    if (upper.reach === lower.reach || corner === undefined) {
      const x = meet(lower, upper, extent);
      breaks.push({ runs: [i, i + 1], x });
      starts.push(x);
      stops.push(x);
      return;
    }
    const shift = cornerShift(place, corner, inward);
    stops.push(same(corner.x - shift));
    starts.push(same(corner.x + shift));
  });
  stops.push(same(ends[1]));
  const runs = lines.map((line, i): RailRun => {
    const secant = Math.hypot(1, line.slope);
    const z0 = {
      top: line.z0,
      axis: line.z0 - extent.above * secant,
      underside: line.z0 - extent.depth * secant,
    };
    const reach = (edge: RailEdge) => [(starts[i] as Edges)[edge], (stops[i] as Edges)[edge]] as const;
    const [top, axis, underside] = EDGES.map(reach) as [
      readonly [number, number],
      readonly [number, number],
      readonly [number, number],
    ];
    return { ...line, z0, x: { top, axis, underside } };
  });
  const corners = runs.slice(1).flatMap((upper, i): PathCorner[] => {
    const lower = runs[i] as RailRun;
    const corner = place.site.corners[lower.reach];
    if (upper.reach === lower.reach || corner === undefined) return [];
    const step =
      upper.z0.axis + upper.slope * upper.x.axis[0] - (lower.z0.axis + lower.slope * lower.x.axis[1]);
    return [{ site: corner, runs: [i, i + 1], step }];
  });
  return { runs, breaks, corners };
}
