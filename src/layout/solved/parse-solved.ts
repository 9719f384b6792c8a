/**
 * Reads a file of solved pieces back: JSON of every shape in, the pieces or the reasons why not.
 *
 * Never throws, whatever the JSON. First what file it is and which version, then the shape of every piece, then what spans
 * several: each id and mark once.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { type Diagnostic, diagnostic, type Result } from "../../kernel/diagnostic.js";
import { type MadeMisfit, MISFIT_KINDS } from "../as-set/made-misfit.js";
import type { PieceState } from "../as-set/piece-state.js";
import { checkAgainst } from "../document/schema/check-shape.js";
import { got } from "../document/schema/path-text.js";
import { pieceSchema } from "./piece-schema.js";
import { SOLVED_FORMAT, SOLVED_VERSION, type Solved } from "./solved.js";

const DOCUMENT = { name: "The file of solved pieces", keys: ["pieces", "states", "misfits", "generator"] };

function stateSchema(): z.ZodType<PieceState> {
  const of = z.enum(["designed", "made"]);
  return z.strictObject({
    ...{ id: z.string().min(1), mark: z.string().min(1), start: of, end: of, holes: of },
    place: z.enum(["designed", "dry-set", "set"]),
  });
}

function misfitSchema(): z.ZodType<MadeMisfit> {
  return z.strictObject({
    ...{ piece: z.string().min(1), feature: z.enum(["start", "end", "holes"]), onto: z.string() },
    ...{ hole: z.string().exactOptional(), kind: z.enum(MISFIT_KINDS) },
    ...{ by: z.number().nonnegative(), allowed: z.number().nonnegative() },
  });
}

function solvedSchema(): z.ZodType<Solved> {
  return z.strictObject({
    format: z.literal(SOLVED_FORMAT),
    version: z.literal(SOLVED_VERSION),
    generator: z.string(),
    job: z.string(),
    unit: z.enum(["in", "mm"]),
    units: z.strictObject({ length: z.literal("mm"), angle: z.literal("degree") }),
    caution: z.string(),
    pieces: z.array(pieceSchema()),
    states: z.array(stateSchema()),
    misfits: z.array(misfitSchema()),
  });
}

/**
 * Why a file of solved pieces could not even be read.
 *
 * @param name - the file, as the user called it
 * @param why - e.g. `there is no such file`
 */
export function unreadableSolved(name: string, why: string): Diagnostic {
  return diagnostic({
    code: "solved-unreadable",
    path: name,
    message: `${name}: expected the solved pieces of a build, but ${why}.`,
    hint: "Give the folder that `rakewright build` wrote into, or the solved.json in it.",
    values: { file: name },
  });
}

/** Not this kind of file, or a form of it that this program does not know. */
function wrongFile(json: unknown): Diagnostic | null {
  const isObject = typeof json === "object" && json !== null && !Array.isArray(json);
  const { format, version } = (isObject ? json : {}) as { format?: unknown; version?: unknown };
  if (format !== SOLVED_FORMAT) {
    return diagnostic({
      code: "not-solved",
      path: "format",
      message: `The file of solved pieces: expected format ${got(SOLVED_FORMAT)}, got ${isObject ? got(format) : got(json)}.`,
      hint: "Give the solved.json that `rakewright build` wrote; pieces.json is for other programs and is not read back.",
      values: { got: got(format) },
    });
  }
  if (version === SOLVED_VERSION) return null;
  return diagnostic({
    code: "solved-version",
    path: "version",
    message: `The file of solved pieces: expected version ${SOLVED_VERSION}, got ${got(version)}.`,
    hint: "Read it with the program that wrote it, or build the design again with this one.",
    values: { got: got(version), expected: SOLVED_VERSION },
  });
}

/** Ids and marks that two pieces share. */
function repeated({ pieces }: Solved): Diagnostic[] {
  return (["id", "mark"] as const).flatMap((key) => {
    const first = new Map<string, number>();
    return pieces.flatMap((piece, i) => {
      const before = first.get(piece[key]);
      if (before === undefined) {
        first.set(piece[key], i);
        return [];
      }
      return [
        diagnostic({
          code: "duplicate-id",
          path: `pieces[${i}].${key}`,
          members: [piece.id],
          message: `pieces[${i}]: expected ${key === "id" ? "an id" : "a mark"} of its own, got ${got(piece[key])}, which pieces[${before}] has.`,
          hint: "Use the file as it was written.",
        }),
      ];
    });
  });
}

/**
 * Reads a file of solved pieces.
 *
 * @param json - parsed JSON of any shape
 * @returns the file's data, pieces equal to those it was written from to the last bit; or diagnostics: `not-solved`,
 *   `solved-version`, `duplicate-id`, and for fields `wrong-type`, `unknown-key`, `bad-value`, `out-of-range`, `missing`
 * @example
 * ```ts
 * const read = parseSolved(JSON.parse(text));
 * if (read.ok) solidOf(read.value.pieces[0]);
 * ```
 */
export function parseSolved(json: unknown): Result<Solved> {
  const wrong = wrongFile(json);
  if (wrong) return { ok: false, diagnostics: [wrong] };
  const again = "Build the design again; the file is not meant to be edited by hand.";
  const checked = checkAgainst(solvedSchema(), json, DOCUMENT, again);
  if (!checked.ok) return checked;
  const diagnostics = repeated(checked.value);
  return diagnostics.length > 0 ? { ok: false, diagnostics } : checked;
}
