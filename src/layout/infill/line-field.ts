/**
 * The room for bars along the rails: how high it is square to them over each stretch, how many go in, where each one runs.
 *
 * Two parallel rails H apart plumb are H·cos θ apart square to their length (trade geometry); n bars leave n + 1 equal clear
 * spaces there. Bars of neighbouring stretches meet where their own axes cross. Millimetres.
 *
 * @packageDocumentation
 */
import { PARALLEL_SINE } from "../../kernel/tolerance.js";
import type { LinesDesign } from "../document/infill-design.js";
import { axisX, type RakeLine } from "../posts/post-line.js";
import type { Stretch } from "../rails/bay.js";
import type { SectionExtent } from "../section-extent.js";
import { fewestBars, spaceBetween } from "../site/equal-spaces.js";
import type { Site } from "../site/site.js";
import type { FaceLine } from "./boundary.js";
import type { Opening, Row } from "./opening.js";

/** One stretch of the floor with the ceiling parallel to it. */
export interface LineField {
  readonly reach: number;
  readonly slope: number;
  /** √(1 + slope²): plumb over square. */
  readonly secant: number;
  /** Of the floor's top at x = 0. */
  readonly floor: number;
  /** Square to the rails. */
  readonly height: number;
  /** Of the floor's axis. */
  readonly x: readonly [number, number];
}

const overlap = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

/** The ceiling's line over a stretch that runs parallel to it; the one with most of it, where there are two. */
function parallelTo(floor: FaceLine, ceiling: readonly FaceLine[]): FaceLine | undefined {
  return ceiling
    .filter((line) => line.reach === floor.reach && Math.abs(line.slope - floor.slope) <= PARALLEL_SINE)
    .filter((line) => overlap(line.x, floor.axisX) > 0)
    .sort((a, b) => overlap(b.x, floor.axisX) - overlap(a.x, floor.axisX))[0];
}

/** The fields of a row, one a stretch of its floor; undefined where the ceiling is not parallel to one of them. */
export function lineFields({ floor, ceiling }: Row): readonly LineField[] | undefined {
  const fields = floor.lines.flatMap((line): LineField[] => {
    const over = parallelTo(line, ceiling.lines);
    if (over === undefined) return [];
    const { reach, slope, face, axisX } = line;
    const secant = Math.hypot(1, slope);
    return [{ reach, slope, secant, floor: face, height: (over.face - face) / secant, x: axisX }];
  });
  return fields.length === floor.lines.length ? fields : undefined;
}

/** How many bars a row's fields ask for: one number for all of its stretches. */
export function lineCount(fields: readonly LineField[], by: LinesDesign["by"], width: number): number {
  if (by.type === "count") return by.count;
  return Math.max(...fields.map(({ height }) => fewestBars({ length: height, width }, by.clear)));
}

/** The clear space square to `count` bars in a field; below 0 where they have no room. */
export function lineSpace({ height }: LineField, count: number, width: number): number {
  return spaceBetween({ length: height, width }, count);
}

/** Stretches of bar k (1 is the lowest) from post axis to post axis. */
export function lineStretches(
  site: Site,
  { from, to }: Opening,
  fields: readonly LineField[],
  extent: SectionExtent,
  count: number,
  k: number,
): Stretch[] {
  const undersides = fields.map((field) => {
    const space = lineSpace(field, count, extent.depth);
    return field.floor + field.secant * (k * space + (k - 1) * extent.depth);
  });
  const axes = undersides.map((z0, i) => z0 + extent.below * (fields[i]?.secant ?? 1));
  const stops = fields.slice(1).map((upper, i) => {
    const lower = fields[i] as LineField;
    if (lower.reach !== upper.reach) return upper.x[0];
    return ((axes[i + 1] ?? 0) - (axes[i] ?? 0)) / (lower.slope - upper.slope);
  });
  const [first, last] = [0, fields.length - 1].map((i) => ({
    ...{ reach: fields[i]?.reach ?? 0, slope: fields[i]?.slope ?? 0, z0: axes[i] ?? 0 },
  })) as [RakeLine, RakeLine];
  const x = [axisX(site, from, first), ...stops, axisX(site, to, last)];
  return fields.map(({ reach, slope }, i) => ({
    ...{ reach, slope, z0: undersides[i] ?? 0 },
    x: [x[i] ?? from.x, x[i + 1] ?? to.x],
  }));
}

/** Distance from a point to the tops of a bar's stretches, which go on straight into the posts. */
function distanceTo(stretches: readonly Stretch[], depth: number, x: number, z: number): number {
  const last = stretches.length - 1;
  const distances = stretches.map(({ slope, z0, x: [low, high] }, i) => {
    const top = z0 + depth * Math.hypot(1, slope);
    const foot = (x + slope * (z - top)) / (1 + slope * slope);
    const at = Math.min(Math.max(foot, i === 0 ? -Infinity : low), i === last ? Infinity : high);
    return Math.hypot(at - x, top + slope * at - z);
  });
  return Math.min(...distances);
}

/**
 * The greatest clear space above the uppermost bar: at the faces of the posts, and where the ceiling breaks.
 *
 * @param upmost - the uppermost bar's stretches, or the floor's where there is no bar, with its depth
 */
export function spaceAbove({ ceiling, spans }: Row, upmost: readonly Stretch[], depth: number): number {
  const spaces = spans.flatMap(({ reach, x: [low, high] }) =>
    ceiling.lines
      .filter((line) => line.reach === reach && overlap(line.x, [low, high]) > 0)
      .flatMap((line) =>
        [Math.max(low, line.x[0]), Math.min(high, line.x[1])].map((x) =>
          distanceTo(
            upmost.filter((own) => own.reach === reach),
            depth,
            x,
            line.face + line.slope * x,
          ),
        ),
      ),
  );
  return Math.max(...spaces);
}
