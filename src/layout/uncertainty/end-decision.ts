/**
 * What is decided for one end of a piece, with its reason, as data and in words.
 *
 * The words are made here so that records, messages and papers say the same in their own units. Millimetres, degrees.
 *
 * @packageDocumentation
 */

/** Cut to length; leave long and scribe; do not cut at all, the steps were only counted; made already. */
export type CutDecision = "cut" | "scribe" | "counted" | "made";

/** Which rule decided; `cutOrScribe` has the table. */
export type CutRule =
  | "plate-face"
  | "made"
  | "counted"
  | "free"
  | "bench"
  | "set-first"
  | "set-later"
  | "not-set"
  | "within-gap"
  | "closes"
  | "fitted-first";

/** One end of one piece. */
export interface EndDecision {
  /** Id of the piece, and its mark. */
  readonly piece: string;
  readonly mark: string;
  readonly end: 0 | 1;
  /** As the shop calls it, e.g. `UPHILL`. */
  readonly name: string;
  /** What it meets, in words; empty at a free end. */
  readonly meets: string;
  /** Standard uncertainty of the piece's length from mate to mate, mm; null where it hangs on counted steps. */
  readonly sigmaLength: number | null;
  /** Of the angle to what it meets, degrees; null where it hangs on counted steps. */
  readonly sigmaAngle: number | null;
  /** What that angle does over the section, its greater size, mm. */
  readonly angleOverDepth: number | null;
  /** The reading most of the length's uncertainty comes from; empty where there is none. */
  readonly mostly: string;
  /** Fit gap allowed, mm. */
  readonly gap: number;
  /** How many standard uncertainties are allowed for. */
  readonly k: number;
  readonly decision: CutDecision;
  readonly rule: CutRule;
  /** mm, k sigma; never in any length of the piece. 0 unless it is scribed. */
  readonly leaveLong: number;
  /** One sentence. */
  readonly reason: string;
  /** Scribed to a plumb face with a block: how far the cut moves along the piece for each unit of the block's width. */
  readonly alongPerBlock?: number;
}

/** How a length is written: exactly, or as a mark on a tape. */
export interface DecisionStyle {
  readonly exact: (mm: number) => string;
  readonly mark: (mm: number) => string;
}

/** The one of length and angle that opens the joint more, mm: one standard uncertainty. */
export function openingOf({
  sigmaLength,
  angleOverDepth,
}: Pick<EndDecision, "sigmaLength" | "angleOverDepth">): number {
  return Math.max(sigmaLength ?? 0, angleOverDepth ?? 0);
}

function reckoning(own: EndDecision, { exact }: DecisionStyle): string {
  const opening = openingOf(own);
  const byAngle = opening > (own.sigmaLength ?? 0);
  const from = byAngle
    ? `, from ${(own.sigmaAngle ?? 0).toFixed(2)}° of angle`
    : own.mostly === ""
      ? ""
      : `, most of it from ${own.mostly}`;
  return `${own.k} x ${exact(opening)} = ${exact(own.k * opening)}${from}`;
}

/** A post is set; a wall stands, but nobody has measured where. */
function notSet(meets: string): string {
  if (meets.includes(" and ")) return `${meets} are not set yet`;
  return meets.startsWith("the ") ? `${meets} was not measured as it stands` : `${meets} is not set yet`;
}

/**
 * Why, in a sentence without its full stop.
 *
 * @param own - a decision; its `reason` is not looked at
 * @param style - how lengths are written
 */
export function decisionReason(own: EndDecision, style: DecisionStyle): string {
  switch (own.rule) {
    case "plate-face":
      return "a face of a plate: nothing is fitted along its thickness";
    case "made":
      return own.meets === "" ? "it is cut already" : `it is cut already and stands on ${own.meets}`;
    case "counted":
      return "it hangs on steps that were counted, not measured: tape or survey the nosings first";
    case "free":
      return "nothing meets it, no fit hangs on it";
    case "bench":
      return `made on the bench to its mate, both in ${own.meets}: what is off is taken up where that meets the site`;
    case "set-first":
      return `it is set first, and ${own.meets} is scribed to it`;
    case "set-later":
      return `${own.meets} is set before it; ${reckoning(own, style)}`;
    case "not-set":
      return `${notSet(own.meets)}, so it is scribed whatever the readings say; ${reckoning(own, style)}`;
    case "within-gap":
      return `${reckoning(own, style)}; within the gap of ${style.mark(own.gap)} to ${own.meets}`;
    case "closes":
      return `${reckoning(own, style)}; over the gap of ${style.mark(own.gap)} to ${own.meets}`;
    case "fitted-first":
      return `fit this end to ${own.meets} first; the other end is scribed and takes up the length`;
  }
}
