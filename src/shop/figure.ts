/**
 * Figures on a paper: one length in its primary form with the decimal beside it.
 *
 * Inches: a fraction to the nearest 1/denominator and the decimal inches in brackets; millimetres: to the nearest
 * 0.1 mm. Each figure is rounded on its own. Units are named once, in the paper's header.
 *
 * @packageDocumentation
 */
import { type Denominator, formatLength, MM_PER, nearestFraction } from "../kernel/length.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { PaperUnit } from "./cut-list-types.js";

/** How a paper writes lengths. */
export interface FigureStyle {
  readonly unit: PaperUnit;
  readonly denominator: Denominator;
}

/** Tenths of a millimetre: the finest mark of a metric paper. */
const FINEST_MM = 0.1;
/** The pound, kilograms; exact (international yard and pound agreement of 1959). */
const KG_PER_POUND = 0.45359237;

/**
 * A length to the nearest mark, with its decimal.
 *
 * @example figure(4009.414, { unit: "in", denominator: 32 }); // "157-27/32 (157.851)"
 */
export function figure(mm: number, style: FigureStyle): string {
  if (style.unit === "mm") return formatLength(mm, { unit: "mm", decimals: 1, mark: false });
  const fraction = formatLength(mm, { unit: "in-fraction", denominator: style.denominator, mark: false });
  return `${fraction} (${formatLength(mm, { unit: "in", decimals: 3, mark: false })})`;
}

/**
 * A length to the next mark up, with its exact decimal: stock cut to it is never short of the piece.
 *
 * @example figureUp(4009.414, { unit: "in", denominator: 32 }); // "157-7/8 (157.851)"
 */
export function figureUp(mm: number, style: FigureStyle): string {
  if (style.unit === "mm") return figure(Math.ceil((mm - STATION_MM) / FINEST_MM) * FINEST_MM, style);
  const mark = nearestFraction(mm, style.denominator);
  const up = mark.error < -STATION_MM ? mark.mm + MM_PER.in / style.denominator : mark.mm;
  const fraction = formatLength(up, { unit: "in-fraction", denominator: style.denominator, mark: false });
  return `${fraction} (${formatLength(mm, { unit: "in", decimals: 3, mark: false })})`;
}

/** An angle to the nearest 0.1°, without a sign on zero. */
export function degrees(angle: number): string {
  return `${(Math.round(angle * 10) / 10 + 0).toFixed(1)}°`;
}

/** A mass in kilograms and pounds, to 0.1. */
export function massText(kg: number): string {
  return `${kg.toFixed(1)} kg (${(kg / KG_PER_POUND).toFixed(1)} lb)`;
}

/** What the rounding is, in words, for the head of the paper. */
export function roundingText({ unit, denominator }: FigureStyle): string {
  return unit === "mm"
    ? "millimetres to the nearest 0.1 mm, each rounded on its own from the exact figure"
    : `inches to the nearest 1/${denominator}, decimal inches in brackets; each rounded on its own`;
}
