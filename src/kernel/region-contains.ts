/**
 * Is a point inside a region? By counting how often a ray towards +u leaves it.
 *
 * @packageDocumentation
 */
import { type Loop, loopsOf, pointOn, type Region, type Segment } from "./region.js";
import type { Vec2 } from "./vec.js";

/** Times a ray from p towards +u crosses a loop, upward crossings minus downward ones. */
function winding(loop: Loop, p: Vec2): number {
  let count = 0;
  for (const [k, s] of loop.entries()) {
    const from = pointOn(s, 0);
    // Where one side ends the next begins: the same number, or a ray through the joint slips between the two.
    const to = pointOn(loop[(k + 1) % loop.length] as Segment, 0);
    if (s.kind === "line") {
      count += crossLine(from, to, p);
      continue;
    }
    // An arc is monotone in v between its top and bottom.
    const cuts = [0, 1];
    for (let k = -4; k <= 4; k++) {
      const t = (Math.PI / 2 + k * Math.PI - s.start) / s.sweep;
      if (t > 0 && t < 1) cuts.push(t);
    }
    cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i++) {
      const [t0, t1] = [cuts[i] as number, cuts[i + 1] as number];
      const a = i === 0 ? from : pointOn(s, t0);
      const b = i + 2 === cuts.length ? to : pointOn(s, t1);
      const up = a[1] <= p[1] && b[1] > p[1];
      const down = b[1] <= p[1] && a[1] > p[1];
      if (!up && !down) continue;
      const dv = p[1] - s.centre[1];
      const side = Math.cos(s.start + ((t0 + t1) / 2) * s.sweep) < 0 ? -1 : 1;
      const u = s.centre[0] + side * Math.sqrt(Math.max(0, (s.radius - dv) * (s.radius + dv)));
      if (u > p[0]) count += up ? 1 : -1;
    }
  }
  return count;
}

function crossLine(a: Vec2, b: Vec2, p: Vec2): number {
  const up = a[1] <= p[1] && b[1] > p[1];
  const down = b[1] <= p[1] && a[1] > p[1];
  if (!up && !down) return 0;
  const u = a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
  return u > p[0] ? (up ? 1 : -1) : 0;
}

/** True when p is inside the outer loop and outside every hole. Points on the outline may count as either. */
export function regionContains(region: Region, p: Vec2): boolean {
  let sum = 0;
  for (const loop of loopsOf(region)) sum += winding(loop, p);
  return sum !== 0;
}
