/**
 * Plumb bars between two rails, in equal spaces from post face to post face, each shaped to both rails.
 *
 * A bar under or over a break is shaped to both mitred rails there, as a post is. Where an opening turns in plan each reach is
 * divided for itself, with half a space on either side of the corner. Marks are V, the bay's number and the bar's. Millimetres.
 *
 * @packageDocumentation
 */
import type { CopeJoint } from "../../joints/joint.js";
import type { Diagnostic } from "../../kernel/diagnostic.js";
import { member } from "../../members/member.js";
import type { BarsDesign } from "../document/infill-design.js";
import { alongOf, at, type Place } from "../part.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import { fewestBars, spaceBetween } from "../site/equal-spaces.js";
import { type Boundary, type FaceLine, touched } from "./boundary.js";
import { noRoom, tooMany, tooWide, withoutSeat } from "./infill-findings.js";
import { allOf, type InfillPart, onlyFindings, rowName } from "./infill-part.js";
import type { Opening, Row, Span } from "./opening.js";

/** What a row's bars have in common. */
interface Bars {
  readonly place: Place;
  readonly opening: Opening;
  readonly row: Row;
  readonly design: BarsDesign;
  readonly extent: SectionExtent;
}

/** How much nearer the worse of a span's two sides is at one end than at the other. */
function leanOver({ x, widest }: Span): number {
  return Math.max(x[0] - widest[0], widest[1] - x[1]);
}

/** How the bars of one span stand: left faces from `start` on, `pitch` apart. */
interface Pattern {
  readonly span: Span;
  readonly count: number;
  readonly space: number;
  readonly start: number;
  readonly pitch: number;
}

/** Beside a leaning post a space is wider at one end than at the other: the wider end counts as one of the equal spaces. */
function patternOf({ design, extent }: Bars, span: Span): Pattern {
  const [low, high] = span.widest;
  const halves = span.corner.map((corner) => (corner ? 0.5 : 1));
  const divided = { length: high - low, width: extent.depth, ends: (halves[0] ?? 1) + (halves[1] ?? 1) };
  const count = fewestBars(divided, design.clear);
  const space = spaceBetween(divided, count);
  return { span, count, space, start: low + (halves[0] ?? 1) * space, pitch: extent.depth + space };
}

/** The line whose axis passes the bar: where it is drawn from or to. */
function ownLine(lines: readonly FaceLine[], x: number): FaceLine | undefined {
  return lines.find(({ axisX }) => axisX[0] <= x && x <= axisX[1]) ?? lines[0];
}

/** Members a bar's end is shaped to; undefined where there is no one rail or miter. */
function seatOf(boundary: Boundary, x: number, extent: SectionExtent): readonly FaceLine[] | undefined {
  const lines = touched(boundary, [x - extent.below, x + extent.above]);
  if (lines.length === 0 || lines.length > 2) return undefined;
  return lines.length === 2 && lines[0]?.joined !== true ? undefined : lines;
}

function barPart(bars: Bars, span: Span, x: number, id: string, mark: string): InfillPart {
  const { place, opening, row, design, extent } = bars;
  const [floor, ceiling] = [seatOf(row.floor, x, extent), seatOf(row.ceiling, x, extent)];
  const [low, high] = [floor && ownLine(floor, x), ceiling && ownLine(ceiling, x)];
  if (floor === undefined || low === undefined) return onlyFindings([withoutSeat(opening, id, "lower end")]);
  if (ceiling === undefined || high === undefined) return onlyFindings([withoutSeat(opening, id, "top")]);
  const room = high.face + high.slope * x - (low.face + low.slope * x);
  if (room <= 0) return onlyFindings([noRoom(opening, `bar ${id} between the rails`, room)]);
  const made = member({
    ...{ id, mark, section: design.section, material: place.design.material },
    up: alongOf(place, span.reach),
    from: at(place, span.reach, x, low.axis + low.slope * x),
    to: at(place, span.reach, x, high.axis + high.slope * x),
  });
  const cope = (end: 0 | 1, lines: readonly FaceLine[]): CopeJoint => ({
    ...{ kind: "cope", id: `${id}-${end === 0 ? "foot" : "head"}`, end: { member: id, end } },
    onto: lines.map((line) => line.member),
  });
  return { members: [made], joints: [cope(0, floor), cope(1, ceiling)], diagnostics: [], infill: [] };
}

function narrow(bars: Bars, patterns: readonly Pattern[]): Diagnostic[] {
  const { opening, row, extent } = bars;
  const crowded = patterns.find(({ space, count, span }) => count > 0 && space - leanOver(span) < 0);
  return [
    ...[row.floor, row.ceiling].flatMap(({ name, halfWidth }) =>
      tooWide(opening, name, { bar: extent.halfWidth, onto: halfWidth }),
    ),
    ...tooMany(
      opening,
      patterns.reduce((sum, { count }) => sum + count, 0),
    ),
    ...(crowded === undefined
      ? []
      : [noRoom(opening, "a bar between the posts", crowded.space - leanOver(crowded.span))]),
  ];
}

/** The greatest clear space between the faces and the bars that were built, along the guard. */
function greatestSpace({ spans }: Row, stations: readonly number[], extent: SectionExtent): number {
  const [first, last] = [spans[0], spans.at(-1)];
  const starts = [...stations.map((x) => x - extent.below), last?.widest[1] ?? 0];
  const ends = [first?.widest[0] ?? 0, ...stations.map((x) => x + extent.above)];
  return Math.max(...starts.map((x, i) => x - (ends[i] ?? x)));
}

/** The bars of one row of an opening. */
export function infillBars(place: Place, opening: Opening, row: Row, design: BarsDesign): InfillPart {
  const bars: Bars = { place, opening, row, design, extent: sectionExtent(design.section) };
  const patterns = row.spans.map((span) => patternOf(bars, span));
  const findings = narrow(bars, patterns);
  if (findings.length > 0) return onlyFindings(findings);
  const name = rowName(place, opening, row);
  const spots = patterns.flatMap(({ span, count, start, pitch }) =>
    Array.from({ length: count }, (_, k) => ({ span, x: start + k * pitch + bars.extent.below })),
  );
  const parts = spots.map(({ span, x }, i) =>
    barPart(bars, span, x, `${name.id}-bar-${i + 1}`, `V${name.mark}-${i + 1}${place.suffix}`),
  );
  const part = allOf(parts);
  const stations = spots.filter((_, i) => (parts[i]?.members.length ?? 0) > 0).map(({ x }) => x);
  const pitches = stations.slice(1).map((x, i) => x - (stations[i] ?? x));
  return {
    ...part,
    infill: [
      {
        ...{ type: "bars", from: opening.from.mark, to: opening.to.mark, row: row.number },
        ...{ count: stations.length, asked: design.clear },
        clear: greatestSpace(row, stations, bars.extent),
        ...(pitches.length === 0 ? {} : { pitch: Math.max(...pitches) }),
      },
    ],
  };
}
