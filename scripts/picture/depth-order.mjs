// Sorts facets from far to near exactly, cutting the few that need it: a binary space partition (H. Fuchs, Z. Kedem and
// B. Naylor, 1980). Facets of solids that touch but do not run through each other come out in an order in which painting
// one over the other is right everywhere.
import { between, dot } from "./vector.mjs";

/** mm. Points nearer than this to a plane lie in it. */
const NEAR = 1e-3;
const CANDIDATES = 12;

/** The facets, some of them cut in pieces, farthest first; view coordinates with z away from the eye. */
export function farToNear(facets) {
  const out = [];
  walk(facets, out);
  return out;
}

function walk(facets, out) {
  if (facets.length === 0) return;
  const plane = chosen(facets);
  const [within, farther, nearer] = [[], [], []];
  for (const facet of facets) split(facet, plane, within, farther, nearer);
  // All facets face the eye, so what lies on the outer side of one is nearer than it.
  walk(farther, out);
  out.push(...within);
  walk(nearer, out);
}

function chosen(facets) {
  let best = facets[0];
  let least = Number.POSITIVE_INFINITY;
  for (let c = 0; c < CANDIDATES; c++) {
    const candidate = facets[Math.floor((c * facets.length) / CANDIDATES)];
    let [cuts, balance] = [0, 0];
    for (const facet of facets) {
      const sides = facet.points.map((p) => sideOf(candidate, p));
      const [low, high] = [Math.min(...sides), Math.max(...sides)];
      if (low < -NEAR && high > NEAR) cuts++;
      else balance += high > NEAR ? 1 : low < -NEAR ? -1 : 0;
    }
    const cost = 8 * cuts + Math.abs(balance);
    if (cost < least) [least, best] = [cost, candidate];
  }
  return { normal: best.normal, points: [best.points[0]] };
}

const sideOf = (plane, p) => dot(plane.normal, p) - dot(plane.normal, plane.points[0]);

function split(facet, plane, within, farther, nearer) {
  const sides = facet.points.map((p) => sideOf(plane, p));
  const [low, high] = [Math.min(...sides), Math.max(...sides)];
  if (low >= -NEAR && high <= NEAR) within.push(facet);
  else if (low >= -NEAR) nearer.push(facet);
  else if (high <= NEAR) farther.push(facet);
  else {
    nearer.push(part(facet, sides, 1));
    farther.push(part(facet, sides, -1));
  }
}

/** The part of a facet on one side of a plane; the new side along the cut is never drawn as a line. */
function part(facet, sides, sign) {
  const [points, lines] = [[], []];
  const n = facet.points.length;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const [a, b] = [sign * sides[i], sign * sides[j]];
    const isIn = a >= 0;
    if (isIn) {
      points.push(facet.points[i]);
      lines.push(b >= 0 || a > 0 ? facet.lines[i] : false);
    }
    if ((a > 0 && b < 0) || (a < 0 && b > 0)) {
      points.push(between(facet.points[i], facet.points[j], a / (a - b)));
      lines.push(isIn ? false : facet.lines[i]);
    }
  }
  return { ...facet, points, lines };
}
