/**
 * A section of the user's own outline: plates, tabs, handrail mouldings, anything of lines and arcs.
 *
 * The member's axis runs through the section's origin, wherever the outline lies. Loops may be drawn either way round;
 * they are turned so that the outer one runs counter-clockwise and holes clockwise.
 *
 * @packageDocumentation
 */
import {
  type Loop,
  loopsOf,
  pointOn,
  type Region,
  reverseLoop,
  type Segment,
  segmentLength,
} from "../../kernel/region.js";
import { LEAST_RADIUS_MM, STATION_MM, STEP_MM } from "../../kernel/tolerance.js";
import type { Vec2 } from "../../kernel/vec.js";
import { loopArea } from "../moments.js";
import type { Section } from "../section.js";
import { badSection } from "./checks.js";
import { apart, meetingPoints } from "./segment-meet.js";

/** Outline and name of a section of the user's own. */
export interface CustomSectionInput {
  readonly outer: Loop;
  /** Default none. */
  readonly holes?: readonly Loop[];
  readonly name: string;
  /** Where the outline comes from; default `as given`. */
  readonly source?: string;
}

/**
 * A closed loop of straight sides through the given corners.
 *
 * @param corners - at least three, millimetres, the last not equal to the first
 * @param label - name of every side; default `side`
 * @example
 * polygonLoop([[0, 0], [30, 0], [0, 30]]).length; // 3
 */
export function polygonLoop(corners: readonly Vec2[], label = "side"): Loop {
  return corners.map(
    (from, i): Segment => ({ kind: "line", from, to: corners[(i + 1) % corners.length] ?? from, label }),
  );
}

/**
 * A section of the given outline.
 *
 * @throws RakewrightError `bad-section` when a loop is open, has a side of no length or an arc over half a turn or of
 *   a radius below 0.001 mm (no tool makes it; its points would be too near each other to tell apart), crosses itself or another loop, or when a hole is not inside the outline; the message says which loop and side
 * @example
 * customSection({ name: "gusset", outer: polygonLoop([[0, 0], [60, 0], [0, 60]]) }).region.holes.length; // 0
 */
export function customSection(input: CustomSectionInput): Section {
  if (input.name.trim() === "")
    badSection("Custom section: expected a name, got none.", "Name it as the papers should.");
  const drawn: Region = { outer: input.outer, holes: input.holes ?? [] };
  const names = loopsOf(drawn).map((_, i) => `Section ${input.name}, ${i === 0 ? "outline" : `hole ${i}`}`);
  for (const [i, loop] of loopsOf(drawn).entries()) requireClosed(names[i] ?? "", loop);
  requireNoCrossing(names, loopsOf(drawn));
  requireHolesInside(names, drawn);
  const turned = (loop: Loop, sense: 1 | -1): Loop => (loopArea(loop) * sense > 0 ? loop : reverseLoop(loop));
  return {
    name: input.name,
    shape: { kind: "custom" },
    region: { outer: turned(drawn.outer, 1), holes: drawn.holes.map((hole) => turned(hole, -1)) },
    source: input.source ?? "as given",
  };
}

function requireClosed(what: string, loop: Loop): void {
  if (loop.length < 2)
    badSection(`${what}: expected at least two sides, got ${loop.length}.`, "A circle is two half arcs.");
  loop.forEach((side, i) => {
    const where = `${what}, side ${i + 1}`;
    const numbers =
      side.kind === "line"
        ? [...side.from, ...side.to]
        : [...side.centre, side.radius, side.start, side.sweep];
    if (!numbers.every(Number.isFinite))
      badSection(`${where}: expected finite numbers, got ${numbers.join(", ")}.`, "Check the outline.");
    if (side.kind === "arc" && !(side.radius >= LEAST_RADIUS_MM && Math.abs(side.sweep) <= Math.PI)) {
      badSection(
        `${where}: expected a radius of at least ${LEAST_RADIUS_MM} mm (no tool makes less) and at most half a turn, got ${side.radius} mm and ${side.sweep} rad.`,
        "Split longer arcs; draw a smaller corner sharp.",
      );
    }
    if (segmentLength(side) <= STATION_MM)
      badSection(`${where}: expected a length above 0 mm.`, "Leave the side out.");
    const next = loop[(i + 1) % loop.length] ?? side;
    const gap = apart(pointOn(side, 1), pointOn(next, 0));
    if (gap > STATION_MM) {
      badSection(
        `${where}: expected to end where the next side starts, got a gap of ${gap} mm.`,
        "Close the loop.",
        { gap },
      );
    }
  });
}

/** How far from a shared end two neighbours may seem to touch again: a closing error blurs a tangency along both. */
function blur(a: Segment, b: Segment): number {
  const radius = Math.max(a.kind === "arc" ? a.radius : 0, b.kind === "arc" ? b.radius : 0);
  return STEP_MM + Math.sqrt(8 * radius * STATION_MM);
}

function requireNoCrossing(names: readonly string[], loops: readonly Loop[]): void {
  const sides = loops.flatMap((loop, l) => loop.map((side, i) => ({ side, l, i, count: loop.length })));
  sides.forEach((a, k) => {
    for (const b of sides.slice(k + 1)) {
      const shared: Vec2[] = [];
      if (a.l === b.l && (a.i + 1) % a.count === b.i) shared.push(pointOn(a.side, 1));
      if (a.l === b.l && (b.i + 1) % b.count === a.i) shared.push(pointOn(b.side, 1));
      const near = shared.length > 0 ? blur(a.side, b.side) : 0;
      const bad = meetingPoints(a.side, b.side).find((p) => !shared.some((q) => apart(p, q) <= near));
      if (bad === undefined) continue;
      badSection(
        `${names[a.l]}, side ${a.i + 1}: expected to stay clear of ${names[b.l]}, side ${b.i + 1}, but they meet at (${bad[0]}, ${bad[1]}).`,
        "Draw each outline without crossing or touching itself or another.",
        { u: bad[0], v: bad[1] },
      );
    }
  });
}

function requireHolesInside(names: readonly string[], region: Region): void {
  region.holes.forEach((hole, i) => {
    const point = hole[0] === undefined ? ([0, 0] as const) : pointOn(hole[0], 0.5);
    if (!isInside(point, region.outer))
      badSection(`${names[i + 1]}: expected inside the outline.`, "Move the hole, or leave it out.");
    region.holes.forEach((other, j) => {
      if (j !== i && isInside(point, other))
        badSection(`${names[i + 1]}: lies inside hole ${j + 1}.`, "Leave the inner hole out.");
    });
  });
}

/** True when the loop winds round the point. For an arc: the angle of its chord, and a turn more from within its cap. */
function isInside(p: Vec2, loop: Loop): boolean {
  let turns = 0;
  for (const side of loop) {
    const [a, b] = [pointOn(side, 0), pointOn(side, 1)];
    const [ax, ay, bx, by] = [a[0] - p[0], a[1] - p[1], b[0] - p[0], b[1] - p[1]];
    turns += Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / (2 * Math.PI);
    if (side.kind === "line" || apart(p, side.centre) >= side.radius) continue;
    const outward = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    if (outward * side.sweep < 0) turns += Math.sign(side.sweep);
  }
  return Math.round(turns) !== 0;
}
