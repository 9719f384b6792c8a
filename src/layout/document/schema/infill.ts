/**
 * What fills the space between the rails.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS, LIMITS } from "../defaults.js";
import type { InfillInput } from "../infill-input.js";
import { idSchema, lengthSchema } from "./words.js";

const common = {
  rows: z.enum(["lowest", "all"]).optional().meta({
    description: "Between the `lowest` two rails of each bay (default), or between `all` neighbouring rails.",
  }),
};

const section = idSchema.meta({ description: "Name of a section." });

/** Infill. */
export const infillSchema: z.ZodType<InfillInput, InfillInput> = z
  .discriminatedUnion("type", [
    z
      .strictObject({
        type: z.literal("bars"),
        section,
        clear: lengthSchema.meta({
          description: "Greatest clear space between bars, and between a bar and a post, level.",
        }),
        ...common,
      })
      .meta({ title: "Plumb bars", description: "The fewest, in equal spaces, shaped to both rails." }),
    z
      .strictObject({
        type: z.literal("rails"),
        section,
        count: z
          .int()
          .min(1)
          .max(LIMITS.infill)
          .optional()
          .meta({ description: "Number of bars. Or `clear`." }),
        clear: lengthSchema.optional().meta({ description: "Greatest clear space, square to the bars." }),
        through: z.boolean().optional().meta({
          description:
            "Round bars through drilled posts, one for as many bays as are in line. Default false: one piece a bay, cut to the posts.",
        }),
        clearance: lengthSchema
          .optional()
          .meta({ description: `Of the holes, all round. Default ${DEFAULTS.throughClearance} mm.` }),
        past: lengthSchema.optional().meta({
          description:
            "Level past the far faces of the guard's first and last post; needed with `through`. Elsewhere a bar that goes no farther is cut to its post.",
        }),
        ...common,
      })
      .meta({ title: "Bars along the rails", description: "Parallel to the rails, in equal clear spaces." }),
    z
      .strictObject({
        type: z.literal("panel"),
        thickness: lengthSchema,
        clear: lengthSchema.meta({ description: "Left free all round, to posts and rails." }),
        holes: z
          .strictObject({
            diameter: lengthSchema,
            edge: lengthSchema.meta({ description: "From both edges to the centre." }),
          })
          .optional()
          .meta({ description: "A round hole in each corner at a post." }),
        ...common,
      })
      .meta({ title: "Panels", description: "A sheet a bay, in the guard's plane." }),
  ])
  .meta({
    id: "Infill",
    title: "Infill",
    description:
      "What fills each bay between its rails. A bay takes the infill of the leg its lower post stands on. Spaces are the document's own; nothing here says whether they are allowed.",
    examples: [
      { type: "bars", section: "bar", clear: "3 7/8" },
      { type: "panel", thickness: "1/8", clear: "1/2" },
    ],
  });

/** Infill of one leg, instead of the design's. */
export const legInfillSchema: z.ZodType<InfillInput | "none", InfillInput | "none"> = z
  .union([z.literal("none"), infillSchema], { error: 'expected "none" or an object with `type`' })
  .meta({ description: "Instead of the design's; `none` leaves this leg's bays open." });
