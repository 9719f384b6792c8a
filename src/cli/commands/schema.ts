/**
 * `rakewright schema`: prints the JSON Schema of a document.
 *
 * @packageDocumentation
 */
import { designJsonSchema, shopJsonSchema } from "../../layout/index.js";
import type { Command } from "../command.js";
import { EXIT, UsageError } from "../io.js";

/** The schemas by the word that asks for them. */
const SCHEMAS: Readonly<Record<string, () => Record<string, unknown>>> = {
  design: designJsonSchema,
  shop: shopJsonSchema,
};

/** The command. */
export const schemaCommand: Command = {
  name: "schema",
  summary: "print the JSON Schema of the design document or the shop file",
  words: [],
  optionalWords: ["DOCUMENT"],
  options: {},
  help: `Usage: rakewright schema [design|shop]

Prints the JSON Schema (draft 2020-12) of the design document, or of the shop file, for editors that
complete and check while you type. Rules that span several fields are not in it; \`rakewright check\`
knows them all.
`,
  run: async (args, io) => {
    const [word = "design"] = args.words;
    const schema = Object.hasOwn(SCHEMAS, word) ? SCHEMAS[word] : undefined;
    if (!schema) {
      const names = Object.keys(SCHEMAS).join(" or ");
      throw new UsageError(`schema: expected ${names}, got \`${word}\`.`, "Without a word it is the design.");
    }
    io.stdout.write(`${JSON.stringify(schema(), null, 2)}\n`);
    return EXIT.ok;
  },
};
