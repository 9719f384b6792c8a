/**
 * `rakewright check`: lays out a design, solves its joints and prints what was found; writes nothing.
 *
 * @packageDocumentation
 */
import { hasErrors } from "../../kernel/diagnostic.js";
import type { Command } from "../command.js";
import { loadGuard } from "../guard.js";
import { EXIT } from "../io.js";
import { diagnosticsText, tally } from "../report.js";

/** The command. */
export const checkCommand: Command = {
  name: "check",
  summary: "print what is wrong or doubtful in a design",
  words: ["DESIGN"],
  options: {
    shop: { type: "string" },
    "as-set": { type: "string" },
    json: { type: "boolean" },
    quiet: { type: "boolean" },
  },
  help: `Usage: rakewright check DESIGN [--shop FILE] [--as-set FILE] [--json] [--quiet]

Lays out the design, solves its joints and makes each solid; prints the findings to standard output.
DESIGN is a file, or - for standard input.

  --shop FILE     the shop file: fit gap, saw limits (rakewright schema shop)
  --as-set FILE   what stands already, as measured (rakewright schema as-set)
  --json          findings as JSON: { "ok": true or false, "diagnostics": [...] }
  --quiet         print nothing when there is nothing to report

Exit code 0 without errors, 1 with errors in the design, 2 when it cannot be read.
`,
  run: async (args, io) => {
    const { diagnostics } = await loadGuard(args.words[0] ?? "-", io, {
      shop: args.text("shop"),
      asSet: args.text("as-set"),
      quiet: args.flag("quiet"),
    });
    const ok = !hasErrors(diagnostics);
    if (args.flag("json")) io.stdout.write(`${JSON.stringify({ ok, diagnostics }, null, 2)}\n`);
    else if (diagnostics.length > 0 || !args.flag("quiet")) {
      io.stdout.write(`${diagnosticsText(diagnostics, false)}${tally(diagnostics)}\n`);
    }
    return ok ? EXIT.ok : EXIT.design;
  },
};
