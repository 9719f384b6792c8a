/**
 * The line a straight rail follows over nosings that are not true: the one whose worst plumb miss is least, or, when asked for,
 * the one of least squares.
 *
 * The best line in the greatest-miss sense touches three nosings in turn (Chebyshev's alternation theorem): parallel to the
 * chord of the outer two, half-way to the one between. All triples are tried and the one with the smallest true greatest
 * miss is kept; stairs have few steps. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import { fitNosings } from "../survey/fit-nosings.js";
import type { LineFit } from "../survey/survey-terms.js";
import {
  type Nosing,
  type NosingLine,
  nosingLine,
  type StairSteps,
  type TapedNosing,
} from "./nosing-line.js";

interface Fit {
  readonly slope: number;
  readonly z0: number;
  readonly miss: number;
}

function missOf(points: readonly Nosing[], slope: number, z0: number): number {
  return Math.max(...points.map((own) => Math.abs(own.z - z0 - slope * own.x)));
}

/** The line of least greatest miss through points in order of x. */
function leastMiss(points: readonly Nosing[]): Fit {
  const [first, last] = [points[0] as Nosing, points.at(-1) as Nosing];
  const chord = (last.z - first.z) / (last.x - first.x);
  let best: Fit = { slope: chord, z0: first.z - chord * first.x, miss: 0 };
  best = { ...best, miss: missOf(points, best.slope, best.z0) };
  for (let i = 0; i < points.length; i++) {
    for (let k = i + 2; k < points.length; k++) {
      const [a, c] = [points[i] as Nosing, points[k] as Nosing];
      const slope = (c.z - a.z) / (c.x - a.x);
      for (let j = i + 1; j < k; j++) {
        const b = points[j] as Nosing;
        const z0 = (a.z - slope * a.x + b.z - slope * b.x) / 2;
        const miss = missOf(points, slope, z0);
        if (miss < best.miss) best = { slope, z0, miss };
      }
    }
  }
  return best;
}

/** The line of least squares. */
function leastSquaresFit(points: readonly Nosing[]): Fit {
  const { slope, z0, misses } = fitNosings(points);
  return { slope, z0, miss: Math.max(...misses.map(Math.abs)) };
}

function refuse(taped: readonly TapedNosing[], what: string): never {
  throw new RakewrightError({
    code: "bad-stair",
    message: `Stair: expected at least two nosings, each farther along and higher than the one before, got ${what}.`,
    hint: "Tape each nosing from the lowest nosing along and from the lower floor up.",
    values: { nosings: taped.length },
  });
}

/**
 * The nosing line of measured nosings.
 *
 * @param taped - from the lowest nosing (run 0) to the landing's edge
 * @param by - which line; default the one of least greatest miss
 * @returns the line; `riser` and `going` are means, `worstMiss` says how far off the worst step is
 * @throws RakewrightError `bad-stair` for fewer than two nosings, or one that does not stand farther along and higher
 * @example
 * ```ts
 * measuredLine([{ run: 0, height: 190 }, { run: 280, height: 382 }, { run: 560, height: 570 }]).worstMiss; // 1
 * ```
 */
export function measuredLine(taped: readonly TapedNosing[], by: LineFit = "least-miss"): NosingLine {
  const [low, top] = [taped[0], taped.at(-1)];
  if (low === undefined || top === undefined || taped.length < 2) refuse(taped, `${taped.length}`);
  taped.forEach((own, i) => {
    const before = taped[i - 1];
    const sound = before === undefined || (own.run > before.run && own.height > before.height);
    if (!(sound && own.height > 0 && Number.isFinite(own.run) && Number.isFinite(own.height))) {
      refuse(taped, `nosing ${i + 1} at ${own.run}, ${own.height} mm high`);
    }
  });
  const nosings = taped.map(
    (own, i): Nosing => ({ number: i + 1, x: own.run - top.run, z: own.height - top.height }),
  );
  const fit = by === "least-miss" ? leastMiss(nosings) : leastSquaresFit(nosings);
  const steps = taped.length - 1;
  const floorZ = -top.height;
  return {
    pitch: (Math.atan(fit.slope) * 180) / Math.PI,
    slope: fit.slope,
    riser: (top.height - low.height) / steps,
    going: (top.run - low.run) / steps,
    slopePerStep: Math.hypot(top.height - low.height, top.run - low.run) / steps,
    nosings,
    z0: fit.z0,
    worstMiss: fit.miss,
    floorZ,
    footX: (floorZ - fit.z0) / fit.slope,
  };
}

/** The nosing line of steps that are counted or measured. */
export function stepLine(steps: StairSteps): NosingLine {
  return steps.nosings === undefined ? nosingLine(steps) : measuredLine(steps.nosings, steps.terms?.fit);
}
