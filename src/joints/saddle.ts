/**
 * How is the end of a round tube cut so that it sits on another round tube?
 *
 * Ordinates at equal stations round the branch, from the trigonometry of two right cylinders (see `saddle-fibre`): the
 * outer edge, the inner edge, and the one that matters to a wall cut square to its surface by saw, torch or grinder:
 * where that wall first touches. Beside each, the angle a weld has to work in.
 * φ = 0 at the toe (obtuse side), 180 at the heel (acute side), 90 along d × toe, d along the branch away from the
 * header. Any one length unit; millimetres elsewhere. Degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import { argument } from "./argument.js";
import { leastDihedral } from "./least-dihedral.js";
import { crossing, edgeDihedral, fibreDistance, wallLanding } from "./saddle-fibre.js";

/** A round branch, a round header and how they meet. */
export interface SaddleInput {
  /** Outer diameter and wall of the tube that is cut, millimetres; a wall of half the diameter is solid bar. */
  readonly branch: { readonly od: number; readonly wall: number };
  /** Outer diameter of the tube it sits on, millimetres. */
  readonly header: { readonly od: number };
  /** Between the centrelines, degrees, `leastAngle` to 90. A plumb post under a rail that rakes θ: 90 − θ. */
  readonly angle: number;
  /** Of the branch's axis from the header's axis along φ = 90, millimetres, signed. Default 0. */
  readonly offset?: number;
  /** Root gap all round, square to the header's skin, millimetres, ≥ 0. Default 0. */
  readonly gap?: number;
  /** How many equal steps round the branch, 3 to 3600. Default 24. */
  readonly stations?: number;
  /**
   * Flattest angle to accept, degrees, above 0 to 90. Default 15 (common practice, no source): a flatter branch ends in
   * a long feather edge that can be neither cut nor welded.
   */
  readonly leastAngle?: number;
}

/** One line along the branch. Distances run along the branch from the point nearest the header's axis, millimetres. */
export interface SaddleStation {
  /** Angle round the branch, degrees. */
  readonly phi: number;
  /** To the header's skin (plus gap) along the outside; null where the outside misses the header. */
  readonly outer: number | null;
  /** The same along the bore (along the axis for solid bar). */
  readonly inner: number | null;
  /** Where a wall cut square to its surface first touches: the greatest over its thickness, of the part that hits. */
  readonly effective: number | null;
  /**
   * Angle between the two skins at the outer edge, through the open air, degrees: where the branch's skin, carried across
   * the gap, meets the header's own. Null where it misses that.
   */
  readonly dihedral: number | null;
}

/** The saddle of a branch on a header. */
export interface Saddle {
  /** At φ = 0, 360/n, 2·360/n … */
  readonly stations: readonly SaddleStation[];
  /** Least angle between the skins over the whole edge, not only at stations, degrees; null when nothing touches. */
  readonly leastDihedral: number | null;
  /** Where it is, degrees; of equal places the one nearest the heel. */
  readonly leastDihedralAt: number | null;
  /** How far the branch hangs off the side of the header (plus gap), millimetres; 0 when all of it lands. */
  readonly missBy: number;
}

const CODE = "bad-saddle";
const MM = " mm";
const DEG = " deg";

function checked(input: SaddleInput): Required<SaddleInput> {
  const { branch, header, offset = 0, gap = 0, stations = 24, leastAngle = 15, angle } = input;
  const size = "Give the outside diameter.";
  argument(branch.od, { above: 0 }, { code: CODE, field: "branch.od", unit: MM, hint: size });
  argument(
    branch.wall,
    { above: 0, most: branch.od / 2 },
    { code: CODE, field: "branch.wall", unit: MM, hint: "Give half the outside diameter for solid bar." },
  );
  argument(header.od, { above: 0 }, { code: CODE, field: "header.od", unit: MM, hint: size });
  argument(
    angle,
    { above: 0, most: 90 },
    { code: CODE, field: "angle", unit: DEG, hint: "Give the smaller angle between the two centrelines." },
  );
  argument(
    offset,
    {},
    { code: CODE, field: "offset", unit: MM, hint: "Give 0 where the centrelines cross." },
  );
  argument(gap, { least: 0 }, { code: CODE, field: "gap", unit: MM, hint: "Give 0 for a tight fit." });
  argument(
    stations,
    { least: 3, most: 3600, whole: true },
    { code: CODE, field: "stations", unit: "", hint: "24 or 36 suit a template by hand." },
  );
  argument(
    leastAngle,
    { above: 0, most: 90 },
    { code: CODE, field: "leastAngle", unit: DEG, hint: "Leave it out for 15 degrees." },
  );
  if (angle < leastAngle) {
    throw new RakewrightError({
      code: "angle-too-flat",
      path: "angle",
      message: `\`angle\` must be at least ${leastAngle} deg between the centrelines, got ${angle}.`,
      hint: "Bring the branch in steeper, end it on a plate, or lower `leastAngle` knowingly.",
      values: { angle, leastAngle },
    });
  }
  return { branch, header, angle, offset, gap, stations, leastAngle };
}

/**
 * The saddle that a round branch is cut to so that it sits on a round header.
 *
 * @param input - sizes, angle between the centrelines, offset, root gap, number of stations
 * @returns ordinates at equal stations, the least angle between the skins, and how far the branch hangs off
 * @throws RakewrightError `bad-saddle` naming the field that is no number or out of range; `angle-too-flat` below
 *   `leastAngle`
 * @remarks Solid walls with true edges are assumed: no ovality, no weld seam, no bevel of the wall.
 * @example
 * // a 42.4 × 3.2 post under a 48.3 rail that rakes 35°
 * const cut = saddle({ branch: { od: 42.4, wall: 3.2 }, header: { od: 48.3 }, angle: 55 });
 * cut.stations[12]?.phi; // 180, the heel: the post's downhill face
 * cut.leastDihedral; // 55
 */
export function saddle(input: SaddleInput): Saddle {
  const { branch, header, angle, offset, gap, stations } = checked(input);
  const cut = crossing({ header, angle, offset, gap });
  const skin = crossing({ header, angle, offset });
  const outside = branch.od / 2;
  const inside = outside - branch.wall;
  const least = leastDihedral(skin, outside);
  const over = outside + Math.abs(offset) - cut.radius;
  return {
    stations: Array.from({ length: stations }, (_, i) => {
      const phi = (360 * i) / stations;
      return {
        phi,
        outer: fibreDistance(cut, outside, phi),
        inner: fibreDistance(cut, inside, phi),
        effective: wallLanding(cut, inside, outside, phi),
        dihedral: edgeDihedral(skin, outside, phi),
      };
    }),
    leastDihedral: least?.dihedral ?? null,
    leastDihedralAt: least?.phi ?? null,
    missBy: over > STATION_MM ? over : 0,
  };
}
