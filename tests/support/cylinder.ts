/** Cylinders for tests. */
import { frameFromAxis } from "../../src/kernel/frame.js";
import type { CylinderSurface } from "../../src/kernel/surface.js";
import type { Vec3 } from "../../src/kernel/vec.js";

/** A cylinder from a point on its axis, the axis, the radius, and where its angles start. */
export function cylinderAbout(point: Vec3, axis: Vec3, radius: number, from: Vec3): CylinderSurface {
  return { kind: "cylinder", frame: frameFromAxis(point, axis, from), radius };
}
