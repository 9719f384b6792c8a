/**
 * How is a tube cut flat to a face: a round one by a wrap template, a raking rail at a plumb face?
 *
 * A plane at θ from square crosses a fibre at φ of a round tube of radius r at r tan θ (1 − cos φ) past the short point.
 * A plumb face's normal n is level: in the axes of a rail that rakes θ and heads α to the left of that normal,
 * tan(miter) = −tan α / cos θ and sin(bevel) = −sin θ cos α. Plane trigonometry; frame of the layout (Z up). Any one
 * length unit, millimetres elsewhere. Degrees from a square cut.
 *
 * @packageDocumentation
 */
import { argument } from "./argument.js";
import { type SawCut, sawCut } from "./compound-miter.js";
import { atan2Degrees, cosDegrees, sinDegrees } from "./degrees.js";

const CODE = "bad-plane-cut";

/** A round tube cut by a plane. */
export interface PlaneCutInput {
  /** Outer diameter, millimetres. */
  readonly od: number;
  /** From a square cut, degrees, 0 to below 90. */
  readonly angle: number;
  /** How many equal steps round the tube, 3 to 3600. Default 24. */
  readonly stations?: number;
}

/** A wrap template for a flat cut. */
export interface PlaneCutOrdinates {
  /** φ from the short point, degrees; ordinate past the short point, along the tube, millimetres. */
  readonly stations: readonly { readonly phi: number; readonly ordinate: number }[];
  /** Long point less short point, millimetres. */
  readonly longMinusShort: number;
}

/**
 * Ordinates of a flat cut round a round tube.
 *
 * @param input - diameter, angle from square, number of stations
 * @returns ordinates at equal stations from the short point (φ = 0) to the long point (φ = 180) and back
 * @throws RakewrightError `bad-plane-cut` naming the field
 * @example planeCutOrdinates({ od: 42.4, angle: 45 }).longMinusShort; // 42.4
 */
export function planeCutOrdinates(input: PlaneCutInput): PlaneCutOrdinates {
  const { od, angle, stations = 24 } = input;
  argument(od, { above: 0 }, { code: CODE, field: "od", unit: " mm", hint: "Give the outside diameter." });
  argument(
    angle,
    { least: 0, below: 90 },
    { code: CODE, field: "angle", unit: " deg", hint: "Give the angle from a square cut." },
  );
  argument(
    stations,
    { least: 3, most: 3600, whole: true },
    { code: CODE, field: "stations", unit: "", hint: "24 or 36 suit a template by hand." },
  );
  const longMinusShort = (od * sinDegrees(angle)) / cosDegrees(angle);
  return {
    // 1 − cos φ = 2 sin²(φ/2) keeps the short point exact.
    stations: Array.from({ length: stations }, (_, i) => {
      const phi = (360 * i) / stations;
      return { phi, ordinate: longMinusShort * sinDegrees(phi / 2) ** 2 };
    }),
    longMinusShort,
  };
}

/** A raking rail that ends on a plumb face. */
export interface PlumbCutInput {
  /** Slope of the rail from level, degrees, above −90 to below 90; + climbs towards the face. */
  readonly slope: number;
  /**
   * From the face's normal, taken along the rail's travel, to the rail's direction in plan, degrees, above −90 to below
   * 90; + where the rail heads to the left of the normal. Default 0, square in plan.
   */
  readonly planAngle?: number;
}

/** Saw settings of a rail cut to a plumb face. `arrisMarks` turns them into marks on the four corners. */
export interface PlumbCut extends SawCut {
  /** Between the cut and a square one, degrees. */
  readonly trueAngle: number;
}

/**
 * The cut of a raking rail to a plumb face that may also be skewed in plan.
 *
 * @param input - slope of the rail, and its angle in plan from the face's normal
 * @returns miter, bevel and clock in the rail's own axes, along travel, sides plumb; the true angle from square
 * @throws RakewrightError `bad-plane-cut` naming the field
 * @example
 * plumbCut({ slope: 35 }).bevel; // −35: the saw tilts, the table stays square
 * arrisMarks(plumbCut({ slope: 35, planAngle: 15 }), 40, 40).topLeft; // millimetres past the centreline cut
 */
export function plumbCut(input: PlumbCutInput): PlumbCut {
  const { slope, planAngle = 0 } = input;
  const range = { above: -90, below: 90 };
  argument(slope, range, { code: CODE, field: "slope", unit: " deg", hint: "Give the slope from level." });
  argument(planAngle, range, {
    code: CODE,
    field: "planAngle",
    unit: " deg",
    hint: "Give 0 where the rail meets the face square in plan.",
  });
  const along = cosDegrees(slope) * cosDegrees(planAngle);
  const left = -sinDegrees(planAngle);
  const up = -sinDegrees(slope) * cosDegrees(planAngle);
  return { ...sawCut(along, left, up), trueAngle: atan2Degrees(Math.hypot(left, up), along) };
}
