/**
 * A survey in plan, and what of a leg may be taken from it.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type { LengthInput } from "../design-input.js";
import type { PlanReadingInput, PlanSurveyInput, SurveyedLength, SurveyedTurn } from "../survey-input.js";
import { surveyTerms } from "./survey.js";
import { idSchema, lengthSchema } from "./words.js";

const length = {
  value: lengthSchema,
  sigma: lengthSchema
    .optional()
    .meta({ description: "Standard uncertainty. Default: the tape's and the hand's." }),
};
const corner = (what: string) => idSchema.meta({ description: what });
const ends = { from: corner("Name of a corner."), to: corner("Name of another.") };

/** A reading in plan. */
export const planReadingSchema: z.ZodType<PlanReadingInput, PlanReadingInput> = z
  .discriminatedUnion("kind", [
    z.strictObject({
      id: idSchema,
      kind: z.enum(["side", "diagonal"]).meta({ description: "By tape from corner to corner." }),
      ...ends,
      ...length,
    }),
    z.strictObject({
      id: idSchema,
      kind: z.literal("offset").meta({ description: "Square from a corner to the line of a wall." }),
      at: corner("The corner it is read from."),
      from: corner("A corner on the wall's line."),
      to: corner("Another corner on it."),
      ...length,
    }),
    z.strictObject({
      id: idSchema,
      kind: z.literal("corner").meta({ description: "The angle at a corner between two others." }),
      at: corner("Where the angle is."),
      ...ends,
      value: z.number().min(-180).max(360).meta({ description: "Degrees." }),
      sigma: z.number().optional().meta({ description: "Standard uncertainty, degrees. Default 0.25." }),
    }),
  ])
  .meta({
    id: "PlanReading",
    title: "Reading in plan",
    description: "What was read between named corners of floors and landings, level.",
    examples: [{ id: "A-B", kind: "side", from: "A", to: "B", value: "96 3/4" }],
  });

/** The survey in plan. */
export const planSurveySchema: z.ZodType<PlanSurveyInput, PlanSurveyInput> = z
  .strictObject({
    ...surveyTerms,
    readings: z.array(planReadingSchema).min(1).max(LIMITS.readings),
  })
  .meta({
    id: "PlanSurvey",
    title: "Survey in plan",
    description:
      "Sides, diagonals, corners and wall offsets of floors and landings; `length` and `turn` of a leg may be taken from it.",
  });

/** A length of the document, or one from the plan survey. */
export const lengthOrSurveySchema: z.ZodType<LengthInput | SurveyedLength, LengthInput | SurveyedLength> =
  z.union([
    lengthSchema,
    z
      .strictObject({
        survey: z.tuple([idSchema, idSchema]).meta({ description: "From one corner to another." }),
      })
      .meta({ description: "From the survey in plan." }),
  ]);

/** A turn in degrees, or one from the plan survey. */
export const turnOrSurveySchema: z.ZodType<number | SurveyedTurn, number | SurveyedTurn> = z.union([
  z.number().min(-LIMITS.turn).max(LIMITS.turn),
  z
    .strictObject({
      survey: z
        .tuple([idSchema, idSchema, idSchema])
        .meta({ description: "Corners in walking order; the guard turns at the second." }),
      to: z.enum(["left", "right"]).meta({ description: "Which way, as one walks up." }),
    })
    .meta({ description: "From the survey in plan." }),
]);
