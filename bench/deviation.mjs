// How far a mesh is from the truth, at the corners, middles of sides and centroids of all its triangles, in two ways.
//
// `surface`: how far a triangle is from the plane or cylinder, endless, that it fits best. A chord tolerance promises this.
// `boundary`: how far the mesh is from the true boundary, and the true saddle edges from the mesh. This also finds material
// left standing or missing along an edge, where a point can be near to both surfaces and still far from where they meet.
import { distanceFrom, truthOf } from "./truth.mjs";

const sub = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Corners of every triangle. */
export function trianglesOf({ positions, triangles }) {
  const count = triangles ? triangles.length : positions.length / 3;
  const corner = (k) => {
    const v = triangles ? triangles[k] : k;
    return [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]];
  };
  return Array.from({ length: count / 3 }, (_, t) => [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)]);
}

const mean = (...points) => [0, 1, 2].map((k) => points.reduce((s, p) => s + p[k], 0) / points.length);

/** Both deviations, millimetres. */
export function deviation(job, mesh) {
  const truth = truthOf(job);
  const triangles = trianglesOf(mesh);
  const seen = new Set();
  let surface = 0;
  let worst = 0;
  for (const [a, b, c] of triangles) {
    const points = [a, b, c, mean(a, b), mean(b, c), mean(c, a), mean(a, b, c)];
    const off = truth.surfaces.map((s) => Math.max(...points.map((p) => Math.abs(s.beyond(p)))));
    surface = Math.max(surface, Math.min(...off));
    for (const p of points) {
      const key = p.join();
      if (seen.has(key)) continue;
      seen.add(key);
      worst = Math.max(worst, distanceFrom(truth, p));
    }
  }
  for (const { name, points } of truth.curves) {
    if (name !== "saddle") continue;
    for (const p of points) worst = Math.max(worst, distanceToMesh(triangles, p));
  }
  return { surface, boundary: worst };
}

function distanceToMesh(triangles, p) {
  let best = Number.POSITIVE_INFINITY;
  for (const [a, b, c] of triangles) {
    // Height alone rules out most of a long tube.
    const low = Math.min(a[2], b[2], c[2]) - p[2];
    const high = p[2] - Math.max(a[2], b[2], c[2]);
    if (low >= best || high >= best) continue;
    best = Math.min(best, toTriangle(p, a, b, c));
  }
  return best;
}

/** Distance from a point to a triangle: to its plane when the foot is inside, else to its nearest side. */
export function toTriangle(p, a, b, c) {
  const [u, v, w] = [sub(b, a), sub(c, a), sub(p, a)];
  const [uu, uv, vv, wu, wv] = [dot(u, u), dot(u, v), dot(v, v), dot(w, u), dot(w, v)];
  const area = uu * vv - uv * uv;
  if (area > 0) {
    const s = (vv * wu - uv * wv) / area;
    const t = (uu * wv - uv * wu) / area;
    if (s >= 0 && t >= 0 && s + t <= 1) {
      return Math.hypot(...[0, 1, 2].map((k) => w[k] - s * u[k] - t * v[k]));
    }
  }
  return Math.min(toSide(p, a, b), toSide(p, b, c), toSide(p, c, a));
}

function toSide(p, a, b) {
  const [u, w] = [sub(b, a), sub(p, a)];
  const size = dot(u, u);
  const t = size > 0 ? Math.min(1, Math.max(0, dot(w, u) / size)) : 0;
  return Math.hypot(w[0] - t * u[0], w[1] - t * u[1], w[2] - t * u[2]);
}
