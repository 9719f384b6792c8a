/**
 * Which inputs of a design were measured, and how well is each of them known?
 *
 * Nosings from a survey have its covariance. Taped ones are running readings from one datum, so independent: each has the
 * standard uncertainty of its reading by the tape's class (`readingSigma`), like the length of a leg and the room at a turn;
 * the slope of a floor is one level reading, the angle of a turn one reading of an angle finder. What was found as set has the
 * uncertainty it was given. Counted steps were not measured at all. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Result } from "../../kernel/diagnostic.js";
import type { LegDesign } from "../document/design.js";
import type { Adjustment } from "../survey/adjustment.js";
import type { Matrix } from "../survey/factor.js";
import { nameOf } from "../survey/reading.js";
import { readingSigma } from "../survey/reading-sigma.js";
import type { TapeClass } from "../tape.js";
import type { LaidCase, Unknown } from "./unknown.js";

/** The inputs of a design. */
export interface Unknowns {
  readonly measured: readonly Unknown[];
  /** Of the measured ones, in their order, mm², degrees². */
  readonly covariance: Matrix;
  /** Of counted steps: whatever hangs on them hangs on nothing that was read. */
  readonly unmeasured: readonly Unknown[];
}

/** Readings that know nothing of others, or of a survey, with their covariance. */
interface Block {
  readonly unknowns: readonly Unknown[];
  readonly covariance: Matrix;
}

interface Gathered {
  readonly blocks: readonly Block[];
  readonly unmeasured: readonly Unknown[];
  readonly diagnostics: readonly Diagnostic[];
}

const NOTHING: Gathered = { blocks: [], unmeasured: [], diagnostics: [] };

const one = (own: Unknown, sigma: number): Block => ({ unknowns: [own], covariance: [[sigma * sigma]] });

const joined = (parts: readonly Gathered[]): Gathered => ({
  blocks: parts.flatMap((part) => part.blocks),
  unmeasured: parts.flatMap((part) => part.unmeasured),
  diagnostics: parts.flatMap((part) => part.diagnostics),
});

/** The least that is known of a level: what one reading of it says. */
export const levelSigma = (): number => readingSigma({ kind: "level", from: 1, to: 2 }, 0);

/** What one tape reading of a length is good for, mm. */
export const tapeSigma = (value: number, tape: TapeClass): number =>
  readingSigma({ kind: "distance", to: 1 }, Math.abs(value), tape);

function missing(path: string, what: string, got: string): Diagnostic {
  return diagnostic({
    code: "sigma-missing",
    path,
    message: `${what}: expected a standard uncertainty of 0 or more, got ${got}.`,
    hint: "Say how well it was read, one sigma; without it no end that hangs on it can be judged.",
  });
}

function surveyed(leg: LegDesign, index: number, count: number, survey: Adjustment): Gathered {
  const names = new Set(survey.coordinates.map(nameOf));
  const numbers = Array.from({ length: count }, (_, i) => i + 1);
  const lacking = numbers.flatMap((n) => [`x${n}`, `z${n}`]).filter((name) => !names.has(name));
  const free = survey.coordinates.filter((own) => !own.fixed);
  const rows = free.flatMap((own, i) =>
    typeof own.point === "number" && own.axis !== "y" && own.point <= count ? [{ own, i }] : [],
  );
  const covariance = rows.map(({ i }) => rows.map(({ i: k }) => survey.covariance[i]?.[k] ?? Number.NaN));
  const sound = covariance.every((row, i) => (row[i] ?? -1) >= 0 && row.every(Number.isFinite));
  const path = `legs[${index}].stair.survey`;
  if (lacking.length > 0 || !sound) {
    const got = lacking.length > 0 ? `none of ${lacking.join(", ")}` : "a covariance with gaps";
    return { ...NOTHING, diagnostics: [missing(path, `Survey of the ${leg.id}`, got)] };
  }
  const unknowns = rows.map(({ own }): Unknown => {
    return { kind: "nosing", leg: index, nosing: own.point as number, axis: own.axis as "x" | "z" };
  });
  return { ...NOTHING, blocks: [{ unknowns, covariance }] };
}

function stepsOf(leg: LegDesign, index: number, tape: TapeClass): Gathered {
  const { stair } = leg;
  if (stair === undefined) return NOTHING;
  if (stair.nosings === undefined) {
    const fields = ["floorToFloor", "going"] as const;
    return { ...NOTHING, unmeasured: fields.map((field) => ({ kind: "steps", leg: index, field })) };
  }
  if (stair.survey !== undefined) return surveyed(leg, index, stair.nosings.length, stair.survey);
  const blocks = stair.nosings.flatMap(({ run, height }, i): Block[] => {
    const at = { kind: "nosing", leg: index, nosing: i + 1 } as const;
    const z = one({ ...at, axis: "z" }, tapeSigma(height, tape));
    // The lowest nosing is where the tape is hooked.
    return i === 0 ? [z] : [one({ ...at, axis: "x" }, tapeSigma(run, tape)), z];
  });
  return { ...NOTHING, blocks };
}

function legOf({ asSet }: LaidCase, leg: LegDesign, index: number, tape: TapeClass): Gathered {
  const found = asSet?.legs.some((own) => own.leg === leg.id) ?? false;
  const { length, turn, along } = leg;
  const lengths =
    length === undefined || found ? [] : [one({ kind: "length", leg: index }, tapeSigma(length, tape))];
  const slopes = along === "stair" ? [] : [one({ kind: "slope", leg: index }, levelSigma())];
  const rooms = (["past", "before"] as const)
    .filter((field) => turn !== undefined && turn[field] > 0)
    .map((field) => one({ kind: "turn", leg: index, field }, tapeSigma(turn?.[field] ?? 0, tape)));
  const angle = readingSigma({ kind: "corner", at: "", from: "", to: "" }, 0);
  const turns = turn === undefined ? [] : [one({ kind: "turn", leg: index, field: "angle" }, angle)];
  const blocks = [...lengths, ...slopes, ...rooms, ...turns];
  return joined([stepsOf(leg, index, tape), { ...NOTHING, blocks }]);
}

const isSigma = (value: unknown): value is number =>
  typeof value === "number" && value >= 0 && value < Number.POSITIVE_INFINITY;

/** Posts and far ends as they were found. */
function foundOf({ asSet }: LaidCase): Gathered {
  const posts = (asSet?.posts ?? []).flatMap((own, post) => {
    const { x, z, lean } = own.sigma ?? {};
    const fields = [
      ...(own.x === undefined ? [] : [["x", x] as const]),
      ...(own.baseZ === undefined ? [] : [["baseZ", z] as const]),
      ["lean", lean] as const,
      ["leanAcross", lean] as const,
    ];
    return fields.map(([field, sigma]): Gathered => {
      if (isSigma(sigma)) return { ...NOTHING, blocks: [one({ kind: "post", post, field }, sigma)] };
      return { ...NOTHING, diagnostics: [missing(own.path, `${own.post}, ${field}, as set`, `${sigma}`)] };
    });
  });
  const legs = (asSet?.legs ?? []).map((own, leg): Gathered => {
    if (isSigma(own.sigma)) return { ...NOTHING, blocks: [one({ kind: "far-end", leg }, own.sigma)] };
    return {
      ...NOTHING,
      diagnostics: [missing(own.path, `Far end of the ${own.leg} as set`, `${own.sigma}`)],
    };
  });
  return joined([...posts, ...legs]);
}

/** One matrix of blocks along the diagonal. */
function covarianceOf(blocks: readonly Block[]): number[][] {
  const size = blocks.reduce((sum, own) => sum + own.unknowns.length, 0);
  const all = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  let at = 0;
  for (const { covariance } of blocks) {
    covariance.forEach((row, i) => {
      row.forEach((value, k) => {
        (all[at + i] as number[])[at + k] = value;
      });
    });
    at += covariance.length;
  }
  return all;
}

/**
 * The measured inputs of a design with their covariance, and the counted ones.
 *
 * @param laid - a design; the shop's tape (class II without one); what was found as set
 * @returns `sigma-missing` where something measured does not say how well
 * @example
 * const found = unknownsOf({ design });
 * if (found.ok) found.value.measured.length;
 */
export function unknownsOf(laid: LaidCase): Result<Unknowns> {
  const tape = laid.shop?.tape ?? "II";
  const legs = laid.design.legs.map((leg, i) => legOf(laid, leg, i, tape));
  const { blocks, unmeasured, diagnostics } = joined([...legs, foundOf(laid)]);
  if (diagnostics.length > 0) return { ok: false, diagnostics };
  const measured = blocks.flatMap((own) => own.unknowns);
  return { ok: true, value: { measured, covariance: covarianceOf(blocks), unmeasured }, diagnostics };
}
