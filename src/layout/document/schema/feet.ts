/**
 * What posts stand on, and the holes of plates.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS } from "../defaults.js";
import type { FootInput, HolesInput, SubstrateInput } from "../design-input.js";
import { lengthSchema } from "./words.js";

/** Four holes about the middle of a plate. */
export const holesSchema: z.ZodType<HolesInput, HolesInput> = z
  .strictObject({
    diameter: lengthSchema.meta({ description: "As drilled." }),
    along: lengthSchema.meta({
      description: "Centre to centre along the guard; plumb on a plate that stands.",
    }),
    across: lengthSchema.meta({
      description: "Centre to centre across the guard; level on a plate that stands.",
    }),
  })
  .meta({
    id: "Holes",
    title: "Holes",
    description: "Four round holes at the corners of a rectangle about the plate's centre.",
    examples: [{ diameter: "7/16", along: "2 3/4", across: "2 3/4" }],
  });

const substrateSchema: z.ZodType<SubstrateInput, SubstrateInput> = z
  .strictObject({
    name: z.string().min(1).max(80).meta({ description: "What it is, in words." }),
    thickness: lengthSchema.meta({ description: "Of solid material under or behind the plate." }),
    leastThickness: lengthSchema
      .optional()
      .meta({ description: "What the fastener asks for, from its own data." }),
    leastEdge: lengthSchema
      .optional()
      .meta({ description: "Hole centre to the nearest edge, from the fastener's own data." }),
  })
  .meta({
    id: "Substrate",
    title: "Substrate",
    description: "What the foot is fixed to. Sizes are compared; nothing here says whether an anchor holds.",
    examples: [{ name: "oak tread", thickness: "1 1/2", leastEdge: "1 1/4" }],
  });

const substrate = { substrate: substrateSchema.optional() };

/** A foot. */
export const footSchema: z.ZodType<FootInput, FootInput> = z
  .union([
    z
      .strictObject({
        type: z.literal("plate").optional().meta({ description: "The default." }),
        thickness: lengthSchema.optional().meta({
          description: `Of the plate. Default ${DEFAULTS.plateThickness}: the post stands on the tread.`,
        }),
        along: lengthSchema
          .optional()
          .meta({ description: "Plate size along the guard. Default: the post's own." }),
        across: lengthSchema
          .optional()
          .meta({ description: "Plate size across the guard. Default: the post's own." }),
        cornerRadius: lengthSchema
          .optional()
          .meta({ description: `Of the plate's corners. Default ${DEFAULTS.plateCornerRadius}.` }),
        holes: holesSchema.optional(),
        ...substrate,
      })
      .meta({ title: "Base plate", description: "Centred under the post, which is cut to the top of it." }),
    z
      .strictObject({ type: z.literal("bare"), ...substrate })
      .meta({ title: "Bare foot", description: "Square cut, to be welded to what it stands on." }),
    z
      .strictObject({
        type: z.literal("side"),
        below: lengthSchema.meta({
          description: "How far the post goes below the line the heights are measured from, plumb.",
        }),
        plate: z
          .strictObject({
            thickness: lengthSchema,
            along: lengthSchema.meta({ description: "Size along the guard." }),
            height: lengthSchema.meta({ description: "Size plumb." }),
            centre: lengthSchema.meta({ description: "Its centre below the same line, plumb." }),
            holes: holesSchema.optional(),
          })
          .meta({ description: "Between the post and the face." }),
        packer: lengthSchema
          .optional()
          .meta({ description: `Between the plate and the face. Default ${DEFAULTS.packer}: none.` }),
        ...substrate,
      })
      .meta({
        title: "On the side of a stringer or beam",
        description: "The post stands beside the face, a plate between; it is not cut to a tread.",
      }),
  ])
  .meta({
    id: "Foot",
    title: "Foot",
    description: "What a post stands on: a base plate, nothing, or a plate on a side face.",
    examples: [{ thickness: "3/8", along: "4", across: "4" }, { type: "bare" }],
  });
