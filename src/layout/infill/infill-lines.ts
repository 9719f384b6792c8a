/**
 * Bars along the rails, in equal clear spaces square to them: one piece a bay, cut to the posts, or round bars through them.
 *
 * A bar breaks where its rails do, mitred. Bars through posts are as many in each of the bays they run on through.
 * Marks are H, the bay's number and the bar's, from below. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, hasErrors } from "../../kernel/diagnostic.js";
import { CORNER_STEP_MM, PARALLEL_SINE, STATION_MM } from "../../kernel/tolerance.js";
import type { InfillDesign, LinesDesign } from "../document/infill-design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, faceOf } from "../posts/post-line.js";
import type { Bay } from "../rails/bay.js";
import { checkBay } from "../rails/check-bay.js";
import { axisLine, bayPart } from "../rails/lower-rails.js";
import type { RailPath } from "../rails/rail-path.js";
import { sectionExtent } from "../section-extent.js";
import { noRoom, tooMany, tooWide } from "./infill-findings.js";
import { missesCorner, notParallel, widerSpace } from "./infill-line-findings.js";
import { allOf, type InfillPart, onlyFindings, rowName } from "./infill-part.js";
import { type LineField, lineCount, lineFields, lineSpace, lineStretches, spaceAbove } from "./line-field.js";
import type { Opening, Row } from "./opening.js";
import { throughBars } from "./through-bars.js";

/** An opening that bars along the rails fill. */
type LinesOpening = Opening & { readonly design: InfillDesign & LinesDesign };

/** One row of it, with the room it has. */
interface LaidRow {
  readonly opening: LinesOpening;
  readonly row: Row;
  readonly fields: readonly LineField[];
  readonly count: number;
}

/** The bars of a row: their bays from below, findings, and what the report says. */
interface RowBars extends Pick<InfillPart, "diagnostics" | "infill"> {
  readonly laid: LaidRow;
  readonly bays: readonly Bay[];
}

export const isLines = (opening: Opening): opening is LinesOpening => opening.design.type === "rails";

/** Bars no wider than the posts; with the hole's clearance where they run through them. */
function narrow({ opening }: LaidRow): Diagnostic[] {
  const { from, to, design } = opening;
  const bar = sectionExtent(design.section).halfWidth + (design.through?.clearance ?? 0);
  return [from, to].flatMap((post) =>
    // A corner post shows another of its faces to the reach above it.
    post.corner === undefined
      ? tooWide(opening, `post ${post.mark}`, { bar, onto: post.extent.halfWidth })
      : [],
  );
}

/** Do the stretches of one bar meet, and are they long enough to be pieces? */
function checkStops(place: Place, { opening }: LaidRow, bay: Bay): Diagnostic[] {
  const { extent, stretches, from, to } = bay;
  const axis = (i: number, x: number): number => {
    const own = stretches[i];
    return own === undefined ? 0 : own.z0 + extent.below * Math.hypot(1, own.slope) + own.slope * x;
  };
  const stops = stretches.slice(1).map((own) => own.x[0]);
  const missed = stops.map((x, i) => Math.abs(axis(i + 1, x) - axis(i, x)));
  const by = Math.max(0, ...missed);
  if (by > CORNER_STEP_MM) return [missesCorner(opening, by)];
  const face = (post: PlacedPost, way: 1 | -1) => {
    const stretch = stretches.at(way === 1 ? 0 : -1);
    if (post.set === undefined || stretch === undefined) return post.x + (way * post.extent.depth) / 2;
    return crossX(faceOf(place, post, stretch.reach, way), axisLine(extent, stretch));
  };
  const clear = [face(from, 1), ...stops, face(to, -1)];
  const room = Math.min(...clear.slice(1).map((x, i) => x - (clear[i] ?? x)));
  if (room >= extent.depth) return [];
  return [noRoom(opening, `the breaks of bar ${bay.mark} between the posts`, room - extent.depth)];
}

function bayOf(place: Place, laid: LaidRow, k: number): Bay {
  const { opening, row, fields, count } = laid;
  const extent = sectionExtent(opening.design.section);
  const name = rowName(place, opening, row);
  return {
    id: `${name.id}-line-${k}`,
    mark: `MR${name.mark}-${k}`,
    rail: { id: `line-${k}`, role: "lower", section: opening.design.section },
    ...{ extent, from: opening.from, to: opening.to },
    stretches: lineStretches(place.site, opening, fields, extent, count, k),
  };
}

/** All bars of a row, or why there are none. */
function rowBars(place: Place, path: RailPath, laid: LaidRow): RowBars {
  const { opening, row, fields, count } = laid;
  const { section, by } = opening.design;
  const { depth } = sectionExtent(section);
  const space = Math.min(...fields.map((field) => lineSpace(field, count, depth)));
  const first = [
    ...narrow(laid),
    ...tooMany(opening, count),
    ...(space < 0 ? [noRoom(opening, `${count} bars between the rails`, space)] : []),
  ];
  if (first.length > 0) return { laid, bays: [], diagnostics: first, infill: [] };
  const bays = Array.from({ length: count }, (_, i) => bayOf(place, laid, i + 1));
  const own = new Set(bays.map((bay) => bay.id));
  const neighbours = row.ceilingBay === undefined ? bays : [...bays, row.ceilingBay];
  const findings = [
    ...bays.slice(0, 1).flatMap((bay) => checkStops(place, laid, bay)),
    ...bays
      .slice(1)
      .slice(-1)
      .flatMap((bay) => checkStops(place, laid, bay)),
    ...checkBay(place, neighbours, path).filter((d) => d.members.some((id) => own.has(id))),
  ];
  if (hasErrors(findings)) return { laid, bays: [], diagnostics: findings, infill: [] };
  const upmost = bays.at(-1) ?? row.floorBay;
  const spaces = fields.map((field) => lineSpace(field, count, depth));
  const clear = Math.max(...spaces, spaceAbove(row, upmost.stretches, upmost.extent.depth));
  const pitch = Math.max(...fields.map(({ secant }, i) => ((spaces[i] ?? 0) + depth) * secant));
  const asked = by.type === "clear" ? by.clear : undefined;
  return {
    ...{ laid, bays },
    diagnostics: asked === undefined ? [] : widerSpace(opening, clear, asked),
    infill: [
      {
        ...{ type: "rails", from: opening.from.mark, to: opening.to.mark, row: row.number, count },
        ...(asked === undefined ? {} : { asked }),
        clear,
        ...(count === 0 ? {} : { pitch }),
      },
    ],
  };
}

/** Does a bar that runs through the post between two rows go on in one line? */
function goesOn(lower: LaidRow, upper: LaidRow): boolean {
  const [a, b] = [lower.fields.at(-1), upper.fields[0]];
  const { design, to } = lower.opening;
  if (a === undefined || b === undefined || design.through === undefined) return false;
  const joins = design === upper.opening.design && to === upper.opening.from && a.reach === b.reach;
  const alike = Math.abs(a.slope - b.slope) <= PARALLEL_SINE && Math.abs(a.height - b.height) <= STATION_MM;
  return joins && lower.row.number === upper.row.number && alike;
}

/** One number of bars for all rows that bars run on through. */
function sameCounts(rows: readonly LaidRow[]): LaidRow[] {
  const groups: LaidRow[][] = [];
  for (const next of rows) {
    const group = groups.find((own) => goesOn(own.at(-1) as LaidRow, next));
    if (group === undefined) groups.push([next]);
    else group.push(next);
  }
  const most = new Map(
    groups.flatMap((group) => {
      const count = Math.max(...group.map((own) => own.count));
      return group.map((own) => [own, count] as const);
    }),
  );
  return rows.map((laid) => ({ ...laid, count: most.get(laid) ?? laid.count }));
}

/** Bars along the rails in all openings that are to have them, from the foot upward. */
export function infillLines(place: Place, path: RailPath, opens: readonly LinesOpening[]): InfillPart {
  const diagnostics: Diagnostic[] = [];
  const rows = opens.flatMap((opening) =>
    opening.rows.flatMap((row): LaidRow[] => {
      const fields = lineFields(row);
      if (fields === undefined) diagnostics.push(notParallel(opening, row.floor.name, row.ceiling.name));
      if (fields === undefined) return [];
      const { section, by } = opening.design;
      return [{ opening, row, fields, count: lineCount(fields, by, sectionExtent(section).depth) }];
    }),
  );
  const made = sameCounts(rows).map((laid) => rowBars(place, path, laid));
  const apart = made.filter(({ laid }) => laid.opening.design.through === undefined);
  const through = made.flatMap(({ laid, bays }) => {
    const { opening, row } = laid;
    const own = opening.design.through;
    return own === undefined ? [] : [{ opening, row, bays, through: own }];
  });
  return allOf([
    onlyFindings(diagnostics),
    ...made.map(({ diagnostics, infill }) => ({ ...onlyFindings(diagnostics), infill })),
    ...apart.flatMap(({ bays }) => bays.map((bay) => ({ ...onlyFindings([]), ...bayPart(place, bay) }))),
    { ...throughBars(place, through), infill: [] },
  ]);
}
