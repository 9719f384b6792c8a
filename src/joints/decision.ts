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
      /** How several headers combine: the nearest, the farthest, or the first where their skins are one. */
      readonly combine: "min" | "max" | "first";
      /** What stops the end nearer than its headers do: other branches on one of them (see `shared-header`). */
      readonly beside?: readonly Decision[];
    };

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
