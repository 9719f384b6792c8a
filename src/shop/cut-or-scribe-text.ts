/**
 * The CUT OR SCRIBE block of the cut list: which ends are not to be cut, which are left long, which are cut to length.
 *
 * Ends that say the same share a line. Leave-long is rounded up to the next mark and stands here alone: it is in no length of
 * the list. Plates are passed over, nothing is fitted along their thickness.
 *
 * @packageDocumentation
 */
import { formatLength } from "../kernel/length.js";
import { ROUNDING_SHARE } from "../kernel/tolerance.js";
import {
  type CutDecision,
  type DecisionStyle,
  decisionReason,
  type EndDecision,
} from "../layout/uncertainty/end-decision.js";
import { type FigureStyle, figure, figureUp } from "./figure.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** The parts of the block, in this order. */
const PARTS: readonly (readonly [CutDecision, string])[] = [
  ["counted", "COUNTED: DO NOT CUT"],
  ["scribe", "LEAVE LONG AND SCRIBE"],
  ["cut", "CUT TO LENGTH"],
  ["made", "MADE"],
];

/** Ends, or pieces, that say the same. */
interface Line {
  readonly ends: string;
  readonly text: string;
  readonly marks: readonly string[];
}

function exactly(mm: number, { unit }: FigureStyle): string {
  return formatLength(mm, { unit, decimals: unit === "in" ? 3 : 2, mark: false });
}

/** What a block of one unit of the paper does: half an inch and ten millimetres are what lies about a bench. */
function blockText(along: number, style: FigureStyle): string {
  const block = style.unit === "in" ? 25.4 / 2 : 10;
  const shift = exactly(block * along, style);
  return `; with a block of ${figure(block, style)} on the plumb face the cut moves ${shift} along the rail from the scribed line`;
}

function endLine(own: EndDecision, style: FigureStyle): string {
  const words: DecisionStyle = {
    exact: (mm) => exactly(mm, style),
    mark: (mm) => figure(mm, style),
  };
  const reason = decisionReason(own, words);
  if (own.decision !== "scribe") return reason;
  // On a level rail the cut moves by the block itself, as everybody expects.
  const { alongPerBlock = 1 } = own;
  const block = alongPerBlock - 1 <= ROUNDING_SHARE ? "" : blockText(alongPerBlock, style);
  return `leave ${figureUp(own.leaveLong, style)} long: ${reason}${block}`;
}

/** Marks in one word; three and more that count on are `V1-1 to V1-9`. */
function marksText(marks: readonly string[]): string {
  const parts = marks.map((mark) => /^(.*?)(\d+)(\D*)$/.exec(mark));
  const follows = (i: number): boolean => {
    const [a, b] = [parts[i - 1], parts[i]];
    return !!a && !!b && a[1] === b[1] && a[3] === b[3] && Number(b[2]) === Number(a[2]) + 1;
  };
  const runs: string[][] = [];
  marks.forEach((mark, i) => {
    if (i > 0 && follows(i)) runs.at(-1)?.push(mark);
    else runs.push([mark]);
  });
  return runs.map((run) => (run.length < 3 ? run.join(", ") : `${run[0]} to ${run.at(-1)}`)).join(", ");
}

/** Two ends between posts that are not set yet, told as one where their numbers are the same. */
function pairLine(first: EndDecision, second: EndDecision, style: FigureStyle): string | undefined {
  const alike = [first, second].every((own) => own.rule === "not-set" && !own.meets.startsWith("the "));
  if (!alike || first.mostly !== second.mostly || first.leaveLong !== second.leaveLong) return undefined;
  return endLine({ ...first, meets: `${first.meets} and ${second.meets}` }, style).replace(
    " long:",
    " long each:",
  );
}

/** Lines of one part, in the order their first piece is listed. */
function linesOf(decisions: readonly EndDecision[], style: FigureStyle): Line[] {
  const byPiece = new Map<string, EndDecision[]>();
  for (const own of decisions) byPiece.set(own.piece, [...(byPiece.get(own.piece) ?? []), own]);
  const lines = [...byPiece.values()].flatMap((ends): Line[] => {
    const said = ends.map((own) => ({ own, text: endLine(own, style) }));
    const [first, second] = said;
    if (first && second) {
      const same = first.text === second.text ? first.text : undefined;
      const text = same ?? pairLine(first.own, second.own, style);
      if (text !== undefined) return [{ ends: "both ends", text, marks: [first.own.mark] }];
    }
    return said.map(({ own, text }) => ({ ends: `${own.name} end`, text, marks: [own.mark] }));
  });
  const grouped = new Map<string, Line>();
  for (const line of lines) {
    const key = `${line.ends} ${line.text}`;
    const before = grouped.get(key);
    grouped.set(key, before ? { ...before, marks: [...before.marks, ...line.marks] } : line);
  }
  return [...grouped.values()];
}

/**
 * The block's lines.
 *
 * @param decisions - from `cutOrScribe`
 * @param style - unit and fraction of the paper
 * @returns lines of at most 100 columns; none without decisions
 * @example
 * cutOrScribeText(fits.value, { unit: "in", denominator: 32 }).join("\n");
 */
export function cutOrScribeText(decisions: readonly EndDecision[], style: FigureStyle): string[] {
  const listed = decisions.filter((own) => own.rule !== "plate-face");
  const [any] = listed;
  if (any === undefined) return [];
  const allowed =
    any.gap === 0 ? "0: neither the design nor the shop file gives one" : figure(any.gap, style);
  const parts = PARTS.flatMap(([decision, title]) => {
    const own = linesOf(
      listed.filter((one) => one.decision === decision),
      style,
    );
    if (own.length === 0) return [];
    const rule = "-".repeat(PAPER_WIDTH);
    return [
      rule,
      title,
      ...own.flatMap(({ ends, text, marks }) => wrap("  ", `${marksText(marks)}, ${ends}: ${text}`, 6)),
    ];
  });
  return [
    ...wrap(
      "CUT OR SCRIBE   ",
      `fit gap allowed ${allowed}; cut to length where ${any.k} standard uncertainties of the readings are within it` +
        ` (common practice, no source). LEAVE-LONG IS IN NO LENGTH OF THIS LIST: add it where it is said here, once.`,
      6,
    ),
    ...parts,
  ];
}
