/**
 * The volume of a trimmed bar by an independent quadrature: ∬ over the section of (s₁ − s₀), fibre by fibre.
 *
 * Every value of the integrand is a ray cast (ray.ts). Only the places where the integrand may be unsmooth are worked
 * out here: silhouettes and corners of headers, corners of the section, and (by root finding along each chord) places
 * where two contacts are equally far, first along each chord and then from chord to chord. They speed up convergence
 * and cannot change what it converges to.
 */
import { integrate } from "./gauss-kronrod.js";
import {
  cross3,
  type EndCase,
  grown,
  type HeaderCase,
  halfWidth,
  type JointCase,
  type Outline,
} from "./joint-case.js";
import { contactsOf, crossOutline, endHeight } from "./ray.js";

type Pair = readonly [number, number];

/** Unit direction in the section along which a contact's height is unsmooth or curved. */
function acrossOf(contact: EndCase): Pair {
  if (contact.kind !== "hit") return [1, 0];
  const [x, y] = contact.header.axis;
  const k = Math.hypot(x, y);
  return [y / k, -x / k];
}

/** Corners and silhouettes of an outline, each as its distance along a direction of the outline's plane. */
function marksOf(o: Outline, x: number, y: number): number[] {
  const reach = halfWidth(o, x, y);
  if (o.kind === "round") return [-reach, reach];
  const [a, b] = [o.width / 2, o.depth / 2];
  const [p, q] = [a - o.corner, b - o.corner];
  const out = [-reach, reach];
  for (const i of [-1, 1]) {
    for (const j of [-1, 1]) {
      out.push(i * a * x + j * q * y, i * p * x + j * b * y);
      out.push(i * p * x + j * q * y + o.corner, i * p * x + j * q * y - o.corner);
    }
  }
  return out;
}

/** The same of a header, as values of n·(u, v) for its own direction n. */
function headerMarks(h: HeaderCase, n: Pair): number[] {
  const y = cross3(h.axis, h.across);
  const [x2, y2] = [n[0] * h.across[0] + n[1] * h.across[1], n[0] * y[0] + n[1] * y[1]];
  const centre = n[0] * h.at[0] + n[1] * h.at[1];
  return marksOf(grown(h.outline, h.gap), x2, y2).map((m) => centre + m);
}

/** Sorted marks strictly between lo and hi, with both. */
function stretches(lo: number, hi: number, marks: readonly number[]): number[] {
  const near = 1e-13 * (Math.abs(lo) + Math.abs(hi) + 1);
  const out = [lo];
  for (const m of [...marks].sort((a, b) => a - b)) {
    if (m > out[out.length - 1]! + near && m < hi - near) out.push(m);
  }
  return [...out, hi];
}

const LOOKS = 24;

function bisect(f: (x: number) => number, a: number, b: number): number {
  let [lo, hi] = [a, b];
  const below = f(lo) < 0;
  for (let k = 0; k < 60 && hi - lo > 1e-14 * (Math.abs(lo) + Math.abs(hi)); k++) {
    const mid = (lo + hi) / 2;
    if (f(mid) < 0 === below) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}

/** Where |f| is least between a and b, by ternary search; stops as soon as f changes sign. */
function nearestToZero(f: (x: number) => number, a: number, b: number): number {
  let [lo, hi] = [a, b];
  const below = f(a) < 0;
  for (let k = 0; k < 40; k++) {
    const [p, q] = [lo + (hi - lo) / 3, hi - (hi - lo) / 3];
    const [fp, fq] = [f(p), f(q)];
    if (fp < 0 !== below) return p;
    if (fq < 0 !== below) return q;
    if (Math.abs(fp) < Math.abs(fq)) hi = q;
    else lo = p;
  }
  return (lo + hi) / 2;
}

/** Places in (a, b) where f changes sign, also twice between two looks. */
function signChanges(f: (x: number) => number, a: number, b: number): number[] {
  const xs = Array.from({ length: LOOKS + 1 }, (_, i) => a + ((b - a) * i) / LOOKS);
  const ys = xs.map(f);
  const out: number[] = [];
  for (let i = 1; i <= LOOKS; i++) {
    if (ys[i - 1]! < 0 !== ys[i]! < 0) out.push(bisect(f, xs[i - 1]!, xs[i]!));
    const dips = i < LOOKS && Math.abs(ys[i]!) <= Math.min(Math.abs(ys[i - 1]!), Math.abs(ys[i + 1]!));
    if (!dips || ys[i - 1]! < 0 !== ys[i]! < 0 || ys[i]! < 0 !== ys[i + 1]! < 0) continue;
    const x = nearestToZero(f, xs[i - 1]!, xs[i + 1]!);
    if (f(x) < 0 !== ys[i]! < 0) out.push(bisect(f, xs[i - 1]!, x), bisect(f, x, xs[i + 1]!));
  }
  return out;
}

/** Places between a and b where a whole number that depends on x changes. */
function countChanges(count: (x: number) => number, a: number, b: number): number[] {
  const out: number[] = [];
  // Closer together towards the ends, where most things happen.
  const xs = Array.from(
    { length: LOOKS },
    (_, i) => a + (b - a) * Math.sin(((i + 0.5) * Math.PI) / (2 * LOOKS)) ** 2,
  );
  for (let i = 1; i < LOOKS; i++) {
    const [before, after] = [count(xs[i - 1]!), count(xs[i]!)];
    if (before !== after) out.push(bisect((x) => (count(x) === before ? -1 : 1), xs[i - 1]!, xs[i]!));
  }
  return out;
}

/** Rays that may still be cast. */
interface Budget {
  left: number;
}

/** More rays than allowed: a wall that stands upright but for 10⁻⁷ rad would take minutes. */
export class TooManyRays extends Error {}

/** ∬ of an end's outward coordinate over an outline. */
function moment(o: Outline, e: EndCase, dir: 1 | -1, within: number, budget: Budget): number {
  const contacts = contactsOf(e);
  const n = acrossOf(contacts.find((c) => c.kind === "hit") ?? e);
  const t: Pair = [-n[1], n[0]];
  const outer: number[] = [...marksOf(o, n[0], n[1])];
  const inner: { readonly slope: number; readonly per: number; readonly marks: readonly number[] }[] = [];
  for (const c of contacts) {
    if (c.kind !== "hit") continue;
    const own = acrossOf(c);
    const marks = headerMarks(c.header, own);
    const [per, slope] = [own[0] * n[0] + own[1] * n[1], own[0] * t[0] + own[1] * t[1]];
    if (Math.abs(slope) < 1e-12) outer.push(...marks.map((m) => m / per));
    else inner.push({ slope, per, marks });
  }
  const reach = halfWidth(o, n[0], n[1]);
  /** A chord of the section cut where its fibres' end is unsmooth. */
  const cutsAlong = (h: number): number[] => {
    const chord = crossOutline(o, h * n[0], h * n[1], t[0], t[1]);
    if (!chord) return [];
    const marks = inner.flatMap((i) => i.marks.map((m) => (m - i.per * h) / i.slope));
    const pieces = stretches(chord[0], chord[1], marks);
    const all = [...pieces];
    for (let i = 0; i + 1 < pieces.length; i++) {
      for (const [k, a] of contacts.entries()) {
        for (const b of contacts.slice(k + 1)) {
          const apart = (w: number): number => {
            const [u, v] = [h * n[0] + w * t[0], h * n[1] + w * t[1]];
            const d = endHeight(a, dir, u, v) - endHeight(b, dir, u, v);
            // Two coplanar flats are equally far everywhere: their rounding is no crossing.
            return Number.isNaN(d) || Math.abs(d) < 1e-11 ? 0 : d;
          };
          all.push(...signChanges(apart, pieces[i]!, pieces[i + 1]!));
        }
      }
    }
    return stretches(chord[0], chord[1], all);
  };
  const alongChord = (h: number): number => {
    const height = (w: number) => {
      if (--budget.left < 0) throw new TooManyRays();
      return endHeight(e, dir, h * n[0] + w * t[0], h * n[1] + w * t[1]);
    };
    return over(cutsAlong(h), (a, b) => integrate(height, a, b, within / (4 * reach)));
  };
  const cuts = stretches(-reach, reach, outer);
  const events = contacts.length > 1 || inner.length > 0;
  return over(cuts, (a, b) => {
    const more = events ? countChanges((h) => cutsAlong(h).length, a, b) : [];
    return over(stretches(a, b, more), (c, d) => integrate(alongChord, c, d, within));
  });
}

function over(cuts: readonly number[], f: (a: number, b: number) => number): number {
  let sum = 0;
  for (let i = 0; i + 1 < cuts.length; i++) sum += f(cuts[i]!, cuts[i + 1]!);
  return sum;
}

/**
 * Volume of a case, mm³.
 *
 * @param within - error allowed per stretch, mm³
 * @param rays - how many may be cast
 * @throws TooManyRays when these are not enough
 */
export function volumeByRays(c: JointCase, within = 1e-11, rays = Number.POSITIVE_INFINITY): number {
  const budget = { left: rays };
  const total = (o: Outline) =>
    moment(o, c.ends[1], 1, within, budget) + moment(o, c.ends[0], -1, within, budget);
  return total(c.section.outer) - (c.section.hole ? total(c.section.hole) : 0);
}
