/**
 * The ASSEMBLIES block of the cut list (CARRYING IN where there are none): what is lifted, how large it is, where it balances, and what it has to get through.
 *
 * @packageDocumentation
 */
import type { AssemblyReport } from "./assemblies.js";
import { degrees, type FigureStyle, figure, massText } from "./figure.js";
import type { Passage } from "./fits-through.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** What stands before a passage. */
const PLACES: Readonly<Record<Passage["through"], string>> = {
  door: "  door     ",
  corridor: "  corridor ",
  stair: "  stair    ",
  longest: "  longest  ",
};

/**
 * The block's lines.
 *
 * @param reports - from `assemblies`
 * @param style - unit and fraction of the paper
 * @param loose - the longest piece that is carried in by itself, when it is to be told
 * @returns lines of at most 100 columns; none without anything to tell
 * @example
 * assembliesText(assemblies(list, parts).reports, { unit: "in", denominator: 32 }).join("\n");
 */
export function assembliesText(
  reports: readonly AssemblyReport[],
  style: FigureStyle,
  loose?: AssemblyReport,
): string[] {
  if (reports.length === 0 && !loose) return [];
  const rule = "-".repeat(PAPER_WIDTH);
  return [
    ...wrap(
      reports.length > 0 ? "ASSEMBLIES   " : "CARRYING IN  ",
      "sizes over all and masses of the steel alone, no weld metal or finish; limits leave no room for hands or padding",
    ),
    ...reports.flatMap((own) => [rule, ...reportText(own, own.pieces.join(", "), style)]),
    ...(loose ? [rule, ...reportText(loose, "the longest piece that is carried in loose", style)] : []),
  ];
}

function reportText(own: AssemblyReport, what: string, style: FigureStyle): string[] {
  const say = (mm: number): string => figure(mm, style);
  const { box, centre, balance, pieces } = own;
  const count = `${pieces.length} piece${pieces.length === 1 ? "" : "s"}`;
  return [
    ...wrap(`${own.mark}   `, `${count}, ${massText(own.mass)}: ${what}`, 2),
    ...wrap(
      "  stands   ",
      `${say(box.standing.length)} long in plan, ${say(box.standing.height)} high, ${say(box.thickness)} thick`,
    ),
    ...wrap(
      "  carried  ",
      `${say(box.length)} long, ${say(box.depth)} deep, ${say(box.thickness)} thick; as it stands its length lies ${degrees(box.rise)} from level`,
    ),
    ...wrap(
      "  balance  ",
      `${say(balance.distance)} from its ${balance.from} end along that length; centre of gravity x ${say(centre[0])}, y ${say(centre[1])}, z ${say(centre[2])} from the top nosing (uphill, left, up)`,
    ),
    ...own.passages.flatMap((passage) => wrap(PLACES[passage.through], passageText(passage, say))),
  ];
}

function passageText({ what, value, limit, fits, assumption }: Passage, say: (mm: number) => string): string {
  const by = say(Math.abs(limit - value));
  const answer = fits ? `${by} to spare` : `TOO ${what === "depth" ? "DEEP" : "LONG"} by ${by}`;
  return `its ${what} ${say(value)}, at most ${say(limit)}: ${answer}; ${assumption}`;
}
