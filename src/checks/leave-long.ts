/**
 * Is a length known well enough to be cut, or is the piece left long?
 *
 * Where k standard uncertainties are within the gap that a joint may stand open, cut to length; else leave k of them long and
 * scribe (common practice, no source). The boundary counts as known. With the gap built into the joint, a piece that is long
 * by as much still goes in. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Result } from "../kernel/diagnostic.js";

/** k when nobody says: common practice, no source; some 95 % of errors that spread as readings do (JCGM 100:2008, 6.3.3). */
export const COVERAGE = 2;

/** What is allowed. */
export interface FitAllowed {
  /** What a joint may stand open, mm, ≥ 0; 0 leaves no room for anything unknown. */
  readonly gap: number;
  /** How many standard uncertainties are allowed for, > 0; default `COVERAGE`. */
  readonly k?: number | undefined;
}

/** What is wrong with what is allowed. */
export function checkAllowed({ gap, k = COVERAGE }: FitAllowed): Diagnostic[] {
  const given = (value: unknown) => (value === undefined ? "none" : `${value}`);
  const gapBad = !(gap >= 0 && gap < Number.POSITIVE_INFINITY);
  const kBad = !(k > 0 && k < Number.POSITIVE_INFINITY);
  return [
    ...(gapBad
      ? [
          diagnostic({
            code: "fit-gap-missing",
            path: "gap",
            message: `Cut or scribe: expected a fit gap of 0 mm or more, got ${given(gap)}.`,
            hint: "Say `gap` in the design or `fitGap` in the shop file: what a joint may stand open.",
          }),
        ]
      : []),
    ...(kBad
      ? [
          diagnostic({
            code: "bad-coverage",
            path: "k",
            message: `Cut or scribe: expected k above 0, got ${given(k)}.`,
            hint: `Leave it out for ${COVERAGE}, or say how many standard uncertainties are to be allowed for.`,
          }),
        ]
      : []),
  ];
}

/**
 * Cut, or leave long and scribe.
 *
 * @param sigma - standard uncertainty of what opens the joint, mm, ≥ 0
 * @param allowed - gap and k
 * @returns the decision and how much is left long, mm; `fit-gap-missing`, `bad-coverage` or `sigma-missing`
 * @example leaveLong(1.6, { gap: 1.5 }); // { ok: true, value: { decision: "scribe", leaveLong: 3.2 }, … }
 */
export function leaveLong(
  sigma: number,
  allowed: FitAllowed,
): Result<{ readonly decision: "cut" | "scribe"; readonly leaveLong: number }> {
  const known = sigma >= 0 && sigma < Number.POSITIVE_INFINITY;
  const diagnostics = [
    ...checkAllowed(allowed),
    ...(known
      ? []
      : [
          diagnostic({
            code: "sigma-missing",
            path: "sigma",
            message: `Cut or scribe: expected a standard uncertainty of 0 or more, got ${sigma}.`,
            hint: "Say how well it was read, one sigma; without it no end that hangs on it can be judged.",
          }),
        ]),
  ];
  if (diagnostics.length > 0) return { ok: false, diagnostics };
  const long = (allowed.k ?? COVERAGE) * sigma;
  const cut = long <= allowed.gap;
  return {
    ok: true,
    value: { decision: cut ? "cut" : "scribe", leaveLong: cut ? 0 : long },
    diagnostics,
  };
}
