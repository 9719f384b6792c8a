/**
 * Sheets between the rails: one an opening and reach, in the guard's plane, free all round by one distance.
 *
 * Every side of the outline is its rail's or post's own line moved in by the clearance, square to it; sides meet where those
 * lines cross, so that a bay whose rails break has five or six corners. At a plan corner without a post the sheet keeps the clearance
 * to the plumb plane that halves the turn, half its thickness counted. Marks are PN and the bay's number. Millimetres.
 *
 * @packageDocumentation
 */
import type { Vec2 } from "../../kernel/vec.js";
import type { PlateHole } from "../../members/plate.js";
import { polygonLoop } from "../../members/sections/custom.js";
import type { PanelDesign } from "../document/infill-design.js";
import { at, inwardOf, type Place } from "../part.js";
import { plateOr } from "../posts/plate-or.js";
import { crossX, type PlumbLine } from "../posts/post-line.js";
import { tailOf } from "../rails/bay.js";
import { noRoom } from "./infill-findings.js";
import { allOf, type InfillPart, onlyFindings, rowName } from "./infill-part.js";
import type { Opening, Row, Span } from "./opening.js";
import { edgeChain, heightsAt, movedSides, sidesOf } from "./panel-sides.js";

/** A side of the opening moved into it, square to itself. */
function movedIn(side: PlumbLine, by: number): PlumbLine {
  return { ...side, x: side.x + by * Math.hypot(1, side.p) };
}

/** How far the left and the right edge of the sheet stand from the opening's sides. */
function insetsOf(place: Place, { reach, corner }: Span, { clear, thickness }: PanelDesign): Vec2 {
  const inset = (isCorner: boolean, index: number): number => {
    if (!isCorner) return clear;
    const half = (Math.abs(place.site.corners[index]?.angle ?? 0) * Math.PI) / 360;
    return (clear + (thickness / 2) * Math.sin(half)) / Math.cos(half);
  };
  return [inset(corner[0], reach - 1), inset(corner[1], reach)];
}

/** Corners of the sheet, the lower edge from left to right, then the upper one back; and the places of its holes. */
function outlineOf(
  row: Row,
  span: Span,
  [left, right]: readonly [PlumbLine, PlumbLine],
  { clear, holes }: PanelDesign,
): { readonly points: readonly Vec2[]; readonly drilled: readonly Vec2[]; readonly room: number } {
  const lower = edgeChain(movedSides(sidesOf(row.floor, span.reach), clear, 1), left, right);
  const upper = edgeChain(movedSides(sidesOf(row.ceiling, span.reach), clear, -1), left, right);
  const stations = [...lower.points, ...upper.points].map(([x]) => x);
  const rooms = stations.flatMap((x) => {
    const [above, below] = [heightsAt(upper.points, x), heightsAt(lower.points, x)];
    return [above[0] - below[0], above[1] - below[1]];
  });
  const room = Math.min(...rooms);
  const edge = holes?.edge ?? 0;
  const drilled = [lower, upper].flatMap(({ ends }, k) =>
    ends.map((side, end): Vec2 => {
      const line = end === 0 ? movedIn(left, edge) : movedIn(right, -edge);
      const way = k === 0 ? 1 : -1;
      const lifted = way * edge * Math.hypot(1, side.slope);
      const x = crossX(line, { slope: side.slope, z0: side.z0 + lifted });
      return [x, side.z0 + side.slope * x + lifted];
    }),
  );
  return { points: [...lower.points, ...[...upper.points].reverse()], drilled, room };
}

function sheet(
  place: Place,
  opening: Opening,
  row: Row,
  span: Span,
  design: PanelDesign,
  name: { readonly id: string; readonly mark: string },
): InfillPart {
  const insets = insetsOf(place, span, design);
  const edges = [movedIn(span.sides[0], insets[0]), movedIn(span.sides[1], -insets[1])] as const;
  const width = span.x[1] - insets[1] - (span.x[0] + insets[0]);
  if (width <= 0) return onlyFindings([noRoom(opening, "a panel between the posts", width)]);
  const { points, drilled, room } = outlineOf(row, span, edges, design);
  if (room <= 0) return onlyFindings([noRoom(opening, "a panel between the rails", room)]);
  const [xs, zs] = [points.map(([x]) => x), points.map(([, z]) => z)];
  const origin: Vec2 = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...zs) + Math.max(...zs)) / 2];
  // Seen from the walking side the guard runs to the right where it stands on the left, else to the left.
  const way = place.side === "left" ? 1 : -1;
  const drawn = ([x, z]: Vec2): Vec2 => [way * (x - origin[0]), z - origin[1]];
  const hole = (p: Vec2): PlateHole => ({ at: drawn(p), diameter: design.holes?.diameter ?? 0 });
  const made = plateOr(
    {
      ...{ id: name.id, mark: name.mark, material: place.design.material, thickness: design.thickness },
      outline: polygonLoop(points.map(drawn)),
      holes: design.holes === undefined ? [] : drilled.map(hole),
      at: at(place, span.reach, origin[0], origin[1], -design.thickness / 2),
      normal: inwardOf(place, span.reach),
    },
    opening.path,
  );
  return { members: made.plate ? [made.plate] : [], joints: [], diagnostics: made.diagnostics, infill: [] };
}

/** The sheets of one row of an opening: one a reach. */
export function infillPanels(place: Place, opening: Opening, row: Row, design: PanelDesign): InfillPart {
  const name = rowName(place, opening, row);
  const single = row.spans.length === 1;
  const parts = row.spans.map((span, i) =>
    sheet(place, opening, row, span, design, {
      id: `${name.id}-panel${single ? "" : `-${tailOf(i)}`}`,
      mark: `PN${name.mark}${single ? "" : `-${i + 1}`}${place.suffix}`,
    }),
  );
  const part = allOf(parts);
  const { from, to } = opening;
  const count = part.members.length;
  const report = { type: "panel", from: from.mark, to: to.mark, row: row.number, count } as const;
  return { ...part, infill: count === 0 ? [] : [{ ...report, clear: design.clear }] };
}
