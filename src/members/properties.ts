/**
 * Section properties: how much steel, how stiff, how strong a section is.
 *
 * Exact for lines and arcs: Green's theorem side by side (`moments.ts`), plastic moduli by the exact equal-area axis
 * (`plastic.ts`). Axes are the section's own: X parallel to u (across), Y parallel to v (up), both through the centroid.
 * Values are geometric: effective sections, local buckling and bores are not considered.
 *
 * @packageDocumentation
 */
import { loopsOf, type Segment, segmentLength } from "../kernel/region.js";
import { ROUNDING_SHARE } from "../kernel/tolerance.js";
import type { Vec2 } from "../kernel/vec.js";
import { MATERIALS } from "./materials.js";
import { sideFrom, sideMoment, sideProduct, sideRange } from "./moments.js";
import { plasticModulus } from "./plastic.js";
import type { Section } from "./section.js";
import { torsionOf } from "./torsion.js";

/** Properties of a section; millimetre units. */
export interface SectionProperties {
  /** mm². */
  readonly area: number;
  /** Length of the outer loop alone, mm: what is painted. */
  readonly perimeter: number;
  /** (u, v), mm from the member's axis. */
  readonly centroid: Vec2;
  /** Second moment about the centroidal axis parallel to u: bending in the member's up direction, mm⁴. */
  readonly ix: number;
  /** Second moment about the centroidal axis parallel to v: bending sideways, mm⁴. */
  readonly iy: number;
  /** Product moment about the centroid, mm⁴; zero when u or v is an axis of symmetry. */
  readonly ixy: number;
  /** Greatest and least second moment about any axis through the centroid, mm⁴: I_u and I_v of the angle tables. */
  readonly iMajor: number;
  readonly iMinor: number;
  /** From X to the axis of `iMajor`, degrees, towards Y positive, above −90 to 90; 0 where all axes are alike. */
  readonly majorAxis: number;
  /** Elastic moduli about X and Y to the farther fibre, mm³; with `ixy` not zero a moment about X does not bend about X alone. */
  readonly wElasticX: number;
  readonly wElasticY: number;
  /** Plastic moduli about the equal-area axes parallel to u and v, mm³. */
  readonly wPlasticX: number;
  readonly wPlasticY: number;
  /** Torsion constant, mm⁴; absent where there is no trustworthy closed form. */
  readonly torsion?: number;
  /** What `torsion` is, or why it is absent. */
  readonly torsionNote: string;
  /** kg/m at 7850 kg/m³. */
  readonly massPerMetre: number;
}

/**
 * Properties of a section.
 *
 * @param section - any section whose region is closed and simple, as every constructor here makes it
 * @returns exact values (rounding only), see {@link SectionProperties}
 * @example
 * sectionProperties(rectBar({ width: 10, depth: 20 })).ix; // 10·20³/12 = 6666.67
 */
export function sectionProperties(section: Section): SectionProperties {
  const drawn = loopsOf(section.region).flat();
  const reference = pointOfReference(drawn);
  const near = drawn.map((side) => sideFrom(side, reference, false));
  const area = total(near, 1);
  const centroid: Vec2 = [
    reference[0] +
      total(
        near.map((side) => sideFrom(side, [0, 0], true)),
        2,
      ) /
        area,
    reference[1] + total(near, 2) / area,
  ];
  const x = axisProperties(drawn, centroid, false, area);
  const y = axisProperties(drawn, centroid, true, area);
  const ixy = drawn.reduce((sum, side) => sum + sideProduct(sideFrom(side, centroid, false)), 0);
  return {
    area,
    perimeter: section.region.outer.reduce((sum, side) => sum + segmentLength(side), 0),
    centroid,
    ix: x.inertia,
    iy: y.inertia,
    ixy,
    ...principal(x.inertia, y.inertia, ixy),
    wElasticX: x.elastic,
    wElasticY: y.elastic,
    wPlasticX: x.plastic,
    wPlasticY: y.plastic,
    ...torsionOf(section.shape),
    massPerMetre: area * 1e-6 * MATERIALS["mild-steel"].density,
  };
}

/** The middle of the region's box: moments are taken from near by, so that an outline far from the axis loses no digits. */
function pointOfReference(sides: readonly Segment[]): Vec2 {
  const middle = (ranges: readonly (readonly [number, number])[]): number =>
    (Math.min(...ranges.map((r) => r[0])) + Math.max(...ranges.map((r) => r[1]))) / 2;
  return [middle(sides.map((side) => sideRange(sideFrom(side, [0, 0], true)))), middle(sides.map(sideRange))];
}

function total(sides: readonly Segment[], k: 1 | 2 | 3): number {
  return sides.reduce((sum, side) => sum + sideMoment(side, k), 0);
}

/** Principal second moments by Mohr's circle: I(θ) = (ix + iy)/2 + (ix − iy)/2·cos 2θ − ixy·sin 2θ. */
function principal(ix: number, iy: number, ixy: number) {
  const mean = (ix + iy) / 2;
  const half = (ix - iy) / 2;
  const round = (value: number): number => (Math.abs(value) <= ROUNDING_SHARE * mean ? 0 : value);
  const radius = Math.hypot(half, ixy);
  const majorAxis = (Math.atan2(round(-ixy), round(half)) * 90) / Math.PI;
  return { iMajor: mean + radius, iMinor: mean - radius, majorAxis };
}

function axisProperties(
  drawn: readonly Segment[],
  centroid: Vec2,
  quarter: boolean,
  area: number,
): { inertia: number; elastic: number; plastic: number } {
  const sides = drawn.map((side) => sideFrom(side, centroid, quarter));
  const inertia = total(sides, 3);
  const farthest = Math.max(...sides.flatMap((side) => sideRange(side).map(Math.abs)));
  return {
    inertia,
    elastic: inertia / farthest,
    plastic: plasticModulus(sides, area, total(sides, 2)).modulus,
  };
}
