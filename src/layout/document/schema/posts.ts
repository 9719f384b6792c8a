/**
 * Where the posts of a leg stand.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type {
  LevelPostsInput,
  SpacingInput,
  StairPostsInput,
  StationPostInput,
  TreadPostInput,
} from "../design-input.js";
import { footSchema } from "./feet.js";
import { idSchema, lengthSchema } from "./words.js";

const own = {
  id: idSchema.optional().meta({ description: "Pins the post's mark." }),
  section: idSchema.optional().meta({ description: "Name of a section, for this post only." }),
  foot: footSchema.optional(),
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

const spacingSchema: z.ZodType<SpacingInput, SpacingInput> = z
  .strictObject({
    from: lengthSchema.meta({ description: "Station of the first post." }),
    to: lengthSchema.meta({ description: "Station of the last post." }),
    greatest: lengthSchema.optional().meta({ description: "Greatest space, centre to centre. Or `spaces`." }),
    along: z
      .enum(["plan", "rake"])
      .optional()
      .meta({ description: "How `greatest` is measured. Default `plan`." }),
    spaces: z.int().min(1).max(LIMITS.posts).optional().meta({ description: "Number of equal spaces." }),
  })
  .meta({
    id: "Spacing",
    title: "Equal spaces",
    description: "Posts in equal spaces from the first station to the last, both included.",
    examples: [{ from: "3", to: "93 3/4", greatest: "36" }],
  });

const stations = {
  at: z.array(stationPostSchema).max(LIMITS.posts).optional(),
  spacing: spacingSchema.optional(),
};

/** Posts of a stair leg. */
export const stairPostsSchema: z.ZodType<StairPostsInput, StairPostsInput> = z
  .strictObject({
    onTreads: z.array(treadPostSchema).max(LIMITS.posts).optional(),
    behindNosing: lengthSchema.optional().meta({
      description: "Level from the tread's nosing uphill to the post's centre. Needed with `onTreads`.",
    }),
    ...stations,
  })
  .meta({
    id: "StairPosts",
    title: "Posts on a flight",
    description:
      "Equal places behind the nosing make equal posts. Stations are in plan from the lowest nosing.",
    examples: [{ onTreads: [1, 4, 7, 10], behindNosing: "3" }],
  });

/** Posts of a level leg. */
export const levelPostsSchema: z.ZodType<LevelPostsInput, LevelPostsInput> = z.strictObject(stations).meta({
  id: "LevelPosts",
  title: "Posts at stations",
  description:
    "Measured from where the leg starts; on a floor before the stair, back from the lowest nosing.",
  examples: [{ at: ["3", "33 1/4"] }],
});
