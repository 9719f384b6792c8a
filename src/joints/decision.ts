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
    };

/**
 * How several headers combine: the nearest, the farthest, the first where their skins are one, or of two mitred ones each
 * on its own side of their miter plane (the normal points from the first to the second).
 */
export type Combine =
  | { readonly by: "min" | "max" | "first" }
  | { readonly by: "select"; readonly point: Vec3; readonly normal: Vec3 };

/** Key of an end in maps. */
export function endKey(end: MemberEnd): string {
  return `${end.member}\u0000${end.end}`;
}
