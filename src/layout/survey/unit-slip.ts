/**
 * Which reading looks as if it had been written in the other unit?
 *
 * Every length on a stair is so many steps long, and steps of one stair are much alike. A reading whose step is an inch's worth
 * of millimetres (25.4) times longer or shorter than the usual one of its kind was read off the other side of the tape.
 * The middle one of a list stands for the usual one, which a few slips do not move. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { MM_PER } from "../../kernel/length-unit.js";
import { sayLength } from "../say-length.js";
import { fromOf, type Reading } from "./reading.js";

/** Factor either way within which a step counts as 25.4 times another: beside its own kind, and beside all kinds. */
const [OWN_KIND, ANY_KIND] = [1.5, 2];
/** Readings of a kind from which on the kind is judged by itself. */
const ENOUGH = 3;

type Kind = "up" | "along" | "slope";
const KINDS: Readonly<Partial<Record<Reading["kind"], Kind>>> = {
  rise: "up",
  height: "up",
  run: "along",
  distance: "along",
  slope: "slope",
};

interface Step {
  readonly reading: Reading;
  readonly index: number;
  readonly kind: Kind;
  /** mm per step. */
  readonly size: number;
}

function middle(sizes: readonly number[]): number {
  const sorted = [...sizes].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** How many times too long (25.4) or too short (1/25.4) beside the usual step; undefined where it is neither. */
function slipOf(size: number, usual: number, within: number): number | undefined {
  return [MM_PER.in, 1 / MM_PER.in].find((times) => {
    const off = size / usual / times;
    return off > 1 / within && off < within;
  });
}

/** The warning about one reading. */
function slip(
  reading: Reading,
  index: number,
  {
    size,
    usual,
    times,
    what,
  }: { readonly size: number; readonly usual: number; readonly times: number; readonly what: string },
): Diagnostic {
  const [much, meant] =
    times > 1 ? ["25.4 times too long", "millimetres"] : ["25.4 times too short", "inches"];
  return diagnostic({
    code: "survey-units",
    severity: "warning",
    path: `readings[${index}]`,
    members: [reading.id],
    message: `Reading ${reading.id} (${reading.kind}): expected about ${sayLength(usual)} ${what}, got ${sayLength(size)}: about ${much}.`,
    hint: `Units? If it was read in ${meant}, write the unit behind it.`,
    values: { usual, got: size },
  });
}

/** The usual step of a kind: its own, unless all of the kind is in the other unit or too few are read. */
function usualStep(kind: Kind, steps: readonly Step[]): { usual: number; within: number } {
  const sizes = (of: (own: Step) => boolean) => steps.filter(of).map((own) => own.size);
  const [own, others] = [sizes((step) => step.kind === kind), sizes((step) => step.kind !== kind)];
  const [usual, elsewhere] = [middle(own), middle(others)];
  const slipped = others.length > own.length && slipOf(usual, elsewhere, ANY_KIND) !== undefined;
  if (own.length >= ENOUGH && !slipped) return { usual, within: OWN_KIND };
  return { usual: slipped ? elsewhere : middle(sizes(() => true)), within: ANY_KIND };
}

/**
 * Readings that were likely written in the other unit.
 *
 * @param readings - of one stair, sound ones; angles and landings do not count
 * @returns a `survey-units` warning for each, its path that of the reading (`readings[3]`)
 * @example unitSlips([rise1, rise2, { id: "R3", kind: "rise", from: 2, to: 3, value: 7.5 }]).length; // 1
 */
export function unitSlips(readings: readonly Reading[]): Diagnostic[] {
  const steps = readings.flatMap((reading, index): Step[] => {
    const kind = KINDS[reading.kind];
    const count = Number(reading.to) - Number(fromOf(reading));
    return kind === undefined || !(count > 0) ? [] : [{ reading, index, kind, size: reading.value / count }];
  });
  return steps.flatMap(({ reading, index, kind, size }) => {
    const { usual, within } = usualStep(kind, steps);
    const times = slipOf(size, usual, within);
    if (times === undefined) return [];
    return [slip(reading, index, { size, usual, times, what: "a step as elsewhere" })];
  });
}

/**
 * Sides and diagonals of a landing that were likely written in the other unit: corners lie about as far apart as each other.
 *
 * @param readings - of one landing, sound ones; angles and offsets do not count
 * @returns as `unitSlips`; a landing may have a short side all the same, so it counts only where the readings contradict
 */
export function planUnitSlips(readings: readonly Reading[]): Diagnostic[] {
  const isLength = ({ kind }: Reading) => kind === "side" || kind === "diagonal";
  const lengths = readings.filter(isLength).map((own) => own.value);
  if (lengths.length < ENOUGH) return [];
  const usual = middle(lengths);
  return readings.flatMap((reading, index) => {
    const times = isLength(reading) ? slipOf(reading.value, usual, ANY_KIND) : undefined;
    if (times === undefined) return [];
    return [slip(reading, index, { size: reading.value, usual, times, what: "from corner to corner" })];
  });
}
