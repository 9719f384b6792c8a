/**
 * `rakewright schema`: prints the JSON Schema of the design document.
 *
 * @packageDocumentation
 */
import { designJsonSchema } from "../../layout/index.js";
import type { Command } from "../command.js";
import { EXIT } from "../io.js";

/** The command. */
export const schemaCommand: Command = {
  name: "schema",
  summary: "print the JSON Schema of the design document",
  words: [],
  options: {},
  help: `Usage: rakewright schema

Prints the JSON Schema (draft 2020-12) of the design document, for editors that complete and check
while you type. Rules that span several fields are not in it; \`rakewright check\` knows them all.
`,
  run: async (_args, io) => {
    io.stdout.write(`${JSON.stringify(designJsonSchema(), null, 2)}\n`);
    return EXIT.ok;
  },
};
