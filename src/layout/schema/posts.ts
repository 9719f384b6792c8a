/**
 * Where the posts of a leg stand.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type { LevelPostsInput, StairPostsInput, StationPostInput, TreadPostInput } from "../design-input.js";
import { idSchema, lengthSchema } from "./words.js";

const own = {
  id: idSchema.optional().meta({ description: "Pins the post's mark." }),
  section: idSchema.optional().meta({ description: "Name of a section, for this post only." }),
};

const treadSchema = z.int().min(1).max(LIMITS.risers);

const treadPostSchema: z.ZodType<TreadPostInput, TreadPostInput> = z
  .union(
    [
      treadSchema,
      z.strictObject({
        tread: treadSchema.meta({ description: "1 is the lowest tread." }),
        behindNosing: lengthSchema.optional().meta({ description: "Default: the leg's." }),
        ...own,
      }),
    ],
    { error: "expected the number of a tread, or an object with `tread`" },
  )
  .meta({
    id: "TreadPost",
    title: "Post on a tread",
    description: "The tread's number (1 is the lowest), or an object with more.",
    examples: [4, { tread: 4, id: "P2" }],
  });

const stationPostSchema: z.ZodType<StationPostInput, StationPostInput> = z
  .union(
    [lengthSchema, z.strictObject({ at: lengthSchema.meta({ description: "Centre of the post." }), ...own })],
    { error: "expected a length, or an object with `at`" },
  )
  .meta({
    id: "StationPost",
    title: "Post at a station",
    description: "Distance of the post's centre from the start of the leg, or an object with more.",
    examples: ["33 1/4", { at: "93 3/4", id: "P8", section: "endPost" }],
  });

/** Posts of the stair leg. */
export const stairPostsSchema: z.ZodType<StairPostsInput, StairPostsInput> = z
  .strictObject({
    onTreads: z.array(treadPostSchema).max(LIMITS.posts),
    behindNosing: lengthSchema.meta({
      description: "Level from the tread's nosing uphill to the post's centre.",
    }),
  })
  .meta({
    id: "StairPosts",
    title: "Posts on treads",
    description: "Equal places behind the nosing make equal posts.",
    examples: [{ onTreads: [1, 4, 7, 10], behindNosing: "3" }],
  });

/** Posts of a level leg. */
export const levelPostsSchema: z.ZodType<LevelPostsInput, LevelPostsInput> = z
  .strictObject({ at: z.array(stationPostSchema).max(LIMITS.posts) })
  .meta({
    id: "LevelPosts",
    title: "Posts at stations",
    description:
      "Measured away from the stair: from the top nosing on a landing, from the lowest nosing on a floor.",
    examples: [{ at: ["3", "33 1/4"] }],
  });
