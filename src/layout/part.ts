/**
 * Members and joints of one part of the guard, and the frame they are placed in.
 *
 * @packageDocumentation
 */
import type { Joint } from "../joints/joint.js";
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { AsSet } from "./as-set/as-set.js";
import type { Design } from "./document/design.js";
import type { Shop } from "./document/shop.js";
import { directionOf, type Plan, pointOn } from "./site/plan.js";
import type { Site } from "./site/site.js";

/** Members and joints of one part of the guard. */
export interface Part {
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Parts one after another. */
export function joined(parts: readonly Part[]): Part {
  return {
    members: parts.flatMap((part) => part.members),
    joints: parts.flatMap((part) => part.joints),
    diagnostics: parts.flatMap((part) => part.diagnostics),
  };
}

/** One guard of the design: its site, and the names and the hand of what stands there. */
export interface Place {
  readonly design: Design;
  readonly site: Site;
  /** Of this guard: which side of the stair it stands on, looking up. */
  readonly side: "left" | "right";
  /** Whose slip fits and finish are kept to; none: steel on steel. */
  readonly shop?: Shop;
  /** What stands already; none: everything is as designed. */
  readonly asSet?: AsSet;
  /** Before every id, e.g. `right-`; empty where the design has one guard. */
  readonly prefix: string;
  /** After every mark, e.g. `-R`. */
  readonly suffix: string;
}

/** The plan of a reach. */
export function planOf(place: Place, reach: number): Plan {
  return place.site.plans[reach] as Plan;
}

/** A layout point: x along the guard, z up, `inward` of the guard's plane towards the walking side. */
export function at(place: Place, reach: number, x: number, z: number, inward = 0): Vec3 {
  // On the left of the stair the walking side is to the guard's right.
  return pointOn(planOf(place, reach), x, z, inward === 0 ? 0 : place.side === "left" ? -inward : inward);
}

/** The direction towards the walking side. */
export function inwardOf(place: Place, reach: number): Vec3 {
  const { cos, sin } = planOf(place, reach);
  return place.side === "left" ? [sin, -cos, 0] : [-sin, cos, 0];
}

/** The way the guard runs. */
export function alongOf(place: Place, reach: number): Vec3 {
  return directionOf(planOf(place, reach));
}
