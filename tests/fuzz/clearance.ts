/**
 * How far a point of a branch is from what it is cut to, by the distance to the section of a prism alone.
 *
 * Positive on the branch's side: a cut branch nowhere enters its header (≥ 0), and its end lies on it (= 0), root gap and
 * all. Closed forms, no code of the library.
 */
import type { Vec3 } from "../../src/kernel/index.js";
import {
  cross3,
  dot3,
  type EndCase,
  grown,
  type HeaderCase,
  type Outline,
  unit3,
} from "../support/joint-case.js";
import { crossOutline } from "../support/ray.js";

/** Signed distance from a convex outline, negative inside. */
export function outsideOf(o: Outline, x: number, y: number): number {
  if (o.kind === "round") return Math.hypot(x, y) - o.radius;
  const [qx, qy] = [Math.abs(x) - o.width / 2 + o.corner, Math.abs(y) - o.depth / 2 + o.corner];
  return Math.hypot(Math.max(qx, 0), Math.max(qy, 0)) + Math.min(Math.max(qx, qy), 0) - o.corner;
}

/** mm. The library may move a silhouette by so much (its stations): whether a fibre this near to one meets the header is open. */
const OPEN_MM = 1e-6;

/** The clearance from a header whose silhouettes are `moved` outwards for the question which fibres meet it. */
function fromHeader(h: HeaderCase, dir: 1 | -1, p: Vec3, moved: number): number {
  const y = cross3(h.axis, h.across);
  const rel: Vec3 = [p[0] - h.at[0], p[1] - h.at[1], p[2] - h.at[2]];
  const [px, py] = [dot3(rel, h.across), dot3(rel, y)];
  const away = outsideOf(h.outline, px, py) - h.gap;
  const crossed = crossOutline(grown(h.outline, h.gap + moved), px, py, dir * h.across[2], dir * y[2]);
  // A point that its fibre reaches only through the header is past it by as much as it is away.
  if (crossed) return away > 0 && crossed[1] < 0 ? -away : away;
  if (!h.shoulder) return Math.max(0, away);
  // The fibre passes by: closed by the plane through the widest line.
  const z = dir * h.axis[2];
  const m = unit3([-z * h.axis[0], -z * h.axis[1], dir - z * h.axis[2]]);
  return -dot3(rel, m);
}

/** Every clearance a point may have: more than one beside a silhouette. */
function clearances(e: EndCase, dir: 1 | -1, p: Vec3): readonly number[] {
  switch (e.kind) {
    case "plane": {
      const n = unit3(e.normal);
      const out = dir * Math.sign(n[2]);
      return [-out * dot3(n, [p[0] - e.point[0], p[1] - e.point[1], p[2] - e.point[2]])];
    }
    case "hit": {
      const [narrow, wide] = [-OPEN_MM, OPEN_MM].map((moved) => fromHeader(e.header, dir, p, moved));
      return narrow === wide ? [wide!] : [narrow!, wide!];
    }
    case "select": {
      // Each header counts on its own side of the miter plane; on the plane itself either does.
      const side = dot3(unit3(e.normal), [p[0] - e.point[0], p[1] - e.point[1], p[2] - e.point[2]]);
      const [first, second] = e.of.map((x) => clearances(x, dir, p));
      return [...(side < OPEN_MM ? first! : []), ...(side > -OPEN_MM ? second! : [])];
    }
    default: {
      const pick = e.kind === "min" ? Math.min : Math.max;
      return e.of
        .map((x) => clearances(x, dir, p))
        .reduce((all, more) => all.flatMap((a) => more.map((b) => pick(a, b))));
    }
  }
}

/** mm by which a point keeps clear of an end; 0 on it, negative past it. Beside a silhouette the one nearest to 0. */
export function clearance(e: EndCase, dir: 1 | -1, p: Vec3): number {
  return clearances(e, dir, p).reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}
