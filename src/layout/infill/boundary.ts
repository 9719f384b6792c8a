/**
 * The faces of rails that bound an opening from below and from above, as lines in the guard's plane.
 *
 * A rail that breaks has one line a member. Beside a break its two members share the rail: whatever stands between where the
 * break crosses the axis and where it crosses the face touches both; at a mitred plan corner the same holds as far from the corner
 * as the miter reaches, half a width · tan(turn/2) (trade geometry). x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { CORNER_STEP_MM, STATION_MM } from "../../kernel/tolerance.js";
import { tanDegrees } from "../angles.js";
import type { RailDesign } from "../document/design.js";
import type { Place } from "../part.js";
import { type Bay, memberId } from "../rails/bay.js";
import type { RailPath } from "../rails/rail-path.js";
import { railId } from "../rails/top-rails.js";
import { sectionExtent } from "../section-extent.js";

/** The face of one member: z = face + slope·x, its axis z = axis + slope·x. */
export interface FaceLine {
  readonly member: string;
  readonly reach: number;
  readonly slope: number;
  readonly face: number;
  readonly axis: number;
  /** Where the face starts and ends. */
  readonly x: readonly [number, number];
  /** Where the axis does. */
  readonly axisX: readonly [number, number];
  /** Where something that ends on the face may touch the member. */
  readonly touch: readonly [number, number];
  /** True where it is mitred to the next line. */
  readonly joined: boolean;
}

/** All lines of one rail over one opening, or over the whole guard, from the foot upward. */
export interface Boundary {
  /** As messages call it. */
  readonly name: string;
  readonly lines: readonly FaceLine[];
  readonly halfWidth: number;
}

/** How far the miter of a plan corner reaches along the guard. */
function miterReach(place: Place, corner: number, halfWidth: number): number {
  return halfWidth * tanDegrees(Math.abs(place.site.corners[corner]?.angle ?? 0) / 2);
}

/** The top rail's underside. */
export function underTopRail(place: Place, rail: RailDesign, path: RailPath): Boundary {
  const { halfWidth } = sectionExtent(rail.section);
  const lines = path.runs.map((run, i): FaceLine => {
    const touchOf = (side: 0 | 1): number => {
      const [face, axis] = [run.x.underside[side], run.x.axis[side]];
      const way = side === 0 ? -1 : 1;
      const found = path.breaks.find((own) => own.runs[1 - side] === i);
      // Up to a plumb leg a rail is what it is up to its face: the leg stands beside whatever is farther.
      if (found !== undefined) return found.leg ? face : way * Math.max(way * face, way * axis);
      const corner = path.corners.find((own) => own.runs[1 - side] === i);
      if (corner === undefined || corner.site.kind === "post") return face;
      return face + way * miterReach(place, run.reach - (side === 0 ? 1 : 0), halfWidth);
    };
    const next = path.breaks.find((own) => own.runs[0] === i);
    const turn = path.corners.find((own) => own.runs[0] === i);
    const mitred = turn !== undefined && turn.site.kind !== "post" && Math.abs(turn.step) <= CORNER_STEP_MM;
    return {
      ...{ member: railId(place, run, rail), reach: run.reach, slope: run.slope },
      ...{ face: run.z0.underside, axis: run.z0.axis, x: run.x.underside, axisX: run.x.axis },
      touch: [touchOf(0), touchOf(1)],
      joined: next === undefined ? mitred : next.leg === undefined,
    };
  });
  return { name: "the top rail", lines, halfWidth };
}

/** The top or the underside of a lower rail in its bay. */
export function faceOfBay(place: Place, bay: Bay, side: "top" | "underside"): Boundary {
  const { extent, stretches } = bay;
  const { halfWidth } = extent;
  const lines = stretches.map(({ reach, slope, z0 }) => {
    const secant = Math.hypot(1, slope);
    const face = side === "top" ? z0 + extent.depth * secant : z0;
    return { reach, slope, face, axis: z0 + extent.below * secant };
  });
  /** Where the faces of two lines meet, and how far either of them reaches past it. */
  const meeting = (i: number): { readonly face: number; readonly past: number } => {
    const [a, b] = [lines[i], lines[i + 1]];
    const axis = stretches[i]?.x[1] ?? 0;
    if (a === undefined || b === undefined) return { face: axis, past: 0 };
    if (a.reach !== b.reach) return { face: axis, past: miterReach(place, a.reach, halfWidth) };
    return { face: (b.face - a.face) / (a.slope - b.slope), past: 0 };
  };
  const made = lines.map((line, i): FaceLine => {
    const axisX = (stretches[i]?.x ?? [0, 0]) as readonly [number, number];
    const [before, after] = [
      i === 0 ? undefined : meeting(i - 1),
      i === lines.length - 1 ? undefined : meeting(i),
    ];
    return {
      ...line,
      ...{ member: memberId(bay, i), axisX, joined: after !== undefined },
      x: [before?.face ?? axisX[0], after?.face ?? axisX[1]],
      touch: [
        before === undefined ? axisX[0] : Math.min(before.face, axisX[0]) - before.past,
        after === undefined ? axisX[1] : Math.max(after.face, axisX[1]) + after.past,
      ],
    };
  });
  return { name: `rail ${bay.rail.id}`, lines: made, halfWidth };
}

/** The lines that something from x[0] to x[1] touches. */
export function touched({ lines }: Boundary, [low, high]: readonly [number, number]): FaceLine[] {
  return lines.filter(({ touch }) => touch[0] + STATION_MM < high && touch[1] - STATION_MM > low);
}
