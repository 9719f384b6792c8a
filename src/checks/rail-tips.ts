/**
 * Where do the ends of a rail lie that reaches out past the two stops it is on?
 *
 * With a and b the lengths past the stops, L between them and w the weight square to the rail, the rail turns over the stop
 * beside b by θ = w (−L³/24 + b²L/6 + a²L/12)/EI, + down outward; its tip is then θ b + w b⁴/8EI low and θ + w b³/6EI off, and
 * the moment over that stop is w b²/2 (superposition of the beam formulas of any handbook of the trade). The weight past one
 * stop lifts the rail off the other when its middle is not between them: b > L + a. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { sectionProperties } from "../members/properties.js";
import { type LyingRail, railSag } from "./rail-sag.js";

/** One end of a rail as it lies. */
export interface RailTip {
  /** Past the stop, along the rail, mm. */
  readonly past: number;
  /** Below the line of the stops, square to it, mm; − above it. */
  readonly drop: number;
  /** Of the rail there from that line, degrees; + turned down outward. */
  readonly slope: number;
  /** Bending stress over the stop, N/mm². */
  readonly stress: number;
  /** True where the weight past this stop lifts the rail off the other one. */
  readonly lifts: boolean;
}

/**
 * Both ends of a rail that lies on two stops.
 *
 * @param rail - as for `railSag`; `past`: how far it reaches out before the first and past the last stop, mm, not below 0
 * @throws RakewrightError `bad-span` for a span or a slope out of range
 * @example
 * ```ts
 * railTips({ section, material, span: 3000, slope: 0, past: [0, 0] })[1].slope; // −1 · railSag(…).endSlope
 * ```
 */
export function railTips(
  rail: LyingRail & { readonly past: readonly [number, number] },
): readonly [RailTip, RailTip] {
  const { span } = rail;
  const { load } = railSag(rail);
  const { ix, wElasticX } = sectionProperties(rail.section);
  const bend = load / (rail.material.modulus * ix);
  const tip = (past: number, other: number): RailTip => {
    const turn = bend * (-(span ** 3) / 24 + (past ** 2 * span) / 6 + (other ** 2 * span) / 12);
    return {
      past,
      drop: turn * past + (bend * past ** 4) / 8,
      slope: (turn + (bend * past ** 3) / 6) * (180 / Math.PI),
      stress: (load * past ** 2) / 2 / wElasticX,
      lifts: past > span + other,
    };
  };
  const [a, b] = rail.past;
  return [tip(a, b), tip(b, a)];
}
