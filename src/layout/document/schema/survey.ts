/**
 * A survey in a document: readings by name, and what they were taken with.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { SUSPECT_LIMIT } from "../../survey/survey-terms.js";
import { TAPE_CLASSES } from "../../tape.js";
import { LIMITS } from "../defaults.js";
import type { StairReadingInput, StairSurveyInput } from "../survey-input.js";
import { idSchema, lengthSchema } from "./words.js";

/** What every survey may say of itself. */
export const surveyTerms = {
  date: z
    .string()
    .min(1)
    .max(60)
    .optional()
    .meta({ description: "When it was taken, printed with everything that rests on it." }),
  tape: z.enum(TAPE_CLASSES).optional().meta({
    description: "Class of the tape, for readings without an uncertainty of their own. Default II.",
  }),
  limit: z
    .number()
    .min(1)
    .max(100)
    .optional()
    .meta({
      description: `Studentised residual above which a reading is suspect. Default ${SUSPECT_LIMIT}.`,
    }),
  without: z.array(idSchema).max(LIMITS.readings).optional().meta({
    description: "Readings that are not to count: to be taped again. The papers say so.",
  }),
};

const nosing = (least: number) => z.int().min(least).max(LIMITS.risers);

const place = {
  id: idSchema,
  from: nosing(0).optional().meta({
    description:
      "Nosing it runs from; 0 is the lower finished floor. Default 0 (`rise`, `height`) or 1 (`distance`).",
  }),
  to: nosing(1).meta({
    description: "Nosing it runs to; 1 is the lowest, the highest is the landing's edge.",
  }),
};

/** A reading on a stair. */
export const stairReadingSchema: z.ZodType<StairReadingInput, StairReadingInput> = z
  .discriminatedUnion("kind", [
    z.strictObject({
      ...place,
      kind: z.enum(["rise", "run", "height", "distance", "slope"]).meta({
        description:
          "`rise`, `height`: plumb, the second from the floor. `run`, `distance`: level, the second from nosing 1. `slope`: by tape from nosing to nosing.",
      }),
      value: lengthSchema,
      sigma: lengthSchema
        .optional()
        .meta({ description: "Standard uncertainty. Default: the tape's and the hand's." }),
    }),
    z.strictObject({
      ...place,
      kind: z.literal("level").meta({ description: "A straightedge over both nosings." }),
      value: z.number().min(-90).max(90).meta({ description: "Degrees from level." }),
      sigma: z.number().optional().meta({ description: "Standard uncertainty, degrees. Default 0.1." }),
    }),
  ])
  .meta({
    id: "StairReading",
    title: "Reading on a stair",
    description: "What was read between two nosings, or from the floor.",
    examples: [{ id: "R8", kind: "rise", from: 7, to: 8, value: "7 5/8" }],
  });

/** The survey of a flight. */
export const stairSurveySchema: z.ZodType<StairSurveyInput, StairSurveyInput> = z
  .strictObject({
    ...surveyTerms,
    fit: z.enum(["least-miss", "least-squares"]).optional().meta({
      description:
        "The line the rail follows: `least-miss` (default): its worst plumb miss is least; `least-squares`: the best estimate of the pitch.",
    }),
    readings: z.array(stairReadingSchema).min(1).max(LIMITS.readings),
  })
  .meta({
    id: "StairSurvey",
    title: "Survey of a flight",
    description:
      "Readings in any mix that tie every nosing to the lower finished floor; all together are adjusted, and what does not agree is named.",
  });
