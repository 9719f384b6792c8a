/**
 * Is a bar too short somewhere in its material, on its outline or inside?
 *
 * A fibre is as long as its two ends reach, out₁ + out₀. A bound says at once that most bars are long all over. The rest
 * is searched: chords across the section, on each the shortest fibre of every stretch in the material, and along the
 * chords the shortest of those; local minima between samples are closed in on as on the outline (see `outline`), so that
 * a crown inside the section, a valley's floor and the edge of a hollow all count. Millimetres.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, endAt } from "./end-compile.js";
import { endRange } from "./end-range.js";
import { closeIn, greatestOnOutline } from "./outline.js";
import { loopsOf, type Region } from "./region.js";
import { extentAlong, reachOf } from "./region-extent.js";
import { stretchesInside } from "./region-line.js";
import { SHORTEST_FIBRE_MM } from "./tolerance.js";

const SAMPLES = 16;

/**
 * The length of the shortest fibre, negative where the ends cross; null when no fibre is shorter than
 * `SHORTEST_FIBRE_MM`. Fibres that an end leaves open are passed over.
 */
export function shortFibre(low: CompiledEnd, high: CompiledEnd, section: Region): number | null {
  const radius = reachOf(section.outer);
  if (endRange(low, radius).least + endRange(high, radius).least >= SHORTEST_FIBRE_MM) return null;
  const lack = (u: number, v: number): number => {
    const length = endAt(high, u, v).out + endAt(low, u, v).out;
    return Number.isFinite(length) ? -length : Number.NEGATIVE_INFINITY;
  };
  const across = extentAlong(section.outer, [0, 1]);
  const reach = extentAlong(section.outer, [1, 0]);
  const onChord = (share: number): number => {
    const v = across.least + share * (across.greatest - across.least);
    const stretches = stretchesInside(section, [0, v], [1, 0], reach.least, reach.greatest);
    return Math.max(
      Number.NEGATIVE_INFINITY,
      ...stretches.map(([from, to]) => greatest((t) => lack(from + t * (to - from), v))),
    );
  };
  const most = Math.max(greatestOnOutline(loopsOf(section), lack).value, greatest(onChord));
  return -most < SHORTEST_FIBRE_MM ? -most : null;
}

/** The greatest value of a function from 0 to 1: sampled, and every local maximum closed in on. */
function greatest(f: (t: number) => number): number {
  const samples = Array.from({ length: SAMPLES + 1 }, (_, k) => f(k / SAMPLES));
  let most = Number.NEGATIVE_INFINITY;
  for (const [k, here] of samples.entries()) {
    const beside = Math.max(samples[k - 1] ?? here, samples[k + 1] ?? here);
    if (!(here >= beside) || here === Number.NEGATIVE_INFINITY) continue;
    most = Math.max(most, closeIn(f, (k - 1) / SAMPLES, (k + 1) / SAMPLES, k / SAMPLES, here)[1]);
  }
  return most;
}
