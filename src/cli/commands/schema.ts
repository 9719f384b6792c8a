/**
 * `rakewright schema`: prints the JSON Schema of a document.
 *
 * @packageDocumentation
 */
import { asSetJsonSchema, designJsonSchema, shopJsonSchema } from "../../layout/index.js";
import type { Command } from "../command.js";
import { EXIT, UsageError } from "../io.js";

/** The schemas by the word that asks for them. */
const SCHEMAS: Readonly<Record<string, () => Record<string, unknown>>> = {
  design: designJsonSchema,
  shop: shopJsonSchema,
  "as-set": asSetJsonSchema,
};

/** The command. */
export const schemaCommand: Command = {
  name: "schema",
  summary: "print the JSON Schema of the design document, the shop file or the as-set file",
  words: [],
  optionalWords: ["DOCUMENT"],
  options: {},
  help: `Usage: rakewright schema [design|shop|as-set]

Prints the JSON Schema (draft 2020-12) of the design document, of the shop file or of the as-set file,
for editors that complete and check while you type. Rules that span several fields are not in it;
\`rakewright check\` knows them all.
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
