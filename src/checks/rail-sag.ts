/**
 * How much does a rail sag under its own weight where it lies on two stops, and what brings it straight again?
 *
 * A beam on two supports at the ends of a span L, loaded by the part of its weight that is square to it, w cos θ:
 * sag 5wL⁴/384EI in the middle, slope wL³/24EI at the ends, moment wL²/8. A prop in the middle that brings that point back
 * onto the line of the supports carries 5wL/8; each half is then a beam built in at the prop and sags wl⁴/185EI with l = L/2
 * (beam formulas as in any handbook of the trade; 185 is 184.6 rounded). What reaches out past the supports is left out: it
 * lifts the middle. Shear is left out: thousandths at such spans. Millimetres, newtons, degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { sectionProperties } from "../members/properties.js";
import type { Section } from "../members/section.js";
import type { Stiffness } from "./stiffness.js";

/** Standard acceleration of free fall, m/s², exact (third CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;

/** Of a beam built in at one end and supported at the other: greatest sag w l⁴/(185 E I). */
const PROPPED = 185;

/** A rail as it lies. */
export interface LyingRail {
  /** It bends in its own up direction: a rolled section gives its rolled region. */
  readonly section: Section;
  readonly material: Pick<Stiffness, "modulus" | "density">;
  /** Along the rail from support to support, mm. */
  readonly span: number;
  /** Of the rail from level, degrees, either way. */
  readonly slope: number;
}

/** What the rail's own weight does to it. */
export interface RailSag {
  /** Of the bare section, N/mm. */
  readonly weightPerLength: number;
  /** Of it square to the rail, N/mm. */
  readonly load: number;
  /** In the middle, square to the line of the supports, mm. */
  readonly sag: number;
  /** How far its ends are off that line, degrees. */
  readonly endSlope: number;
  /** Bending stress in the middle, N/mm². */
  readonly stress: number;
  readonly prop: {
    /** From either support along the rail, mm. */
    readonly at: number;
    /** Square to the rail, N. */
    readonly force: number;
    /** What each half sags once the prop holds the middle, mm. */
    readonly halfSag: number;
  };
  /** How much nearer its ends come: (π²/4) sag²/L, of half a sine, mm. */
  readonly shortening: number;
}

/**
 * Sag, end slope, stress and prop of a rail on two supports.
 *
 * @param rail - section, material, span above 0 and slope less than 90 degrees
 * @throws RakewrightError `bad-span` for a span or a slope out of range
 * @example
 * ```ts
 * const section = roundTube({ od: 48.26, wall: 3.683 });
 * railSag({ section, material: stiffnessOf("mild-steel"), span: 6096, slope: 0 }).sag; // 27.67…
 * ```
 */
export function railSag({ section, material, span, slope }: LyingRail): RailSag {
  if (!(span > 0 && span < Number.POSITIVE_INFINITY && Math.abs(slope) < 90)) {
    throw new RakewrightError({
      code: "bad-span",
      message: `Rail on two stops: expected a span above 0 mm and a slope within 90 degrees, got ${span} and ${slope}.`,
      hint: "A rail that stands plumb does not sag.",
      values: { span, slope },
    });
  }
  const { area, ix, wElasticX } = sectionProperties(section);
  const weightPerLength = area * material.density * STANDARD_GRAVITY * 1e-9;
  const load = weightPerLength * Math.cos((slope * Math.PI) / 180);
  const stiff = material.modulus * ix;
  const sag = (5 * load * span ** 4) / (384 * stiff);
  return {
    weightPerLength,
    load,
    sag,
    endSlope: ((load * span ** 3) / (24 * stiff)) * (180 / Math.PI),
    stress: (load * span ** 2) / 8 / wElasticX,
    prop: {
      at: span / 2,
      force: (5 * load * span) / 8,
      halfSag: (load * span ** 4) / (16 * PROPPED * stiff),
    },
    shortening: (Math.PI ** 2 / 4) * (sag ** 2 / span),
  };
}
