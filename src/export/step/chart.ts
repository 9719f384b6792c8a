/**
 * Surface parameters of a face as the file will have them: (x, y) on a plane, (angle, height) on a cylinder.
 *
 * A cylinder is turned about its axis until the middle of the face stands at the angle π: every angle of the face is then
 * between 0 and 2π, no edge crosses the place where angles jump, and the edges round the face join without a jump.
 *
 * @packageDocumentation
 */
import { evaluate } from "../../kernel/curve/curve.js";
import type { Edge, Face, Solid } from "../../kernel/solid.js";
import type { Surface } from "../../kernel/surface.js";
import { addScaled, cross, scale, type Vec3 } from "../../kernel/vec.js";

/** A face's surface as written. */
export type Chart = Surface;

/** Points of an edge at which the angle is followed round a face: no edge turns by as much as π between two of them. */
const SHARES = [0, 0.25, 0.5, 0.75] as const;

/** The chart of a face. */
export function chartOf(solid: Solid, face: Face): Chart {
  const { surface } = face;
  if (surface.kind === "plane") return surface;
  const middle = middleAngle(solid, face);
  const { origin, x, y, z } = surface.frame;
  const turned = addScaled(scale(x, -Math.cos(middle)), y, -Math.sin(middle));
  return { ...surface, frame: { origin, x: turned, y: cross(z, turned), z } };
}

/** Half-way between the least and the greatest angle, followed along the outer loop. */
function middleAngle(solid: Solid, { surface, loops }: Face): number {
  const uv = new Float64Array(2);
  let [now, least, greatest] = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { edge, forward } of loops[0] ?? []) {
    const { curve, t0, t1 } = solid.edges[edge] as Edge;
    for (const share of SHARES) {
      chartAt(surface, evaluate(curve, t0 + (forward ? share : 1 - share) * (t1 - t0)), uv, 0);
      const angle = uv[0] as number;
      now = Number.isNaN(now) ? angle : now + Math.atan2(Math.sin(angle - now), Math.cos(angle - now));
      least = Math.min(least, now);
      greatest = Math.max(greatest, now);
    }
  }
  return (least + greatest) / 2;
}

/** Parameters of a point on (or near) a chart's surface into `out` at `index`; angles 0 to 2π, lengths in millimetres. */
export function chartAt({ kind, frame }: Chart, p: Vec3, out: Float64Array, index: number): void {
  const { origin: o, x, y, z } = frame;
  const [a, b, c] = [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
  const px = a * x[0] + b * x[1] + c * x[2];
  const py = a * y[0] + b * y[1] + c * y[2];
  if (kind === "plane") {
    out[index] = px;
    out[index + 1] = py;
    return;
  }
  const angle = Math.atan2(py, px);
  out[index] = angle < 0 ? angle + 2 * Math.PI : angle;
  out[index + 1] = a * z[0] + b * z[1] + c * z[2];
}

/** The millimetres that a step of one in a chart's first parameter stands for; in its second it is always one. */
export function stretchOf(chart: Chart): number {
  return chart.kind === "plane" ? 1 : chart.radius;
}
