/**
 * Sections by name, the rails made of them, and the posts' sections.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type { DesignInput, RailInput, SpliceInput } from "../design-input.js";
import { idSchema, lengthSchema } from "./words.js";

type EndPosts = NonNullable<DesignInput["endPosts"]>;

/** Name → size in words. */
export const sectionsSchema: z.ZodType<DesignInput["sections"], DesignInput["sections"]> = z
  .record(idSchema, z.string().min(1).max(120))
  .refine((all) => Object.keys(all).length <= LIMITS.sections, {
    error: `expected at most ${LIMITS.sections} sections`,
  })
  .meta({
    id: "Sections",
    title: "Sections",
    description: "Section sizes in the trade's words, in the document's unit, under names of your own.",
    maxProperties: LIMITS.sections,
    examples: [{ rail: "round 1.900 x 0.145", post: "square 1-1/2 x 0.120" }],
  });

/** One rail. */
export const railSchema: z.ZodType<RailInput, RailInput> = z
  .strictObject({
    id: idSchema
      .optional()
      .meta({ description: "Default: `top`, `cap`, or `lower-1`, `lower-2`… in order." }),
    role: z.enum(["top", "cap", "lower"]).meta({
      description:
        "`top` runs over the posts, a `cap` lies on it all along; a `lower` rail dies into the posts, one piece a bay.",
    }),
    section: idSchema.meta({ description: "Name of a section." }),
  })
  .meta({
    id: "Rail",
    title: "Rail",
    description: "A rail of the guard; exactly one has the role `top`.",
    examples: [{ role: "top", section: "rail" }],
  });

/** The section of every post that has none of its own. */
export const postsSchema: z.ZodType<DesignInput["posts"], DesignInput["posts"]> = z
  .strictObject({ section: idSchema.meta({ description: "Name of a section." }) })
  .meta({
    id: "Posts",
    title: "Posts",
    description: "What every post is made of unless it says otherwise.",
    examples: [{ section: "post" }],
  });

/** Heavier posts by mark. */
export const endPostsSchema: z.ZodType<EndPosts, EndPosts> = z
  .strictObject({
    section: idSchema.meta({ description: "Name of a section." }),
    marks: z
      .array(idSchema)
      .min(1)
      .max(LIMITS.posts)
      .meta({ description: "Marks of the posts it replaces the section of." }),
  })
  .meta({
    id: "EndPosts",
    title: "End posts",
    description: "Posts of another section, by mark: ends and breaks, where cables pull.",
    examples: [{ section: "endPost", marks: ["P1", "P5", "P8"] }],
  });

/** A splice of the top rail. */
export const spliceSchema: z.ZodType<SpliceInput, SpliceInput> = z
  .strictObject({
    leg: idSchema.meta({ description: "Id of the leg, e.g. `stair`." }),
    at: lengthSchema.meta({ description: "From where the leg starts, in plan." }),
    sleeve: idSchema.meta({ description: "Name of the sleeve's section: it slides into the rail." }),
    reach: lengthSchema.meta({ description: "Of the sleeve into each piece." }),
  })
  .meta({
    id: "Splice",
    title: "Splice",
    description: "The top rail is cut square in two and joined over an inner sleeve: a field joint.",
    examples: [{ leg: "stair", at: "64", sleeve: "sleeve", reach: "3" }],
  });
