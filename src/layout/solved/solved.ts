/**
 * The solved pieces as a file: everything a later run needs to know of a piece, to the last bit.
 *
 * A piece that is cut after this file was written stays the piece of this file, whatever is measured later; and two such
 * files tell what a fabricator must mark again. Numbers are written so that they read back as the same doubles, −0 too;
 * same pieces, same bytes. Millimetres, degrees; frames as in `Piece`.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import { CAUTION } from "../../kernel/caution.js";
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { MadeMisfit } from "../as-set/made-misfit.js";
import { isOnlyDesigned, type PieceState } from "../as-set/piece-state.js";

/** What the file calls itself, and the version of its form. */
export const SOLVED_FORMAT = "rakewright-solved";
export const SOLVED_VERSION = 1;

/** The file. */
export interface Solved {
  readonly format: typeof SOLVED_FORMAT;
  readonly version: typeof SOLVED_VERSION;
  /** Program and version that wrote it. */
  readonly generator: string;
  readonly job: string;
  /** Of the design and its papers; every number in this file is in `units`. */
  readonly unit: "in" | "mm";
  readonly units: { readonly length: "mm"; readonly angle: "degree" };
  readonly caution: string;
  readonly pieces: readonly Piece[];
  /** Of pieces of which something is made or that stand. */
  readonly states: readonly PieceState[];
  /** What is made and does not fit any more. */
  readonly misfits: readonly MadeMisfit[];
}

/** What a file is made of. */
export interface SolvedInput {
  readonly generator: string;
  readonly job: string;
  readonly unit: "in" | "mm";
  readonly pieces: readonly Piece[];
  readonly states?: readonly PieceState[];
  readonly misfits?: readonly MadeMisfit[];
}

/**
 * The file as data.
 *
 * @param input - the pieces, and what of them is made
 * @example
 * solved({ generator: "my program 1", job: "Kiln room stair", unit: "in", pieces: guard.pieces });
 */
export function solved(input: SolvedInput): Solved {
  const { generator, job, unit, pieces, states = [], misfits = [] } = input;
  return {
    ...{ format: SOLVED_FORMAT, version: SOLVED_VERSION, generator, job, unit },
    units: { length: "mm", angle: "degree" },
    caution: CAUTION,
    pieces,
    states: states.filter((own) => !isOnlyDesigned(own)),
    misfits,
  };
}

/**
 * The file as text, one line a piece: `parseSolved(JSON.parse(text))` gives the same pieces.
 *
 * @throws RakewrightError `not-finite` for a number that JSON cannot hold
 * @example
 * writeFileSync("solved.json", solvedText(solved({ generator, job, unit: "in", pieces })));
 */
export function solvedText(file: Solved): string {
  const lines = Object.entries(file).map(([key, value]) => {
    if (!Array.isArray(value) || value.length === 0) return `  ${JSON.stringify(key)}: ${exact(value)}`;
    return `  ${JSON.stringify(key)}: [\n${value.map((own) => `    ${exact(own)}`).join(",\n")}\n  ]`;
  });
  return `{\n${lines.join(",\n")}\n}\n`;
}

/** JSON without loss: `JSON.stringify` writes −0 as 0 and NaN as null. */
function exact(value: unknown): string {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) {
      throw new RakewrightError({
        code: "not-finite",
        message: `Solved pieces: expected finite numbers, got ${value}.`,
        hint: "Please report this with the design.",
      });
    }
    return Object.is(value, -0) ? "-0" : String(value);
  }
  if (Array.isArray(value)) return `[${value.map(exact).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).filter(([, own]) => own !== undefined);
  return `{${fields.map(([key, own]) => `${JSON.stringify(key)}:${exact(own)}`).join(",")}}`;
}
