/**
 * One measured input of a design, and what the design is when that input is a little different.
 *
 * An unknown is a reading that something is laid out by: a nosing's place, a leg's length, a turn, the slope of a floor, a post
 * or a far end as it was found. Counted steps are inputs that nobody measured. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { DIFFERENCE_DEG, DIFFERENCE_MM } from "../../kernel/tolerance.js";
import type { AsSet, AsSetPost } from "../as-set/as-set.js";
import type { Design, LegDesign } from "../document/design.js";
import type { Shop } from "../document/shop.js";
import type { TapedNosing } from "../site/nosing-line.js";

/** What is laid out: a design, and what stands already. */
export interface LaidCase {
  readonly design: Design;
  readonly shop?: Shop | undefined;
  readonly asSet?: AsSet | undefined;
}

/** One input. `leg` and `post` are indices: of the design's legs; of the posts and legs as set. */
export type Unknown =
  /** Nosing 1 is the lowest; 0 with `z` is the lower floor. */
  | {
      readonly kind: "nosing";
      readonly leg: number;
      readonly nosing: number;
      readonly axis: "x" | "z";
    }
  | { readonly kind: "steps"; readonly leg: number; readonly field: "floorToFloor" | "going" }
  | { readonly kind: "length"; readonly leg: number }
  | { readonly kind: "slope"; readonly leg: number }
  | { readonly kind: "turn"; readonly leg: number; readonly field: "past" | "before" | "angle" }
  | {
      readonly kind: "post";
      readonly post: number;
      readonly field: "x" | "baseZ" | "lean" | "leanAcross";
    }
  | { readonly kind: "far-end"; readonly leg: number };

const isAngle = (own: Unknown): boolean =>
  own.kind === "slope" ||
  (own.kind === "turn" && own.field === "angle") ||
  (own.kind === "post" && (own.field === "lean" || own.field === "leanAcross"));

/** What a reading of it was of, as papers say it. */
export function sayUnknown({ design, asSet }: LaidCase, own: Unknown): string {
  if (own.kind === "post") {
    const words = { x: "place", baseZ: "base", lean: "lean", leanAcross: "lean across" };
    return `the ${words[own.field]} of ${asSet?.posts[own.post]?.post ?? "a post"} as set`;
  }
  if (own.kind === "far-end") return `the far end of the ${asSet?.legs[own.leg]?.leg ?? "leg"} as set`;
  const leg = design.legs[own.leg]?.id ?? "leg";
  if (own.kind === "steps") return `the ${own.field === "going" ? "going" : "floor to floor"} of the ${leg}`;
  if (own.kind === "length" || own.kind === "slope") return `the ${own.kind} of the ${leg}`;
  if (own.kind === "turn") {
    const words = { past: "place of the corner", before: "room after the corner", angle: "corner angle" };
    return `the ${words[own.field]} of the ${leg}`;
  }
  const flight = design.legs.filter((one) => one.along === "stair").length > 1 ? ` of the ${leg}` : "";
  if (own.nosing === 0) return `the height of the floor${flight}`;
  return `the ${own.axis === "x" ? "run" : "height"} of nosing ${own.nosing}${flight}`;
}

/** How far an unknown is moved to see what moves with it; less than half a step where nosings are close. */
export function stepOf({ design }: LaidCase, own: Unknown): number {
  if (isAngle(own)) return DIFFERENCE_DEG;
  if (own.kind !== "nosing") return DIFFERENCE_MM;
  const nosings = design.legs[own.leg]?.stair?.nosings ?? [];
  const read = ({ run, height }: TapedNosing) => (own.axis === "x" ? run : height);
  const [lowest] = nosings;
  const rises = nosings.slice(1).map((one, i) => read(one) - read(nosings[i] as TapedNosing));
  const floor = own.axis === "z" && lowest !== undefined ? [lowest.height] : [];
  return Math.min(DIFFERENCE_MM, ...[...rises, ...floor].map((rise) => rise / 4));
}

function movedNosings(
  nosings: readonly TapedNosing[],
  { nosing, axis }: Extract<Unknown, { kind: "nosing" }>,
  by: number,
): readonly TapedNosing[] {
  // Heights are from the floor and runs from the lowest nosing: where these move, everything measured from them does.
  const all = axis === "z" ? nosing === 0 : nosing === 1;
  return nosings.map((own, i) => {
    const moves = all ? (axis === "z" ? -by : i === 0 ? 0 : -by) : i + 1 === nosing ? by : 0;
    if (moves === 0) return own;
    return axis === "x" ? { ...own, run: own.run + moves } : { ...own, height: own.height + moves };
  });
}

type Moved<K extends Unknown["kind"]> = Extract<Unknown, { kind: K }>;
type OfLeg = Moved<"nosing" | "steps" | "length" | "slope" | "turn">;

function movedLeg(leg: LegDesign, own: OfLeg, by: number): LegDesign {
  if (own.kind === "slope") return { ...leg, slope: leg.slope + by };
  if (own.kind === "length") return leg.length === undefined ? leg : { ...leg, length: leg.length + by };
  if (own.kind === "turn") {
    const { turn } = leg;
    return turn === undefined ? leg : { ...leg, turn: { ...turn, [own.field]: turn[own.field] + by } };
  }
  const { stair } = leg;
  if (stair === undefined) return leg;
  if (stair.nosings === undefined) {
    return own.kind === "steps" ? { ...leg, stair: { ...stair, [own.field]: stair[own.field] + by } } : leg;
  }
  return own.kind === "nosing"
    ? { ...leg, stair: { ...stair, nosings: movedNosings(stair.nosings, own, by) } }
    : leg;
}

function movedPost(post: AsSetPost, field: Moved<"post">["field"], by: number): AsSetPost {
  return { ...post, [field]: (post[field] ?? 0) + by };
}

const replaced = <T>(all: readonly T[], index: number, by: (own: T) => T): readonly T[] =>
  all.map((own, i) => (i === index ? by(own) : own));

/**
 * The same case with one input moved.
 *
 * @param laid - stays as it is
 * @param own - one of its unknowns
 * @param by - mm, or degrees of angles
 */
export function movedCase(laid: LaidCase, own: Unknown, by: number): LaidCase {
  const { design, asSet } = laid;
  if (own.kind === "post" || own.kind === "far-end") {
    if (asSet === undefined) return laid;
    const moved =
      own.kind === "post"
        ? { ...asSet, posts: replaced(asSet.posts, own.post, (post) => movedPost(post, own.field, by)) }
        : { ...asSet, legs: replaced(asSet.legs, own.leg, (leg) => ({ ...leg, length: leg.length + by })) };
    return { ...laid, asSet: moved };
  }
  const legs = replaced(design.legs, own.leg, (leg) => movedLeg(leg, own, by));
  return { ...laid, design: { ...design, legs } };
}
