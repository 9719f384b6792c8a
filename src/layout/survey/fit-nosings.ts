/**
 * How steep is a stair that is not true, and how far is each nosing off a straight line?
 *
 * Least squares of the plumb misses, about the mean place (closed form). It is the best estimate of the pitch; the line for
 * setting a straight rail is the one of least greatest miss (`measured-line.ts`), and whether any straight rail keeps its
 * height is told by `rail-band.ts`. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import { TELLS_NOTHING } from "../../kernel/tolerance.js";

/** A point of the plumb plane through the stair, mm. */
export interface PlumbPoint {
  /** Along the stair. */
  readonly x: number;
  /** Up. */
  readonly z: number;
}

/** A line of least squares. */
export interface NosingFit {
  /** Degrees from level. */
  readonly pitch: number;
  /** tan(pitch). */
  readonly slope: number;
  /** Height of the line at x = 0, mm. */
  readonly z0: number;
  /** Plumb from the line up to each nosing, mm; + stands proud of it. */
  readonly misses: readonly number[];
  /** Each miss over its own standard uncertainty; null where nothing checks it (two nosings, or one far from all others). */
  readonly studentised: readonly (number | null)[];
}

/** Refuses points that make no line: fewer than two, not finite, or not each farther along. */
export function checkAlong(points: readonly PlumbPoint[]): void {
  const wrong = points.findIndex((own, i) => {
    const before = points[i - 1];
    const sound = Number.isFinite(own.x) && Number.isFinite(own.z);
    return !(sound && (before === undefined || own.x > before.x));
  });
  if (wrong < 0 && points.length >= 2) return;
  const own = points[wrong];
  throw new RakewrightError({
    code: "survey-bad-nosings",
    message: `Nosings: expected at least two, each farther along than the one before, got ${
      own === undefined ? points.length : `nosing ${wrong + 1} at ${own.x}, ${own.z} mm`
    }.`,
    hint: "Give them from the lowest up, in millimetres along and up.",
    values: { nosings: points.length },
  });
}

/**
 * The line of least squares through nosings.
 *
 * @param points - from the lowest up; only differences of x and z count
 * @param sigma - standard uncertainty of a height, mm, > 0; default 1
 * @returns line, misses, and which nosing does not agree: |studentised| above 2.5 is worth another look (common practice, no
 *   source)
 * @throws RakewrightError `survey-bad-nosings` for fewer than two nosings or one that does not stand farther along
 * @example fitNosings([{ x: 0, z: 0 }, { x: 280, z: 190 }, { x: 560, z: 386 }]).misses; // [1, -2, 1]
 */
export function fitNosings(points: readonly PlumbPoint[], sigma = 1): NosingFit {
  checkAlong(points);
  const n = points.length;
  const mean = (of: (own: PlumbPoint) => number) => points.reduce((sum, own) => sum + of(own), 0) / n;
  const [x, z] = [mean((own) => own.x), mean((own) => own.z)];
  const square = points.reduce((sum, own) => sum + (own.x - x) ** 2, 0);
  const slope = points.reduce((sum, own) => sum + (own.x - x) * (own.z - z), 0) / square;
  const misses = points.map((own) => own.z - z - slope * (own.x - x));
  return {
    pitch: (Math.atan(slope) * 180) / Math.PI,
    slope,
    z0: z - slope * x,
    misses,
    studentised: points.map((own, i) => {
      const redundancy = 1 - 1 / n - (own.x - x) ** 2 / square;
      return redundancy < TELLS_NOTHING ? null : (misses[i] as number) / (sigma * Math.sqrt(redundancy));
    }),
  };
}
