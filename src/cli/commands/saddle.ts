/**
 * `rakewright saddle`: the ordinates of a round tube that sits on a round tube, as a table to mark from.
 *
 * @packageDocumentation
 */
import { type Saddle, type SaddleInput, saddle } from "../../joints/saddle.js";
import { RakewrightError } from "../../kernel/diagnostic.js";
import { parseLength } from "../../kernel/length.js";
import type { GivenArgs } from "../args.js";
import type { Command } from "../command.js";
import { EXIT, UsageError } from "../io.js";
import { saddleTable } from "../saddle-table.js";

type Unit = "in" | "mm";
const ANGLE = { least: 0, most: 90 };
const STATIONS = { least: 3, most: 3600, whole: true };

/** The command. */
export const saddleCommand: Command = {
  name: "saddle",
  summary: "print the ordinates of a tube coped to a tube",
  words: [],
  options: {
    branch: { type: "string" },
    header: { type: "string" },
    angle: { type: "string" },
    unit: { type: "string" },
    stations: { type: "string" },
    offset: { type: "string" },
    gap: { type: "string" },
    json: { type: "boolean" },
  },
  help: `Usage: rakewright saddle --branch ODxWALL --header OD --angle DEG --unit in|mm [--stations N] [--offset D] [--gap G]

  --branch ODxWALL   the tube that is cut, e.g. 1.900x0.145
  --header OD        the round it sits on
  --angle DEG        between the two centrelines; a plumb post under a rail that rakes 35: 55
  --unit in|mm       what the lengths are in, and what the table is in
  --stations N       how many equal steps round the branch (default 24)
  --offset D         how far the centrelines pass each other (default 0); below zero: --offset=-1/4
  --gap G            root gap all round (default 0)
  --json             millimetres and degrees as JSON

Station 0 is the toe (obtuse side), halfway round is the heel (acute side). Distances run along the
branch from the point nearest the header's axis.
`,
  run: async (args, io) => {
    const unit = readUnit(args);
    const input = readInput(args, unit);
    const result = solve(input);
    io.stdout.write(
      args.flag("json")
        ? `${JSON.stringify({ input, ...result }, null, 2)}\n`
        : saddleTable(input, result, unit),
    );
    return EXIT.ok;
  },
};

function readUnit(args: GivenArgs): Unit {
  const unit = args.required("unit", "--unit in");
  if (unit === "in" || unit === "mm") return unit;
  throw new UsageError(
    `--unit: expected in or mm, got \`${unit}\`.`,
    "The unit holds for every length of the command.",
  );
}

function readInput(args: GivenArgs, unit: Unit): SaddleInput {
  const branch = args.required("branch", "--branch 1.900x0.145");
  const [od, wall, more] = branch.split(/[x×X*]/);
  if (od === undefined || wall === undefined || more !== undefined) {
    throw new UsageError(
      `--branch: expected ODxWALL, got \`${branch}\`.`,
      "Outside diameter, x, wall: 1.900x0.145.",
    );
  }
  args.required("angle", "--angle 54.5");
  return {
    branch: { od: length("branch", od, unit), wall: length("branch", wall, unit) },
    header: { od: length("header", args.required("header", "--header 1.900"), unit) },
    angle: args.number("angle", ANGLE, 90),
    offset: length("offset", args.text("offset") ?? "0", unit),
    gap: length("gap", args.text("gap") ?? "0", unit),
    stations: args.number("stations", STATIONS, 24),
  };
}

function length(name: string, text: string, unit: Unit): number {
  const parsed = parseLength(text.trim(), unit);
  if (parsed.ok) return parsed.value;
  const [first] = parsed.diagnostics;
  throw new UsageError(`--${name}: ${first?.message ?? `cannot read \`${text}\``}`, first?.hint ?? "");
}

/** Sizes that make no tube are the caller's mistake, not the program's. */
function solve(input: SaddleInput): Saddle {
  try {
    return saddle(input);
  } catch (error) {
    if (error instanceof RakewrightError)
      throw new UsageError(error.diagnostic.message, error.diagnostic.hint);
    throw error;
  }
}
