/**
 * Posts in equal spaces: how many, and where?
 *
 * The fewest equal spaces none of which is greater than the greatest allowed, in plan or along the rail: one along a rake at
 * θ is 1/cos θ longer than in plan (trade geometry). Millimetres.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../../kernel/tolerance.js";
import type { SpacedPosts } from "../document/design.js";

/**
 * Stations of spaced posts, both ends included.
 *
 * @param spaced - first and last station, and the rule
 * @param slope - of the leg, rise per run
 * @example
 * ```ts
 * spacedStations({ from: 0, to: 1200, by: { type: "greatest", space: 500, along: "plan" } }, 0); // 0, 400, 800, 1200
 * ```
 */
export function spacedStations({ from, to, by }: SpacedPosts, slope: number): number[] {
  const plan = to - from;
  const length = by.type === "greatest" && by.along === "rake" ? plan * Math.hypot(1, slope) : plan;
  // A space that fits to within what two stations may differ by is not split in two.
  const spaces = by.type === "count" ? by.spaces : Math.max(1, Math.ceil((length - STATION_MM) / by.space));
  return Array.from({ length: spaces + 1 }, (_, i) => (i === spaces ? to : from + (plan * i) / spaces));
}
