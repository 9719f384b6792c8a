/**
 * The steps: counted, taped one by one, or surveyed.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS, LIMITS } from "../defaults.js";
import type { DesignInput, StepsInput } from "../design-input.js";
import { stairSurveySchema } from "./survey.js";
import { lengthSchema } from "./words.js";

const overhang = {
  overhang: lengthSchema
    .optional()
    .meta({ description: `Nosing past the riser face below it. Default ${DEFAULTS.overhang}.` }),
};

const counted = {
  risers: z
    .int()
    .min(2)
    .max(LIMITS.risers)
    .meta({ description: "Counted risers; the last one ends at the landing." }),
  floorToFloor: lengthSchema.meta({ description: "Plumb from finished floor to finished landing." }),
  going: lengthSchema.meta({ description: "Level from nosing to nosing." }),
  ...overhang,
};

const taped = {
  nosings: z
    .array(
      z.strictObject({
        run: lengthSchema.meta({ description: "Level from the lowest nosing; 0 for that one." }),
        height: lengthSchema.meta({ description: "Plumb from the lower finished floor." }),
      }),
    )
    .min(2)
    .max(LIMITS.risers)
    .meta({ description: "Every nosing from the lowest to the landing's edge." }),
  ...overhang,
};

const surveyed = { survey: stairSurveySchema, ...overhang };

const across = {
  width: lengthSchema.optional().meta({ description: "Edge to edge; needed for a guard on both sides." }),
  inset: lengthSchema.optional().meta({ description: "The stair's edge to the guard's middle plane." }),
};

const about = {
  title: "Stair",
  examples: [{ risers: 13, floorToFloor: "98 5/16", going: "10 5/8", overhang: "3/4" }],
};

/** Steps of a flight of its own. */
export const stepsSchema: z.ZodType<StepsInput, StepsInput> = z
  .union([z.strictObject(counted), z.strictObject(taped), z.strictObject(surveyed)])
  .meta({
    id: "Steps",
    ...about,
    description: "Equal, counted steps, nosings taped one by one, or a survey.",
  });

/** The stair. */
export const stairSchema: z.ZodType<DesignInput["stair"], DesignInput["stair"]> = z
  .union([
    z.strictObject({ ...counted, ...across }),
    z.strictObject({ ...taped, ...across }),
    z.strictObject({ ...surveyed, ...across }),
  ])
  .meta({
    id: "Stair",
    ...about,
    description: "A straight flight: equal, counted steps, taped nosings, or a survey.",
  });
