/**
 * How a post stands that was measured, and where it was designed: data beside its place.
 *
 * @packageDocumentation
 */
import type { PostStage } from "./as-set.js";

/** A measured post beside the designed one; millimetres, degrees. */
export interface PostStance {
  readonly stage: PostStage;
  /** Of its centre from the guard's middle plane at its foot, + to the left, walking up. */
  readonly y: number;
  /** From plumb, + uphill and + to the left. */
  readonly lean: number;
  readonly leanAcross: number;
  /** Tangents of the two: how far it moves per millimetre up. */
  readonly tilt: { readonly along: number; readonly across: number };
  /** Where it was to stand. */
  readonly design: { readonly x: number; readonly offset: number; readonly baseZ: number };
}

/** A post in a message: `Post P3`, or `Post P3, as set` where it was measured. */
export function postName(post: { readonly mark: string; readonly set?: PostStance | undefined }): string {
  return `Post ${post.mark}${post.set === undefined ? "" : ", as set"}`;
}
