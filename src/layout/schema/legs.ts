/**
 * The legs of a guard: on the floor before the stair, along the stair, on the landing.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS, LIMITS } from "../defaults.js";
import type { EndInput, LegInput } from "../design-input.js";
import { levelPostsSchema, stairPostsSchema } from "./posts.js";
import { idSchema, lengthSchema } from "./words.js";

const endSchema: z.ZodType<EndInput, EndInput> = z
  .discriminatedUnion("type", [
    z.strictObject({
      type: z.literal("wall"),
      endPlate: lengthSchema
        .optional()
        .meta({ description: `Thickness of the plate between rail and wall. Default ${DEFAULTS.endPlate}.` }),
    }),
    z.strictObject({
      type: z.literal("free"),
      overhang: lengthSchema.optional().meta({
        description: `Rail past the outer face of the last post. Default ${DEFAULTS.freeOverhang}: flush.`,
      }),
    }),
  ])
  .meta({
    id: "End",
    title: "End of a level leg",
    description:
      "`wall`: the rail ends an end plate short of `length`. `free`: past its last post. Default: free and flush.",
    examples: [{ type: "wall", endPlate: "3/8" }, { type: "free" }],
  });

const heights = {
  top: lengthSchema.meta({
    description: "Plumb to the TOP of the top rail: above the nosing line, the landing or the floor.",
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
};

const levelLeg = (along: "floor" | "landing", from: string) =>
  z
    .strictObject({
      along: z.literal(along),
      length: lengthSchema.optional().meta({
        description: `From the ${from} away from the stair. Needed at a wall, or where no post ends the leg.`,
      }),
      ...heights,
      posts: levelPostsSchema.optional(),
      end: endSchema.optional(),
    })
    .meta({ title: `Leg on the ${along}`, description: `Level; everything is measured from the ${from}.` });

const stairLeg = z
  .strictObject({ along: z.literal("stair"), ...heights, posts: stairPostsSchema.optional() })
  .meta({
    title: "Leg along the stair",
    description:
      "Follows the nosing line; where no level leg joins it, the top rail is cut plumb over the lowest or top nosing.",
  });

/** One leg. */
export const legSchema: z.ZodType<LegInput, LegInput> = z
  .discriminatedUnion("along", [
    levelLeg("floor", "lowest nosing"),
    stairLeg,
    levelLeg("landing", "top nosing"),
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
