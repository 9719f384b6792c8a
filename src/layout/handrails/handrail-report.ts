/**
 * What is said about a handrail: its height over every nosing, how far it goes on past them, its pieces and brackets.
 *
 * @packageDocumentation
 */

import { edgeZ, type RailRun } from "../rails/rail-path.js";
import { rangeOf } from "../report.js";
import type { BracketReport, HandrailReport, NosingReport } from "../report-types.js";
import type { ChainPiece } from "./chain.js";
import { graspOf } from "./grasp.js";
import type { PlacedHandrail } from "./placed-handrail.js";

function nosingsUnder({ place, line }: PlacedHandrail): NosingReport[] {
  return place.site.legs.flatMap(({ leg, flight, reach }) =>
    (flight?.nosings ?? []).flatMap((nosing): NosingReport[] => {
      const run = line.runs.find(
        (own) => own.reach === reach && own.x.top[0] <= nosing.x && nosing.x <= own.x.top[1],
      );
      if (run === undefined) return [];
      return [{ leg: leg.id, ...nosing, railTop: edgeZ(run, "top", nosing.x) - nosing.z }];
    }),
  );
}

/** How far an end goes on past the last nosing of its leg: at the leg's slope and level, to the end of its axis. */
function extensionOf(rail: PlacedHandrail, side: 0 | 1): HandrailReport["bottom"] {
  const { site } = rail.place;
  const { runs } = rail.line;
  const flight = site.legs[rail.design.legs[side]]?.flight;
  const past = (to: number, from: number) => (side === 1 ? to - from : from - to);
  const x = rail.ends[side];
  const run = runs.at(side === 0 ? 0 : -1) as RailRun;
  const nosing = (side === 0 ? flight?.nosings[0] : flight?.nosings.at(-1))?.x;
  if (nosing === undefined) return { x, sloped: 0, level: 0, alongRake: 0 };
  const end = run.slope === 0 ? run.x.top[side === 1 ? 0 : 1] : x;
  const sloped = past(end, nosing);
  const rake = runs.find((own) => own.slope !== 0 && own.reach === run.reach);
  return {
    x,
    sloped,
    level: past(x, end),
    alongRake: sloped * Math.hypot(1, rake?.slope ?? 0),
  };
}

/** The report of one handrail. */
export function handrailReport(
  rail: PlacedHandrail,
  pieces: readonly ChainPiece[],
  brackets: readonly BracketReport[],
): HandrailReport {
  const { design, place } = rail;
  const nosings = nosingsUnder(rail);
  return {
    ...{ id: rail.id, section: design.section.name, height: design.height, inward: design.inward },
    legs: place.site.legs.slice(design.legs[0], design.legs[1] + 1).map(({ leg }) => leg.id),
    nosings,
    heights: rangeOf(nosings),
    bottom: extensionOf(rail, 0),
    top: extensionOf(rail, 1),
    pieces,
    brackets,
    ...graspOf(design.section),
  };
}
