/**
 * How far is a square rail rolled so that it meets the next one at a plan corner?
 *
 * Two plumb-sided sections that turn in plan while one rakes do not match in their miter: they differ by the twist (see
 * `compoundMiter`). Each is rolled by half of it, the first about its own axis one way, the second the other. Degrees.
 *
 * @packageDocumentation
 */
import { compoundMiter } from "../../joints/compound-miter.js";
import type { RailDesign } from "../document/design.js";
import type { RailPath, RailRun } from "./rail-path.js";

const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/** Twist of a direct corner between two runs, degrees; `turn` + to the left. */
export function cornerTwist(lower: RailRun, upper: RailRun, turn: number): number {
  return compoundMiter({ slopeIn: degrees(lower.slope), slopeOut: degrees(upper.slope), turn }).twist;
}

/** Roll of each run's member; 0 where nothing asks for one. */
export function cornerRolls(path: RailPath, rail: RailDesign): number[] {
  const rolls = path.runs.map(() => 0);
  if (rail.section.shape.kind === "round-tube" || rail.section.shape.kind === "round-bar") return rolls;
  path.corners.forEach(({ site, runs }) => {
    if (site.kind !== "twist") return;
    const [lower, upper] = runs.map((i) => path.runs[i] as RailRun) as [RailRun, RailRun];
    const twist = cornerTwist(lower, upper, site.angle);
    rolls[runs[0]] = (rolls[runs[0]] ?? 0) + twist / 2;
    rolls[runs[1]] = (rolls[runs[1]] ?? 0) - twist / 2;
  });
  return rolls;
}
