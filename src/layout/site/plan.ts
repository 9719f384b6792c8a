/**
 * How does a reach of the guard lie in plan?
 *
 * The reach with the last flight runs along the layout's X; the others follow from the turns. A point at x along the guard
 * stands at (cos·x + ox, sin·x + oy); `left` of the guard is +90° from its direction. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "../../kernel/vec.js";

/** Where a reach lies: direction and the point where its x would be 0. */
export interface Plan {
  readonly cos: number;
  readonly sin: number;
  readonly ox: number;
  readonly oy: number;
  /** Of its direction from X, degrees, + to the left. */
  readonly heading: number;
}

/** A plan turn at x, degrees, + to the left. */
export interface PlanTurn {
  readonly x: number;
  readonly angle: number;
}

/** Cosine and sine, exact at whole quarter turns. */
function circle(degrees: number): { readonly cos: number; readonly sin: number } {
  const quarter = (((degrees % 360) + 360) % 360) / 90;
  if (Number.isInteger(quarter)) {
    return { cos: [1, 0, -1, 0][quarter] as number, sin: [0, 1, 0, -1][quarter] as number };
  }
  const angle = (degrees * Math.PI) / 180;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
}

/** The plan through the same point at x as `plan`, with another heading. */
function turned(plan: Plan, x: number, heading: number): Plan {
  const { cos, sin } = circle(heading);
  const [px, py] = [plan.cos * x + plan.ox, plan.sin * x + plan.oy];
  return { cos, sin, ox: px - cos * x, oy: py - sin * x, heading };
}

/**
 * The plans of all reaches.
 *
 * @param turns - in walking order
 * @param main - index of the reach along X
 * @param y - of that reach
 */
export function plansOf(turns: readonly PlanTurn[], main: number, y: number): Plan[] {
  const base: Plan = { cos: 1, sin: 0, ox: 0, oy: y, heading: 0 };
  const above: Plan[] = [];
  turns.slice(main).reduce((plan, { x, angle }) => {
    const next = turned(plan, x, plan.heading + angle);
    above.push(next);
    return next;
  }, base);
  const below: Plan[] = [];
  turns.slice(0, main).reduceRight((plan, { x, angle }) => {
    const next = turned(plan, x, plan.heading - angle);
    below.unshift(next);
    return next;
  }, base);
  return [...below, base, ...above];
}

/** The layout point at x along a reach, z up, `left` of the guard's plane. */
export function pointOn(plan: Plan, x: number, z: number, left = 0): Vec3 {
  const { cos, sin, ox, oy } = plan;
  if (left === 0) return [cos * x + ox, sin * x + oy, z];
  return [cos * x + ox - sin * left, sin * x + oy + cos * left, z];
}

/** The way a reach runs. */
export function directionOf({ cos, sin }: Plan): Vec3 {
  return [cos, sin, 0];
}
