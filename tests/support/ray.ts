/**
 * Rays against straight prisms, written from the geometry alone: where a fibre of a branch first meets its end.
 *
 * A fibre through (u, v) runs along ±z. A prismatic header is a convex outline in the plane square to its axis; the
 * fibre's shadow in that plane is a line, and the first crossing of line and outline is the first hit.
 */
import type { Vec3 } from "../../src/kernel/index.js";
import { cross3, dot3, type EndCase, grown, type HeaderCase, type Outline } from "./joint-case.js";

/** A line within this of an outline grazes it. Millimetres: far above rounding, far below any figure checked. */
const GRAZE = 1e-9;

/** Parameters at which the line p + t·d enters and leaves a convex outline; null when it passes by. */
export function crossOutline(
  o: Outline,
  px: number,
  py: number,
  dx: number,
  dy: number,
): [number, number] | null {
  if (o.kind === "round") return crossCircle(0, 0, o.radius, px, py, dx, dy);
  const [a, b] = [o.width / 2, o.depth / 2];
  const [p, q] = [a - o.corner, b - o.corner];
  let [enter, leave] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const meet = (t: number) => {
    enter = Math.min(enter, t);
    leave = Math.max(leave, t);
  };
  for (const side of [-1, 1]) {
    const t = (side * a - px) / dx;
    if (Math.abs(py + t * dy) <= q + 1e-12) meet(t);
    const s = (side * b - py) / dy;
    if (Math.abs(px + s * dx) <= p + 1e-12) meet(s);
    if (o.corner === 0) continue;
    for (const other of [-1, 1]) {
      for (const t of crossCircle(side * p, other * q, o.corner, px, py, dx, dy) ?? []) {
        const [x, y] = [px + t * dx, py + t * dy];
        if (side * x >= p - 1e-12 && other * y >= q - 1e-12) meet(t);
      }
    }
  }
  return enter <= leave ? [enter, leave] : null;
}

function crossCircle(
  cx: number,
  cy: number,
  r: number,
  px: number,
  py: number,
  dx: number,
  dy: number,
): [number, number] | null {
  const k = Math.hypot(dx, dy);
  const [ex, ey] = [dx / k, dy / k];
  const [qx, qy] = [px - cx, py - cy];
  const beside = Math.abs(qx * ey - qy * ex);
  if (beside > r + GRAZE) return null;
  const half = Math.sqrt(Math.max(0, (r - beside) * (r + beside)));
  const middle = -(qx * ex + qy * ey);
  return [(middle - half) / k, (middle + half) / k];
}

/** Outward coordinates at which a fibre going to dir·z enters and leaves a header that has no ends; null when it passes by. */
function insideHeader(header: HeaderCase, dir: 1 | -1, u: number, v: number): [number, number] | null {
  const y = cross3(header.axis, header.across);
  const rel: Vec3 = [u - header.at[0], v - header.at[1], -header.at[2]];
  return crossOutline(
    grown(header.outline, header.gap),
    dot3(rel, header.across),
    dot3(rel, y),
    dir * header.across[2],
    dir * y[2],
  );
}

/** Outward coordinate at which a fibre enters the part of a header behind a plane, by skin or by miter; +∞ when it passes by. */
function enterBehind(
  header: HeaderCase,
  dir: 1 | -1,
  [u, v]: readonly [number, number],
  point: Vec3,
  normal: Vec3,
): number {
  const found = insideHeader(header, dir, u, v);
  if (!found) return Number.POSITIVE_INFINITY;
  // Behind: before + rate·out ≤ 0.
  const before = dot3([u - point[0], v - point[1], -point[2]], normal);
  const rate = dir * normal[2];
  let [enter, leave] = found;
  if (Math.abs(rate) < 1e-12) return before <= 0 ? enter : Number.POSITIVE_INFINITY;
  if (rate > 0) leave = Math.min(leave, -before / rate);
  else enter = Math.max(enter, -before / rate);
  return enter <= leave ? enter : Number.POSITIVE_INFINITY;
}

/** Outward coordinate at which a fibre going to dir·z first meets a header; +∞ when it passes by. */
export function hitHeader(header: HeaderCase, dir: 1 | -1, u: number, v: number): number {
  const found = insideHeader(header, dir, u, v);
  if (found) return found[0];
  if (!header.shoulder) return Number.POSITIVE_INFINITY;
  const rel: Vec3 = [u - header.at[0], v - header.at[1], -header.at[2]];
  // The plane through the axis square to the fibre's direction seen along the axis.
  const z = dir * header.axis[2];
  const m: Vec3 = [-z * header.axis[0], -z * header.axis[1], dir - z * header.axis[2]];
  return -dot3(rel, m) / (dir * m[2]);
}

/** Outward coordinate of every single contact of an end at (u, v), in the order they are named. */
export function contactsOf(e: EndCase): readonly Extract<EndCase, { kind: "plane" | "hit" }>[] {
  return e.kind === "plane" || e.kind === "hit" ? [e] : e.of.flatMap(contactsOf);
}

/** Outward coordinate at which the end closes the fibre. */
export function endHeight(e: EndCase, dir: 1 | -1, u: number, v: number): number {
  switch (e.kind) {
    case "plane": {
      const [nx, ny, nz] = e.normal;
      return dir * (e.point[2] - (nx * (u - e.point[0]) + ny * (v - e.point[1])) / nz);
    }
    case "hit":
      return hitHeader(e.header, dir, u, v);
    case "select": {
      const [x, y, z] = e.normal;
      return Math.min(
        enterBehind(e.of[0].header, dir, [u, v], e.point, e.normal),
        enterBehind(e.of[1].header, dir, [u, v], e.point, [-x, -y, -z]),
      );
    }
    default: {
      const all = e.of.map((x) => endHeight(x, dir, u, v));
      return e.kind === "min" ? Math.min(...all) : Math.max(...all);
    }
  }
}
