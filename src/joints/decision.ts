/**
 * Decisions: what each end is cut to, before any geometry is made of it.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "../kernel/vec.js";
import type { MemberEnd } from "./joint.js";

/** What one end is cut to. Points and directions in the layout. */
export type Decision =
  | {
      readonly kind: "flat";
      readonly joint: string;
      readonly onto: readonly string[];
      readonly point: Vec3;
      readonly normal: Vec3;
      /** Set when the plane is shared with a mate. */
      readonly miter: boolean;
      readonly step: number;
    }
  | {
      readonly kind: "skin";
      readonly joint: string;
      readonly onto: readonly string[];
      readonly gap: number;
      readonly shoulder: "refuse" | "midline";
      readonly combine: Combine;
      /** What stops the end nearer than its headers do: other branches on one of them (see `shared-header`). */
      readonly beside?: readonly Decision[];
    };

/**
 * How several headers combine: the nearest, the farthest, the first where their skins are one, or of two mitred ones each
 * on its own side of their miter plane (the normal points from the first to the second).
 */
export type Combine =
  | { readonly by: "min" | "max" | "first" }
  | { readonly by: "select"; readonly point: Vec3; readonly normal: Vec3 };

/** The rule by which a rail is cut flush with its last post's far side, which it does not meet there. */
export const LAST_RAIL = "rule:last-rail";

/** Key of an end in maps. */
export function endKey(end: MemberEnd): string {
  return `${end.member}\u0000${end.end}`;
}

/** The decision and those beside it: each is one contact, or one group of headers, of the end. */
export function partsOf(decision: Decision): readonly Decision[] {
  return decision.kind === "skin" && decision.beside ? [decision, ...decision.beside] : [decision];
}

/** Everything an end is cut to, headers first. */
export function matesOf(decision: Decision): readonly string[] {
  return partsOf(decision).flatMap((part) => part.onto);
}
