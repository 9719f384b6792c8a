/**
 * Lengths and their tape language: the one place other files take them from.
 *
 * `parseLength` reads, `formatLength` writes, `nearestFraction` is the mark in numbers. Inside the library a length is
 * a plain number of millimetres; rounding happens only at print.
 *
 * @packageDocumentation
 */
export { parseLength } from "./length-parse.js";
export {
  type Denominator,
  formatLength,
  type LengthFormat,
  nearestFraction,
  type TapeMark,
} from "./length-print.js";
export { type LengthUnit, MM_PER } from "./length-unit.js";
