/** The library's own solid of a case; throws with the diagnostics where it refuses one it must solve. */
import { massProperties, type Solid, solidOfBar } from "../../src/kernel/index.js";
import { barOf, type JointCase } from "./joint-case.js";

export function solidOf(c: JointCase): Solid {
  const result = solidOfBar(barOf(c));
  if (!result.ok) throw new Error(`${c.name}: ${result.diagnostics.map((d) => d.message).join(" ")}`);
  return result.value;
}

export const exactVolume = (c: JointCase): number => massProperties(solidOf(c)).volume;

/** |a − b| in units of b. */
export const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);
