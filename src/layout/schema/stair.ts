/**
 * The stair as it is counted, and the plates its posts stand on.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS, LIMITS } from "../defaults.js";
import type { DesignInput } from "../design-input.js";
import { lengthSchema } from "./words.js";

/** Risers, floor to floor, going, overhang. */
export const stairSchema: z.ZodType<DesignInput["stair"], DesignInput["stair"]> = z
  .strictObject({
    risers: z
      .int()
      .min(2)
      .max(LIMITS.risers)
      .meta({ description: "Counted risers; the last one ends at the landing." }),
    floorToFloor: lengthSchema.meta({ description: "Plumb from finished floor to finished landing." }),
    going: lengthSchema.meta({ description: "Level from nosing to nosing." }),
    overhang: lengthSchema
      .optional()
      .meta({ description: `Nosing past the riser face below it. Default ${DEFAULTS.overhang}.` }),
  })
  .meta({
    id: "Stair",
    title: "Stair",
    description: "A straight stair of equal, counted steps.",
    examples: [{ risers: 13, floorToFloor: "98 5/16", going: "10 5/8", overhang: "3/4" }],
  });

/** Base plate. */
export const footSchema: z.ZodType<NonNullable<DesignInput["foot"]>, NonNullable<DesignInput["foot"]>> = z
  .strictObject({
    thickness: lengthSchema.optional().meta({
      description: `Of the plate. Default ${DEFAULTS.plateThickness}: the post stands on the tread.`,
    }),
    along: lengthSchema
      .optional()
      .meta({ description: "Plate size along the guard. Default: the post's own." }),
    across: lengthSchema
      .optional()
      .meta({ description: "Plate size across the guard. Default: the post's own." }),
  })
  .meta({
    id: "Foot",
    title: "Foot",
    description: "The base plate under every post, centred on it. A post is cut from the top of it.",
    examples: [{ thickness: "3/8", along: "4", across: "4" }],
  });
