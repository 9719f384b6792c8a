/**
 * A blank survey sheet as plain text: boxes in the order of the walk, where to hook, and what to do when it does not close.
 *
 * Only edges that a hook or a hand finds: finished floor, nosing edges, wall faces. Running figures from one datum.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../kernel/caution.js";
import { formatLength, MM_PER } from "../kernel/length.js";
import type { PlannedReading } from "../layout/survey/reading.js";
import { landingSheet, type SurveySheet } from "../layout/survey/survey-sheet.js";
import type { PaperUnit } from "./cut-list-types.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** What stands at the head of the sheet. */
export interface SheetPaper {
  readonly unit: PaperUnit;
  /** Whether a landing is taped in plan; default false. */
  readonly landing?: boolean;
  /** Program and version. */
  readonly generator?: string;
}

const BOX = "[____________]";
const LINE = "________________";
/** Slopes side by side. */
const ACROSS = 4;

const box = ({ id }: Pick<PlannedReading, "id">): string => `${id.padEnd(7)}${BOX}`;

/** A length that something may be off by at most, to the next mark up. */
function atMost(mm: number, unit: PaperUnit): string {
  if (unit === "mm") return `${Math.ceil(mm)} mm`;
  return `${formatLength(Math.ceil((mm / MM_PER.in) * 16) * (MM_PER.in / 16), { unit: "in-fraction" })}`;
}

function rows<T>(all: readonly T[], across: number): T[][] {
  return all.flatMap((_, i) => (i % across === 0 ? [all.slice(i, i + across)] : []));
}

function headText({ risers }: SurveySheet, { unit }: SheetPaper): string[] {
  return [
    `Job      ${LINE}${LINE}____    Date ${LINE}    By ${LINE}____`,
    "Tape     class in its oval:  I [ ]   II [ ]   III [ ]      hook tight, end not bent [ ]",
    `Write    ${unit === "in" ? "inches and sixteenths" : "millimetres"}, as read, each by itself; nothing added up, nothing averaged.`,
    ...wrap(
      "Hook     ",
      "on hard edges only: the FINISHED floor, nosing edges, wall faces. Carpet is not a floor: press through it, or lift it, and note which.",
    ),
    ...wrap(
      "Numbers  ",
      `0 is the lower finished floor, nosing 1 the lowest edge, nosing ${risers} the landing's edge. Chalk them on the stair.`,
    ),
  ];
}

function walkText(sheet: SurveySheet): string[] {
  const table = sheet.steps.map(({ number, rise, height, going }) =>
    `${`${number}`.padStart(5)}    ${box(rise)}      ${box(height)}      ${going ? box(going) : "landing"}`.trimEnd(),
  );
  return [
    ...wrap(
      "WALK 1   ",
      "Hook the tape on the edge of nosing 1 and leave it there. Walk up in the line of the guard, tape tight along the slope, and read it at the edge of every nosing.",
    ),
    "",
    ...rows(sheet.slopes, ACROSS).map((own) => `    ${own.map(box).join("   ")}`),
    "",
    ...wrap(
      "WALK 2   ",
      "From the floor again, at every step: RISE, the tape stood on the step below (on the floor for 1), read at this nosing edge. HEIGHT, the tape let down plumb beside the stair till its end stands on the finished floor, read at this edge. GOING, level from this edge to plumb under the next one, with a level or a square.",
    ),
    "",
    "   no    rise                       height from the floor      going to the next",
    ...table,
    "",
    ...(sheet.check
      ? wrap(
          "WALK 3   ",
          `Hook on the edge of nosing ${sheet.check.from}, read along the slope at nosing ${sheet.check.to}.  ${box(sheet.check)}`,
        )
      : []),
    ...wrap("Besides  ", `nosing past the riser face under it ${BOX}   stair, edge to edge ${BOX}`),
  ];
}

function landingText(): string[] {
  return [
    "",
    ...wrap(
      "LANDING  ",
      "level, in plan, corners that a hook or a wall's face gives: A where the landing's edge begins over the stair on the guard's side, B the next corner along the guard (or the wall it runs to), C and D the others, going on round. Both diagonals: four sides alone are a linkage.",
    ),
    "",
    ...rows(landingSheet(), ACROSS).map((own) => `    ${own.map(box).join("   ")}`),
    "",
    `    from the wall's face square to a corner (\`offset\`):  which ${LINE}  ${BOX}`,
  ];
}

function closeText({ risers, closing }: SurveySheet, { unit }: SheetPaper): string[] {
  return [
    ...wrap("CLOSE    ", "before you leave:"),
    ...wrap(
      "         ",
      `R1 to R${risers} added up ${LINE} should be H${risers} within ${atMost(closing.sum, unit)}; each height less the one before it should be the rise between within ${atMost(closing.step, unit)} (3 standard uncertainties of a class II tape and the hand).`,
    ),
    ...wrap(
      "IF NOT   ",
      "find the step where the two heights and the rise differ most, and tape all three again. Write the new reading on a line below under a new name (R8b), not over the old one. Do not share what is left over out among the steps: one reading is wrong, the others are not.",
    ),
    ...wrap(
      "Type in  ",
      "every reading under its id into `readings` of the stair's `survey` (a landing's: of the design's `plan`); rakewright survey DESIGN says which does not agree, or which cannot be told apart. Its name in `without` leaves it out until it is taped again.",
    ),
    "",
    "  AGAIN, or what else was read (slopes between any two nosings, a level over two of them: degrees)",
    "    id         kind            from     to       reading",
    ...Array.from({ length: 6 }, () => "    [______]   [___________]   [____]   [____]   [____________]"),
  ];
}

/**
 * The sheet.
 *
 * @param sheet - from `surveySheet`
 * @param paper - unit it is filled in with
 * @returns text with a final line break; lines of at most 100 columns
 * @example surveySheetText(surveySheet(13), { unit: "in" });
 */
export function surveySheetText(sheet: SurveySheet, paper: SheetPaper): string {
  const title = `SURVEY SHEET of a stair of ${sheet.risers} risers`;
  const rule = "=".repeat(PAPER_WIDTH);
  return `${[
    paper.generator ? `${title}${paper.generator.padStart(PAPER_WIDTH - title.length)}` : title,
    ...headText(sheet, paper),
    "",
    rule,
    ...walkText(sheet),
    ...(paper.landing ? landingText() : []),
    "",
    rule,
    ...closeText(sheet, paper),
    "",
    rule,
    ...wrap("", CAUTION),
  ].join("\n")}\n`;
}
