/**
 * The legs of a guard: on the floor before the stair, along flights, on landings.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type { LegInput } from "../design-input.js";
import { breakSchema, endSchema, turnSchema } from "./ends.js";
import { footSchema } from "./feet.js";
import { legInfillSchema } from "./infill.js";
import { lengthOrSurveySchema } from "./plan-survey.js";
import { levelPostsSchema, stairPostsSchema } from "./posts.js";
import { stepsSchema } from "./stair.js";
import { idSchema, lengthSchema } from "./words.js";

const common = {
  id: idSchema
    .optional()
    .meta({ description: "Default: `stair`, `landing` or `floor`; later ones of a kind `stair-2`…" }),
  top: lengthSchema.optional().meta({
    description:
      "Plumb to the TOP of the top rail: above the nosing line, the landing or the floor. Needed where there is a top rail.",
  }),
  undersides: z
    .record(idSchema, lengthSchema)
    .refine((all) => Object.keys(all).length <= LIMITS.rails, {
      error: `expected at most ${LIMITS.rails} undersides`,
    })
    .optional()
    .meta({
      description:
        "Plumb to the UNDERSIDE of each lower rail, by rail id. A rail not named is not on this leg.",
    }),
  break: breakSchema.optional(),
  turn: turnSchema.optional(),
  foot: footSchema.optional(),
  infill: legInfillSchema.optional(),
};

const ends = { start: endSchema.optional(), end: endSchema.optional() };

const levelLeg = (along: "floor" | "landing", from: string) =>
  z
    .strictObject({
      along: z.literal(along),
      length: lengthOrSurveySchema.optional().meta({
        description: `From ${from} to its far end. Needed where another leg follows, at a wall, or where no post ends the leg.`,
      }),
      slope: z
        .number()
        .min(-LIMITS.slope)
        .max(LIMITS.slope)
        .optional()
        .meta({ description: "Degrees, + rising as one walks up the guard. Default 0." }),
      ...common,
      posts: levelPostsSchema.optional(),
      ...ends,
    })
    .meta({ title: `Leg on the ${along}`, description: `Everything is measured from ${from}.` });

const stairLeg = z
  .strictObject({
    along: z.literal("stair"),
    stair: stepsSchema.optional(),
    heights: z.strictObject({ least: lengthSchema, most: lengthSchema }).optional().meta({
      description:
        "Limits, from whoever sets them, of the top rail's height over every nosing, plumb to its top. Default: none.",
    }),
    ...common,
    posts: stairPostsSchema.optional(),
    ...ends,
  })
  .meta({
    title: "Leg along a flight",
    description:
      "Follows the nosing line; where no level leg joins it, the top rail is cut plumb over the lowest or top nosing.",
  });

/** One leg. */
export const legSchema: z.ZodType<LegInput, LegInput> = z
  .discriminatedUnion("along", [
    levelLeg("floor", "the lowest nosing (or the corner before it)"),
    stairLeg,
    levelLeg("landing", "the nosing or corner where it starts"),
  ])
  .meta({
    id: "Leg",
    title: "Leg",
    description: "One straight run of the guard.",
    examples: [
      {
        along: "stair",
        top: "42",
        undersides: { low: "1/2" },
        posts: { onTreads: [1, 4], behindNosing: "3" },
      },
    ],
  });
