/**
 * `rakewright changes`: what must be cut or marked again between two builds, as a paper for the shop or as JSON.
 *
 * @packageDocumentation
 */
import { resolve } from "node:path";
import { parseLength } from "../../kernel/length.js";
import type { Solved } from "../../layout/index.js";
import {
  type ChangesHeader,
  OVER_DEGREES,
  OVER_MM,
  pieceChanges,
  pieceChangesText,
} from "../../shop/index.js";
import type { GivenArgs } from "../args.js";
import type { Command } from "../command.js";
import { type CliIo, EXIT, UsageError } from "../io.js";
import { loadSolved } from "../load-solved.js";
import { generator } from "../version.js";

/** The command. */
export const changesCommand: Command = {
  name: "changes",
  summary: "print what to re-cut and re-mark between two builds",
  words: ["OLD", "NEW"],
  options: { over: { type: "string" }, "over-angle": { type: "string" }, json: { type: "boolean" } },
  help: `Usage: rakewright changes OLD NEW [--over LENGTH] [--over-angle DEG] [--json]

OLD and NEW are folders that \`rakewright build\` wrote, or the solved.json in them. Prints, piece by piece, every
number a fabricator marks that is another one now: old, new, and by how much it moved.

  --over LENGTH      leave out what moved by no more, in the unit of NEW (default 1/32 in; "0.5 mm" is a length too)
  --over-angle DEG   the same for angles (default ${OVER_DEGREES})
  --json             millimetres and degrees as JSON

What of a piece is made already is known from a build with --as-set; its numbers stand as "no longer fits".
Exit code 0 whether or not anything moved, 2 when a build cannot be read.
`,
  run: async (args, io) => {
    const [oldName = "", newName = ""] = args.words;
    const [old, now] = [read(oldName, io), read(newName, io)];
    const over = overOf(args, now.unit);
    const overAngle = args.number("over-angle", { least: 0, most: 180 }, OVER_DEGREES);
    const states = statesOf(old, now);
    const changes = pieceChanges(old.pieces, now.pieces, {
      over,
      overAngle,
      states,
      misfits: now.misfits,
    });
    const header: ChangesHeader = {
      job: now.job,
      old: `${oldName}, written by ${old.generator}`,
      new: `${newName}, written by ${now.generator}`,
      notes: notesOf(old, now),
      generator: generator(),
    };
    io.stdout.write(
      args.flag("json")
        ? `${JSON.stringify({ ...header, unit: now.unit, units: now.units, caution: now.caution, changes }, null, 2)}\n`
        : pieceChangesText(changes, header, { unit: now.unit, denominator: 32 }),
    );
    return EXIT.ok;
  },
};

function read(name: string, io: CliIo): Solved {
  const found = loadSolved(resolve(io.cwd, name), name);
  if (found.ok) return found.value;
  const [first] = found.diagnostics;
  const more = found.diagnostics.length - 1;
  throw new UsageError(
    `${first?.message ?? name}${more > 0 ? ` (and ${more} more)` : ""}`,
    first?.hint ?? "",
  );
}

function overOf(args: GivenArgs, unit: Solved["unit"]): number {
  const text = args.text("over");
  if (text === undefined) return OVER_MM;
  const parsed = parseLength(text.trim(), unit);
  if (parsed.ok && parsed.value >= 0) return parsed.value;
  const [first] = parsed.diagnostics;
  throw new UsageError(
    `--over: ${first?.message ?? `expected a length of 0 or more, got \`${text}\`.`}`,
    first?.hint ?? "It is the least that counts as moved, e.g. --over 1/32.",
  );
}

/** What either build knows to be made is made: a later one may have been laid out without that. */
function statesOf(old: Solved, now: Solved): Solved["states"] {
  const known = new Set(now.states.map((own) => own.id));
  return [...now.states, ...old.states.filter((own) => !known.has(own.id))];
}

function notesOf(old: Solved, now: Solved): string[] {
  const ids = new Set(old.pieces.map((own) => own.id));
  const shared = now.pieces.some((own) => ids.has(own.id));
  return [
    ...(old.job === now.job ? [] : [`the two are of DIFFERENT JOBS: the old one is "${old.job}".`]),
    ...(old.unit === now.unit
      ? []
      : [`the old papers are in ${unitWord(old.unit)}, these figures in ${unitWord(now.unit)}.`]),
    ...(shared || now.pieces.length === 0 ? [] : ["no piece of the new build has the id of an old one."]),
  ];
}

const unitWord = (unit: Solved["unit"]): string => (unit === "in" ? "inches" : "millimetres");
