/**
 * What a plan corner asks of the rails that turn there, and what it makes of them.
 *
 * Rails that are mitred in plan must meet: their axes at the corner at one height. The level piece before a corner is measured on
 * its shortest edge: less the break's and the corner's miters. A direct corner of plumb-sided tube twists (see `compoundMiter`).
 * Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { CORNER_STEP_MM } from "../../kernel/tolerance.js";
import { tanDegrees } from "../angles.js";
import type { Place } from "../part.js";
import type { CornerReport } from "../report-types.js";
import { sayLength } from "../say-length.js";
import type { SectionExtent } from "../section-extent.js";
import type { SiteCorner } from "../site/site.js";
import { cornerTwist } from "./corner-rolls.js";
import { edgeZ, type PathCorner, type RailPath, type RailRun } from "./rail-path.js";

function runsAt(path: RailPath, corner: PathCorner): readonly [RailRun, RailRun] {
  return [path.runs[corner.runs[0]] as RailRun, path.runs[corner.runs[1]] as RailRun];
}

/** Shortest edge of a level piece that is mitred to a rake at one end and turns in plan at the other. */
function shortestEdge(run: RailRun, extent: SectionExtent, corner: SiteCorner): number {
  const plan = Math.min(...Object.values(run.x).map(([from, to]) => to - from));
  return plan - extent.halfWidth * tanDegrees(Math.abs(corner.angle) / 2);
}

/** The corners of a path, for the report. */
export function cornerReports(path: RailPath, extent: SectionExtent): CornerReport[] {
  return path.corners.map((corner): CornerReport => {
    const [lower, upper] = runsAt(path, corner);
    const { x, angle, kind } = corner.site;
    const edges = [lower, upper]
      .filter((run) => run.stub)
      .map((run) => shortestEdge(run, extent, corner.site));
    const top = (run: RailRun) => edgeZ(run, "top", x) - corner.site.groundZ;
    return {
      ...{ kind, x, turn: angle, heightBefore: top(lower), heightAfter: top(upper) },
      twist: kind === "post" ? 0 : cornerTwist(lower, upper, angle),
      ...(edges.length === 0 ? {} : { shortestEdge: Math.min(...edges) }),
    };
  });
}

function missed(place: Place, corner: PathCorner, upper: RailRun): Diagnostic[] {
  if (Math.abs(corner.step) <= CORNER_STEP_MM) return [];
  const leg = upper.leg.id;
  const needed = upper.leg.top - corner.step;
  const { design } = place;
  const inUnit = design.unit === "in" ? `${(needed / 25.4).toFixed(3)} in` : `${needed.toFixed(2)} mm`;
  const values = { step: corner.step, needed };
  return [
    diagnostic({
      code: "corner-rails-miss",
      path: `legs[${corner.site.legs[1]}].turn`,
      message: `Corner before the ${leg}: expected both rails' centrelines at one height, got a step of ${sayLength(corner.step)}.`,
      hint: `Use a corner post, or make the height over the ${leg} ${inUnit}, or change the height before the corner by as much the other way.`,
      values,
    }),
  ];
}

function tooShort(path: RailPath, corner: PathCorner, extent: SectionExtent): Diagnostic[] {
  return runsAt(path, corner)
    .filter((run) => run.stub)
    .flatMap((run): Diagnostic[] => {
      const shortest = shortestEdge(run, extent, corner.site);
      const plan = Math.min(...Object.values(run.x).map(([from, to]) => to - from));
      if (shortest > 0 || plan <= 0) return [];
      return [
        diagnostic({
          code: "corner-level-too-short",
          path: `legs[${corner.site.legs[1]}].turn`,
          message: `Corner before the ${path.runs[corner.runs[1]]?.leg.id}: expected a level piece with every edge longer than nothing, got a shortest edge of ${sayLength(shortest)}.`,
          hint: "Move the corner farther from the nosing, or use a corner post.",
          values: { shortest },
        }),
      ];
    });
}

/** Findings about the corners that are mitred. */
export function checkCorners(place: Place, path: RailPath, extent: SectionExtent): Diagnostic[] {
  return path.corners.flatMap((corner) => {
    if (corner.site.kind === "post") return [];
    const [, upper] = runsAt(path, corner);
    return [...missed(place, corner, upper), ...tooShort(path, corner, extent)];
  });
}
