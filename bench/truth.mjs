// The true boundary of a job's tube in closed form, and the distance of any point from it.
//
// The solid is what lies inside the tube's wall, above z = 0, under the header's skin and outside the bores. The nearest
// point of its boundary is either the foot of the perpendicular on one of its surfaces, when that foot is on the solid,
// or on one of the curves in which two of them meet. Feet on planes and cylinders are exact. Every curve has a closed form
// (for two cylinders: the other cylinder's height over a ruling); the nearest point on it is found among 720 samples and
// then by golden section. Shares no code with the package.
import { directionAt } from "./jobs.mjs";

const ON = 1e-9;
const SAMPLES = 720;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

const across = ([x, , z]) => [-z, 0, x];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const apart = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const angleOf = (k) => (2 * Math.PI * k) / SAMPLES;

/** A cylinder about an axis in the x-z plane through (0, 0, z0); `n` is square to the axis in that plane. */
function cylinder(z0, axis, radius) {
  const n = across(axis);
  const about = ([x, y, z]) => {
    const w = [x, y, z - z0];
    return { t: dot(w, axis), q: dot(w, n), h: y };
  };
  return {
    axis,
    n,
    z0,
    radius,
    about,
    /** Distance from the skin, positive outside. */
    beyond: (p) => {
      const { q, h } = about(p);
      return Math.hypot(q, h) - radius;
    },
    foot: (p) => {
      const { t, q, h } = about(p);
      const k = radius / Math.hypot(q, h);
      return [t * axis[0] + k * q * n[0], k * h, z0 + t * axis[2] + k * q * n[2]];
    },
  };
}

/** Surfaces with the side they keep, and the curves between them. */
export function truthOf(job) {
  const [outer, inner] = [job.branch.od / 2, job.branch.od / 2 - job.branch.wall];
  const walls = [outer, inner].map((r) => cylinder(0, [0, 0, 1], r));
  const header = cylinder(job.length, directionAt(job.angle), job.header.od / 2);
  const bores = job.bores.map(({ z, diameter }) => cylinder(z, directionAt(job.boreAngle), diameter / 2));
  /** How far a point is outside the half that lies under the header's skin; the header is wider than the tube or equal. */
  const overHeader = (p) => {
    const { q, h } = header.about(p);
    return q + Math.sqrt(Math.max(0, header.radius ** 2 - h * h));
  };
  const surfaces = [
    { outside: walls[0].beyond, ...walls[0] },
    { outside: (p) => -walls[1].beyond(p), ...walls[1] },
    { outside: (p) => -p[2], beyond: (p) => p[2], foot: ([x, y]) => [x, y, 0] },
    { outside: overHeader, ...header },
    ...bores.map((b) => ({ outside: (p) => -b.beyond(p), ...b })),
  ];
  const contains = (p) => surfaces.every((s) => s.outside(p) <= ON);
  const curves = [];
  const add = (name, at) => {
    const points = Array.from({ length: SAMPLES }, (_, k) => at(angleOf(k)));
    const box = [0, 1, 2].map((n) => points.map((q) => q[n])).map((x) => [Math.min(...x), Math.max(...x)]);
    curves.push({ name, at, points, box });
  };
  for (const r of [outer, inner]) {
    add("foot", (a) => [r * Math.cos(a), r * Math.sin(a), 0]);
    add("saddle", (a) => saddlePoint(header, r, a));
    for (const b of bores) for (const side of [1, -1]) add("bore", (a) => openingPoint(b, r, side, a));
  }
  return { surfaces, contains, curves };
}

/** Under the header on the tube's fibre at an angle. */
function saddlePoint({ radius, n, z0 }, r, a) {
  const [x, y] = [r * Math.cos(a), r * Math.sin(a)];
  return [x, y, z0 - (Math.sqrt(Math.max(0, radius ** 2 - y * y)) + x * n[0]) / n[2]];
}

/** On the bore's ruling at an angle, where it meets the tube's skin on the side of +x or −x. */
function openingPoint({ radius, n, axis, z0 }, r, side, a) {
  const [q, y] = [radius * Math.cos(a), radius * Math.sin(a)];
  const x = side * Math.sqrt(r * r - y * y);
  const t = (x - q * n[0]) / axis[0];
  return [x, y, z0 + q * n[2] + t * axis[2]];
}

/** Distance of a point from the true boundary. */
export function distanceFrom({ surfaces, contains, curves }, p) {
  let best = Number.POSITIVE_INFINITY;
  for (const { foot } of surfaces) {
    const f = foot(p);
    const d = apart(f, p);
    if (d < best && contains(f)) best = d;
  }
  for (const curve of curves) best = Math.min(best, distanceFromCurve(curve, p, best));
  return best;
}

/** Samples are this near to each other on every curve of these jobs, millimetres. */
const SLACK = 1;

function distanceFromCurve({ at, points, box }, p, enough) {
  const outside = box.map(([low, high], n) => Math.max(0, low - p[n], p[n] - high));
  if (Math.hypot(...outside) - SLACK > enough) return enough;
  let [near, least] = [0, Number.POSITIVE_INFINITY];
  for (const [k, q] of points.entries()) {
    const d = apart(q, p);
    if (d < least) [near, least] = [k, d];
  }
  if (least - SLACK > enough) return enough;
  let [low, high] = [angleOf(near - 1), angleOf(near + 1)];
  const f = (a) => apart(at(a), p);
  for (let k = 0; k < 40; k++) {
    const [x, y] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (f(x) < f(y)) high = y;
    else low = x;
  }
  return Math.min(least, f((low + high) / 2));
}
