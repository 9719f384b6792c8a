/**
 * The design document's schema, for checking a document and for editors.
 *
 * Rules between fields (names that must exist, order of legs, exactly one top rail) are checked by `parseDesign` and do
 * not appear in the JSON Schema.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS, LIMITS } from "../defaults.js";
import type { DesignInput } from "../design-input.js";
import { footSchema } from "./feet.js";
import { handrailSchema, toeBoardSchema } from "./handrails.js";
import { infillSchema } from "./infill.js";
import { legSchema } from "./legs.js";
import { planSurveySchema } from "./plan-survey.js";
import { endPostsSchema, postsSchema, railSchema, sectionsSchema, spliceSchema } from "./rails.js";
import { stairSchema } from "./stair.js";
import { lengthSchema } from "./words.js";

/**
 * The shape of a design document: strict objects, so that a misspelt key is an error.
 *
 * @example
 * ```ts
 * designSchema.safeParse(JSON.parse(text)).success;
 * ```
 */
export const designSchema: z.ZodType<DesignInput, DesignInput> = z
  .strictObject({
    $schema: z
      .string()
      .max(500)
      .optional()
      .meta({ description: "Lets an editor complete and check the file." }),
    version: z.literal(1).meta({ description: "Of this document's form." }),
    job: z
      .string()
      .min(1)
      .max(200)
      .meta({ description: "Printed on every paper.", examples: ["Studio, mezzanine stair"] }),
    unit: z.enum(["in", "mm"]).meta({ description: "Of every bare number, and of the papers." }),
    side: z.enum(["left", "right", "both"]).meta({
      description:
        "The open side, looking up the stair; `both`: this guard on the left and its mirror image on the right.",
    }),
    material: z
      .string()
      .min(1)
      .max(60)
      .optional()
      .meta({ description: `Name in the materials table. Default \`${DEFAULTS.material}\`.` }),
    gap: lengthSchema.optional().meta({ description: `Root gap of every cope. Default ${DEFAULTS.gap}.` }),
    stair: stairSchema,
    plan: planSurveySchema.optional(),
    sections: sectionsSchema,
    rails: z.array(railSchema).max(LIMITS.rails).meta({
      description: "One `top`, and what goes with it. Empty where `handrails` stand alone along a wall.",
    }),
    posts: postsSchema.optional(),
    endPosts: endPostsSchema.optional(),
    foot: footSchema.optional(),
    splices: z.array(spliceSchema).max(LIMITS.splices).optional(),
    fieldJoints: z
      .array(z.enum(["corners", "breaks"]))
      .max(2)
      .optional()
      .meta({
        description: "Where the guard comes apart for carrying, besides its splices. Default: nowhere.",
      }),
    handrails: z.array(handrailSchema).max(LIMITS.handrails).optional(),
    toeBoard: toeBoardSchema.optional(),
    infill: infillSchema.optional(),
    legs: z.array(legSchema).min(1).max(LIMITS.legs).meta({
      description: "In walking order upward: a floor (if any), flights and landings; a flight is needed.",
    }),
  })
  .meta({
    title: "Rakewright design",
    description:
      "A stair of straight flights and its guard. Lengths are numbers in `unit` or tape language. Rules between fields (names, order of legs, one top rail) are checked when the document is read and are not part of this schema.",
  });

/**
 * The JSON Schema of a design document, draft 2020-12, of what a person writes (defaults are optional).
 *
 * @example
 * ```ts
 * designJsonSchema()["$schema"]; // "https://json-schema.org/draft/2020-12/schema"
 * ```
 */
export function designJsonSchema(): Record<string, unknown> {
  const made: Record<string, unknown> = {
    ...z.toJSONSchema(designSchema, { io: "input", target: "draft-2020-12" }),
  };
  return made;
}
