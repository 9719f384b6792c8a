/**
 * The volume of a trimmed bar by an independent quadrature: ∬ over the section of (s₁ − s₀), fibre by fibre.
 *
 * Every value of the integrand is a ray cast (ray.ts). Only the places where the integrand may be unsmooth are worked
 * out here: silhouettes and corners of headers, corners of the section, and (by root finding along each chord) places
 * where two contacts are equally far. They speed up convergence and cannot change what it converges to.
 */
import { integrate } from "./gauss-kronrod.js";
import { cross3, type EndCase, grown, halfWidth, type HeaderCase, type JointCase, type Outline } from "./joint-case.js";
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

const LOOKS = 12;

/** Places in (a, b) where f changes sign. */
function signChanges(f: (x: number) => number, a: number, b: number): number[] {
  const out: number[] = [];
  let [x0, f0] = [a, f(a)];
  for (let i = 1; i <= LOOKS; i++) {
    const x1 = a + ((b - a) * i) / LOOKS;
    const f1 = f(x1);
    if (f0 * f1 < 0) {
      let [lo, hi] = [x0, x1];
      for (let k = 0; k < 60 && hi - lo > 1e-14 * (Math.abs(lo) + Math.abs(hi)); k++) {
        const mid = (lo + hi) / 2;
        if (f(mid) * f0 > 0) lo = mid;
        else hi = mid;
      }
      out.push((lo + hi) / 2);
    }
    [x0, f0] = [x1, f1];
  }
  return out;
}

/** ∬ of an end's outward coordinate over an outline. */
function moment(o: Outline, e: EndCase, dir: 1 | -1, within: number): number {
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
  const alongChord = (h: number): number => {
    const chord = crossOutline(o, h * n[0], h * n[1], t[0], t[1]);
    if (!chord) return 0;
    const at = (w: number, of: EndCase = e) => endHeight(of, dir, h * n[0] + w * t[0], h * n[1] + w * t[1]);
    const marks = inner.flatMap((i) => i.marks.map((m) => (m - i.per * h) / i.slope));
    const pieces = stretches(chord[0], chord[1], marks);
    const all: number[] = [];
    for (let i = 0; i + 1 < pieces.length; i++) {
      all.push(pieces[i]!);
      for (let a = 0; a < contacts.length; a++) {
        for (let b = a + 1; b < contacts.length; b++) {
          const apart = (w: number): number => {
            const d = at(w, contacts[a]!) - at(w, contacts[b]!);
            return Number.isNaN(d) ? 0 : d;
          };
          all.push(...signChanges(apart, pieces[i]!, pieces[i + 1]!));
        }
      }
    }
    const cuts = stretches(chord[0], chord[1], all);
    let sum = 0;
    for (let i = 0; i + 1 < cuts.length; i++) sum += integrate(at, cuts[i]!, cuts[i + 1]!, within / (4 * reach));
    return sum;
  };
  const cuts = stretches(-reach, reach, outer);
  let sum = 0;
  for (let i = 0; i + 1 < cuts.length; i++) sum += integrate(alongChord, cuts[i]!, cuts[i + 1]!, within);
  return sum;
}

/**
 * Volume of a case, mm³.
 *
 * @param within - error allowed per stretch, mm³
 */
export function volumeByRays(c: JointCase, within = 1e-10): number {
  const over = (o: Outline) => moment(o, c.ends[1], 1, within) + moment(o, c.ends[0], -1, within);
  return over(c.section.outer) - (c.section.hole ? over(c.section.hole) : 0);
}
