// From a closed triangle mesh to what an eye can see of it: its front-facing facets as flat convex polygons, each side of
// which knows whether it is drawn as a line (a crease or the silhouette). Coordinates in, view coordinates out: x to the
// right, y up, z away from the eye.
import { cross, dot, sub, unit } from "./vector.mjs";

/** Two facets that turn by more than this are drawn with a line between them; sampled arcs turn by less. */
const CREASE = Math.cos((25 * Math.PI) / 180);
const FLAT = 1 - 1e-9;

/** An orthographic view: the eye looks along `direction`, `up` is upright in the picture. */
export function viewOf(direction, up = [0, 0, 1]) {
  const z = unit(direction);
  const x = unit(cross(z, up));
  const y = cross(x, z);
  return (p) => [dot(p, x), dot(p, y), dot(p, z)];
}

/** Facets [{ points, lines, normal, body }]: `lines[i]` says whether the side from points[i] to the next is drawn. */
export function facetsOf(body, view) {
  const points = body.points.map(view);
  // A view that has y up and z away is left-handed: triangles seen from outside run the other way round in it.
  const normals = body.triangles.map(([a, b, c]) =>
    unit(cross(sub(points[c], points[a]), sub(points[b], points[a]))),
  );
  const owner = new Map();
  body.triangles.forEach((t, i) => {
    for (const k of [0, 1, 2]) owner.set(`${t[k]},${t[(k + 1) % 3]}`, i);
  });
  const front = normals.map((n) => n[2] < 0);
  const done = new Uint8Array(normals.length);
  const facets = [];
  for (let i = 0; i < normals.length; i++) {
    if (!front[i] || done[i]) continue;
    done[i] = 1;
    const ring = grow([...body.triangles[i]], i);
    const lines = ring.map((a, k) => isLine(i, owner.get(`${ring[(k + 1) % ring.length]},${a}`)));
    facets.push({ points: ring.map((v) => points[v]), lines, normal: normals[i], body });
  }
  return facets;

  function isLine(own, other) {
    return other === undefined || !front[other] || dot(normals[own], normals[other]) < CREASE;
  }

  /** Takes in flat neighbours while the polygon stays convex. */
  function grow(start, own) {
    let ring = start;
    for (let k = 0; k < ring.length; k++) {
      const [a, b] = [ring[k], ring[(k + 1) % ring.length]];
      const other = owner.get(`${b},${a}`);
      if (other === undefined || done[other] || dot(normals[own], normals[other]) < FLAT) continue;
      const apex = body.triangles[other].find((v) => v !== a && v !== b);
      if (ring.includes(apex)) continue;
      const grown = [...ring.slice(0, k + 1), apex, ...ring.slice(k + 1)];
      if (
        !isConvex(
          grown.map((v) => points[v]),
          normals[own],
        )
      )
        continue;
      done[other] = 1;
      ring = grown;
      k = -1;
    }
    return ring;
  }
}

function isConvex(ring, normal) {
  return ring.every((b, i) => {
    const a = ring.at(i - 1);
    const c = ring[(i + 1) % ring.length];
    return dot(cross(sub(c, b), sub(a, b)), normal) > 1e-6;
  });
}
