/**
 * `rakewright build`: from a design to mesh files, piece records and a cut list in one folder, all or nothing.
 *
 * @packageDocumentation
 */
import { readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { CHORD_MM } from "../../kernel/tolerance.js";
import type { Command } from "../command.js";
import { loadGuard } from "../guard.js";
import { guardFiles, MODEL_FORMATS, type ModelFormat } from "../guard-files.js";
import { type CliIo, EXIT, UsageError } from "../io.js";
import { diagnosticsText, tally, wantsColour } from "../report.js";
import { type OutputFile, writeAll } from "../write-all.js";

/** The command. */
export const buildCommand: Command = {
  name: "build",
  summary: "make the models, piece records and cut list of a design",
  words: ["DESIGN"],
  options: {
    output: { type: "string", short: "o" },
    shop: { type: "string" },
    "as-set": { type: "string" },
    chord: { type: "string" },
    formats: { type: "string" },
    force: { type: "boolean" },
    json: { type: "boolean" },
    quiet: { type: "boolean" },
  },
  help: `Usage: rakewright build DESIGN -o DIR [--shop FILE] [--as-set FILE] [--chord MM]
                        [--formats stl,obj,step] [--force] [--json] [--quiet]

DESIGN is a file, or - for standard input. Writes into DIR:

  model.stl             the whole guard, binary STL, millimetres, Z up
  model.obj, model.mtl  the same with one named object per piece
  model.step            the exact solids, planes and cylinders, an assembly of named parts
  pieces/MARK.stl       each piece in its own frame: origin at its start, Z along it
  pieces.json           every length with its two points, cuts, volume, mass, where decisions came from
  solved.json           the solved pieces to the last bit: what \`rakewright changes\` reads back
  cutlist.txt           the paper for the shop, with what to buy

  -o, --output DIR      where to; made when it is not there
  --shop FILE           the shop file: fit gap, kerf, saw limits, stock, access (rakewright schema shop)
  --as-set FILE         what stands already, measured: overrides the design (rakewright schema as-set)
  --chord MM            how far a facet may stand off its curve, 0.001 to 10 (default ${CHORD_MM})
  --formats LIST        which model formats, out of ${MODEL_FORMATS.join(",")} (default all)
  --force               replace files that exist
  --json                print what was written and found as JSON to standard output
  --quiet               only errors on standard error

Either every file is written or none. Exit code 0 when written, 1 when the design has errors, 2 when
something cannot be read or written.
`,
  run: async (args, io) => {
    const folder = resolve(io.cwd, args.required("output", "-o out/my-stair"));
    const chord = args.number("chord", { least: 0.001, most: 10 }, CHORD_MM);
    const formats = readFormats(args.text("formats"));
    const quiet = args.flag("quiet");
    const loaded = await loadGuard(args.words[0] ?? "-", io, {
      shop: args.text("shop"),
      asSet: args.text("as-set"),
      quiet,
    });
    const made = loaded.guard && guardFiles(loaded.guard, { chord, formats });
    const diagnostics = [...loaded.diagnostics, ...(made?.diagnostics ?? [])];
    const files = made?.ok ? made.value : undefined;
    if (files) writeAll(folder, files, args.flag("force"));

    const shown = quiet ? diagnostics.filter((d) => d.severity === "error") : diagnostics;
    io.stderr.write(diagnosticsText(shown, wantsColour(io)));
    if (args.flag("json")) {
      const report = {
        ok: files !== undefined,
        folder,
        files: (files ?? []).map((f) => f.path),
        diagnostics,
      };
      io.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
    }
    if (!files) {
      io.stderr.write(`Nothing written: ${tally(diagnostics)}.\n`);
      return EXIT.design;
    }
    if (!quiet) io.stderr.write(`Wrote ${files.length} files to ${folder} (${tally(diagnostics)}).\n`);
    warnOfStrays(folder, files, io);
    return EXIT.ok;
  },
};

function readFormats(list: string | undefined): readonly ModelFormat[] {
  if (list === undefined) return MODEL_FORMATS;
  return list.split(",").map((word) => {
    const format = MODEL_FORMATS.find((f) => f === word.trim().toLowerCase());
    if (format) return format;
    throw new UsageError(
      `--formats: expected some of ${MODEL_FORMATS.join(",")}, got \`${list}\`.`,
      "Separate them by commas.",
    );
  });
}

/** A piece file of an earlier build beside the new ones would be cut by somebody one day. */
function warnOfStrays(folder: string, files: readonly OutputFile[], io: CliIo): void {
  const written = new Set(files.map((f) => f.path));
  if (!files.some((f) => f.path.startsWith("pieces/"))) return;
  const strays = readdirSync(join(folder, "pieces")).filter((name) => !written.has(`pieces/${name}`));
  if (strays.length === 0) return;
  io.stderr.write(
    `Left alone in ${join(folder, "pieces")}, not part of this build: ${strays.sort().join(", ")}.\n`,
  );
}
