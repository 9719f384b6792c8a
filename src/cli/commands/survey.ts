/**
 * `rakewright survey`: adjusts the survey of a design and prints what it says; or prints a blank sheet to take one with.
 *
 * @packageDocumentation
 */
import { hasErrors } from "../../kernel/diagnostic.js";
import { LIMITS } from "../../layout/document/defaults.js";
import {
  type DesignSurveys,
  designInShop,
  landingSheet,
  type PlannedReading,
  parseShop,
  readSurveys,
  type SurveySheet,
  sheetReadings,
  surveySheet,
} from "../../layout/index.js";
import { planSurveyText, surveySheetText, surveyText } from "../../shop/index.js";
import type { GivenArgs } from "../args.js";
import type { Command } from "../command.js";
import { type CliIo, EXIT, UsageError } from "../io.js";
import { readDesign } from "../read-design.js";
import { diagnosticsText, wantsColour } from "../report.js";
import { generator } from "../version.js";

/** Finest mark of an inch paper, as on the cut list. */
const DENOMINATOR = 32;

const RISERS = { least: 2, most: LIMITS.risers, whole: true };

/** The command. */
export const surveyCommand: Command = {
  name: "survey",
  summary: "adjust the survey of a design, or print a blank survey sheet",
  words: [],
  optionalWords: ["DESIGN"],
  options: {
    shop: { type: "string" },
    blank: { type: "boolean" },
    risers: { type: "string" },
    landing: { type: "boolean" },
    unit: { type: "string" },
    json: { type: "boolean" },
  },
  help: `Usage: rakewright survey DESIGN [--shop FILE] [--json]
       rakewright survey --blank --risers N [--landing] [--unit in|mm] [--json]

The first adjusts all readings of a flight together and prints what does not agree, the reading to
take next, the pitch, and every nosing with its uncertainty. DESIGN is a file, or - for standard
input; only its surveys need be right. The second prints a sheet to take a survey with, as one
person with one tape walks the stair; its ids are those of the design's readings.

  --shop FILE   the shop file: class of the tape, where the survey names none
  --blank       a blank sheet
  --risers N    how many risers the stair has
  --landing     with the landing in plan
  --unit in|mm  what the sheet is filled in with (default mm)
  --json        everything as JSON, millimetres and degrees; of a blank sheet, readings to fill in

Exit code 0 when the survey was adjusted without an error, 1 with errors in it, 2 when it cannot be read.
`,
  run: async (args, io) => (args.flag("blank") ? blank(args, io) : adjust(args, io)),
};

async function adjust(args: GivenArgs, io: CliIo): Promise<number> {
  const [name] = args.words;
  if (name === undefined)
    throw new UsageError(
      "survey: DESIGN is missing.",
      "Give a design file, or --blank --risers N for a sheet.",
    );
  const file = args.text("shop");
  if (name === "-" && file === "-")
    throw new UsageError(
      "Standard input can be only one of DESIGN and --shop.",
      "Give one of them as a file.",
    );
  const document = await readDesign(name, io);
  const shop = file === undefined ? undefined : parseShop(await readDesign(file, io, "shop"));
  const found =
    shop?.ok === false
      ? { count: 0, flights: [], diagnostics: shop.diagnostics }
      : readSurveys(shop === undefined ? document : designInShop(document, shop.value));
  const { job = "", unit = "mm", flights, plan, diagnostics }: DesignSurveys = found;
  const ok = !hasErrors(diagnostics);
  if (ok && found.count === 0) {
    throw new UsageError(
      `${name === "-" ? "standard input" : name} has no survey.`,
      "Give the stair a `survey` with its `readings`; rakewright survey --blank prints a sheet to take one with.",
    );
  }
  if (args.flag("json")) {
    io.stdout.write(`${JSON.stringify({ ok, job, unit, flights, plan, diagnostics }, null, 2)}\n`);
  } else {
    io.stderr.write(diagnosticsText(diagnostics, wantsColour(io)));
    const style = { job, unit, denominator: DENOMINATOR, generator: generator() } as const;
    const papers = flights.map((own) => surveyText(own, style));
    io.stdout.write([...papers, ...(plan ? [planSurveyText(plan, style)] : [])].join("\n"));
  }
  return ok ? EXIT.ok : EXIT.design;
}

function blank(args: GivenArgs, io: CliIo): number {
  const [extra] = args.words;
  if (extra !== undefined)
    throw new UsageError(
      `survey: did not expect \`${extra}\` with --blank.`,
      "A blank sheet needs no design.",
    );
  args.required("risers", "--risers 13");
  const risers = args.number("risers", RISERS, 0);
  const unit = args.text("unit") ?? "mm";
  if (unit !== "in" && unit !== "mm")
    throw new UsageError(`--unit: expected in or mm, got \`${unit}\`.`, "The sheet is filled in with it.");
  const sheet = surveySheet(risers);
  const landing = args.flag("landing");
  io.stdout.write(
    args.flag("json")
      ? toFillIn(sheet, landing)
      : surveySheetText(sheet, { unit, landing, generator: generator() }),
  );
  return EXIT.ok;
}

/** The readings of a sheet as the design document takes them, one a line, their values open. */
function toFillIn(sheet: SurveySheet, landing: boolean): string {
  const block = (readings: readonly PlannedReading[]) => {
    const lines = readings.map((own) => `      ${JSON.stringify({ ...own, value: "" })}`);
    return `{\n    "readings": [\n${lines.join(",\n")}\n    ]\n  }`;
  };
  const plan = landing ? `,\n  "plan": ${block(landingSheet())}` : "";
  return `{\n  "survey": ${block(sheetReadings(sheet))}${plan}\n}\n`;
}
