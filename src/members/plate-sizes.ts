/**
 * The sizes of a plate as it is ordered and marked out, read from its section: over all, and every round hole.
 *
 * Holes are told from the left and the bottom edge of the outline, the edges a tape or a square hooks. Millimetres.
 *
 * @packageDocumentation
 */
import type { Loop, Segment } from "../kernel/region.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Section } from "./section.js";

/** A round hole as it is marked out. */
export interface MarkedHole {
  readonly diameter: number;
  /** Of its centre from the left and the bottom edge. */
  readonly fromLeft: number;
  readonly fromBottom: number;
}

/** Over-all sizes of an outline, and its round holes in their order. */
export interface PlateSizes {
  readonly width: number;
  readonly depth: number;
  readonly holes: readonly MarkedHole[];
  /** Holes of any other shape. */
  readonly otherHoles: number;
}

/**
 * Sizes of a plate's section.
 *
 * @example
 * plateSizes(plate({ id: "T", outline: { width: 40, depth: 60 }, thickness: 6, holes: [{ at: [0, 10], diameter: 13 }],
 *   at: [0, 0, 0], normal: [0, 1, 0] }).section).holes; // [{ diameter: 13, fromLeft: 20, fromBottom: 40 }]
 */
export function plateSizes({ region }: Section): PlateSizes {
  const [u, v] = [extentAlong(region.outer, [1, 0]), extentAlong(region.outer, [0, 1])];
  const holes = region.holes.flatMap((loop) => {
    const circle = circleOf(loop);
    if (!circle) return [];
    const [cu, cv] = circle.centre;
    return [{ diameter: 2 * circle.radius, fromLeft: cu - u.least, fromBottom: cv - v.least }];
  });
  return {
    width: u.greatest - u.least,
    depth: v.greatest - v.least,
    holes,
    otherHoles: region.holes.length - holes.length,
  };
}

function circleOf(loop: Loop): (Segment & { readonly kind: "arc" }) | null {
  const [first] = loop;
  if (first?.kind !== "arc") return null;
  const round = loop.every(
    (s) =>
      s.kind === "arc" &&
      s.radius === first.radius &&
      s.centre[0] === first.centre[0] &&
      s.centre[1] === first.centre[1],
  );
  return round ? first : null;
}
