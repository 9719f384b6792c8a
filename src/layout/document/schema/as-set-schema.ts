/**
 * The as-set document's schema, for checking a document and for editors.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import {
  type AsSetInput,
  type AsSetLegInput,
  type AsSetPostInput,
  MADE_WORDS,
  type MadeInput,
} from "../../as-set/as-set-input.js";
import { TAPE_CLASSES } from "../../tape.js";
import { LIMITS } from "../defaults.js";
import { lengthSchema } from "./words.js";

/** Most of each list. */
const MOST = { posts: 2 * LIMITS.posts, legs: 100, made: 5000 } as const;

const markSchema = z
  .string()
  .min(1)
  .max(64)
  .meta({
    id: "AsSetMark",
    title: "Mark",
    description: "As on the papers; in a pair with its -L or -R.",
    examples: ["P1", "P3-L"],
  });

const postSchema: z.ZodType<AsSetPostInput, AsSetPostInput> = z
  .strictObject({
    post: markSchema,
    stage: z.enum(["dry-set", "set"]).optional().meta({
      description:
        "`dry-set`: stood up to be measured and taken down again; `set`: there to stay. Default dry-set.",
    }),
    x: lengthSchema.optional().meta({
      description:
        "Of its centre at its foot along the guard from the top nosing of the last flight, level, + over the landing.",
    }),
    behindNosing: lengthSchema
      .optional()
      .meta({ description: "The same from the nosing of its tread, in place of `x`." }),
    at: lengthSchema
      .optional()
      .meta({ description: "The same from the start of its leg, in place of `x`, as in the design." }),
    base: lengthSchema.optional().meta({
      description:
        "Height of the tread or floor under it over the top nosing of the last flight, - below; of a post on a stringer's side, of its lower end.",
    }),
    lean: z
      .number()
      .min(-90)
      .max(90)
      .optional()
      .meta({ description: "Degrees from plumb along the guard, + uphill. Default 0." }),
    leanAcross: z
      .number()
      .min(-90)
      .max(90)
      .optional()
      .meta({ description: "Degrees from plumb across it, + to its left, walking up. Default 0." }),
    across: lengthSchema.optional().meta({
      description: "Of its centre at its foot from the guard's middle plane, + to the left. Default 0.",
    }),
    sigma: lengthSchema.optional().meta({
      description:
        "Standard uncertainty of `x` and `base`. Default: of the tape over that length, with 1 mm for hook and eye.",
    }),
    sigmaLean: z
      .number()
      .min(0)
      .max(10)
      .optional()
      .meta({ description: "Standard uncertainty of the leans, degrees. Default 0.1." }),
  })
  .meta({
    id: "AsSetPost",
    title: "Post as set",
    description: "What was measured of one post. What is left out is as designed.",
    examples: [{ post: "P1", x: "-124 7/16", base: "-90 13/16", lean: 0.2 }],
  });

const legSchema: z.ZodType<AsSetLegInput, AsSetLegInput> = z
  .strictObject({
    leg: z.string().min(1).max(64).meta({
      description: "Id of a level leg; in a pair with -L or -R where only one guard's was measured.",
    }),
    length: lengthSchema.meta({ description: "From where the leg starts to its far end: a wall, a beam." }),
    sigma: lengthSchema
      .optional()
      .meta({ description: "Standard uncertainty. Default: of the tape, with 1 mm for hook and eye." }),
  })
  .meta({
    id: "AsSetLeg",
    title: "Leg as measured",
    description: "A level leg whose far end was measured.",
    examples: [{ leg: "landing", length: "96 5/8" }],
  });

const madeSchema: z.ZodType<MadeInput, MadeInput> = z
  .strictObject({
    piece: z.string().min(1).max(128).meta({ description: "Its mark, or its id." }),
    from: z
      .string()
      .min(1)
      .max(1000)
      .meta({ description: "The build it was made from: the folder, or the solved pieces' file in it." }),
    features: z
      .union([z.literal("all"), z.array(z.enum(MADE_WORDS)).min(1).max(MADE_WORDS.length)])
      .meta({ description: "What of it is made: ends by the words of the cut list, `holes`, or `all`." }),
    set: z.boolean().optional().meta({ description: "True where it is fixed in place. Default false." }),
  })
  .meta({
    id: "AsSetMade",
    title: "Made piece",
    description: "A piece of which something is cut or drilled already.",
    examples: [{ piece: "P1", from: "out/first", features: ["foot", "holes"] }],
  });

/**
 * The shape of an as-set document: strict objects, so that a misspelt key is an error.
 *
 * @example
 * ```ts
 * asSetSchema.safeParse({ version: 1, unit: "in", posts: [{ post: "P1", lean: 0.2 }] }).success; // true
 * ```
 */
export const asSetSchema: z.ZodType<AsSetInput, AsSetInput> = z
  .strictObject({
    $schema: z
      .string()
      .max(500)
      .optional()
      .meta({ description: "Lets an editor complete and check the file." }),
    version: z.literal(1).meta({ description: "Of this document's form." }),
    job: z
      .string()
      .max(200)
      .optional()
      .meta({ description: "The design's job: a document of another job is told." }),
    unit: z.enum(["in", "mm"]).meta({ description: "Of every bare number here." }),
    tape: z
      .enum(TAPE_CLASSES)
      .optional()
      .meta({ description: "Class of the tape (2014/32/EU, MI-008). Default II." }),
    posts: z.array(postSchema).max(MOST.posts).optional(),
    legs: z.array(legSchema).max(MOST.legs).optional(),
    made: z.array(madeSchema).max(MOST.made).optional(),
  })
  .meta({
    title: "Rakewright as-set",
    description: `What stands already, as it was measured: it overrides the design. Lengths are numbers in \`unit\` or tape language, up to ${LIMITS.length} mm.`,
  });

/**
 * The JSON Schema of an as-set document, draft 2020-12, of what a person writes.
 *
 * @example
 * ```ts
 * asSetJsonSchema()["$schema"]; // "https://json-schema.org/draft/2020-12/schema"
 * ```
 */
export function asSetJsonSchema(): Record<string, unknown> {
  const made: Record<string, unknown> = {
    ...z.toJSONSchema(asSetSchema, { io: "input", target: "draft-2020-12" }),
  };
  return made;
}
