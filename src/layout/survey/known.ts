/**
 * Rough places found so far, by coordinate name, mm.
 *
 * @packageDocumentation
 */
import type { CoordinateName } from "./reading.js";

/** What is known; grows while a start is looked for. */
export type Known = Map<CoordinateName, number>;

/** Sets what is not known yet; says whether anything was. */
export function put(known: Known, name: CoordinateName, value: number): boolean {
  if (known.has(name) || !Number.isFinite(value)) return false;
  known.set(name, value);
  return true;
}

/** Carries one coordinate over a difference, either way. */
export function carry(known: Known, from: string, to: string, by: number): boolean {
  const [a, b] = [known.get(from), known.get(to)];
  if (a !== undefined && b === undefined) return put(known, to, a + by);
  if (b !== undefined && a === undefined) return put(known, from, b - by);
  return false;
}
