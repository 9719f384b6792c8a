/**
 * How the guard's ends are finished, how its rail breaks, how it turns in plan.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { DEFAULTS } from "../defaults.js";
import type { BreakInputWord, EndInput, FlangeInput, LegBreakInput, TurnInput } from "../design-input.js";
import { footSchema, holesSchema } from "./feet.js";
import { turnOrSurveySchema } from "./plan-survey.js";
import { idSchema, lengthSchema } from "./words.js";

/** Size and holes of a plate at a rail's end. */
export const flangeFields = {
  width: lengthSchema.optional().meta({ description: "Across the guard. Default: the rail's own." }),
  height: lengthSchema
    .optional()
    .meta({ description: "Plumb; along the guard where it lies flat. Default: the rail's own." }),
  cornerRadius: lengthSchema
    .optional()
    .meta({ description: `Of its corners. Default ${DEFAULTS.plateCornerRadius}.` }),
  holes: holesSchema.optional(),
};

/** A plate that ends a rail. */
export const flangeSchema: z.ZodType<FlangeInput, FlangeInput> = z
  .strictObject(flangeFields)
  .meta({ id: "Flange", title: "End plate", description: "Size and holes of a plate that ends a rail." });

/** An end of the guard. */
export const endSchema: z.ZodType<EndInput, EndInput> = z
  .discriminatedUnion("type", [
    z.strictObject({
      type: z.literal("wall"),
      endPlate: lengthSchema
        .optional()
        .meta({ description: `Thickness of the plate between rail and wall. Default ${DEFAULTS.endPlate}.` }),
      plate: flangeSchema.optional(),
    }),
    z.strictObject({
      type: z.literal("free"),
      overhang: lengthSchema.optional().meta({
        description: `Rail past the outer face of the last post. Default ${DEFAULTS.freeOverhang}: flush.`,
      }),
      cap: lengthSchema
        .optional()
        .meta({ description: `Thickness of a plate that closes the tube. Default ${DEFAULTS.cap}: none.` }),
    }),
    z.strictObject({
      type: z.literal("return"),
      to: z.enum(["post", "ground"]).meta({ description: "Back to the last post, or down to the ground." }),
      overhang: lengthSchema.meta({
        description: "From the outer face of the last post to the plumb piece's centreline.",
      }),
      down: lengthSchema
        .optional()
        .meta({ description: "Plumb between the centrelines of rail and return; needed with `post`." }),
      endPlate: lengthSchema
        .optional()
        .meta({ description: `Thickness of a flange on the ground. Default ${DEFAULTS.endPlate}: none.` }),
      plate: flangeSchema.optional(),
    }),
  ])
  .meta({
    id: "End",
    title: "End of the guard",
    description:
      "`wall`: the rail ends an end plate short of the leg's end. `free`: past its last post. `return`: turned down and back. Default of a level leg: free and flush; of a stair: plumb over its last nosing.",
    examples: [{ type: "wall", endPlate: "3/8" }, { type: "free" }],
  });

const breakWord: z.ZodType<BreakInputWord, BreakInputWord> = z
  .enum(["meet", "drop", "compromise", "riser"])
  .meta({ description: "How the rail gets from one slope to the next." });

/** A break. */
export const breakSchema: z.ZodType<LegBreakInput, LegBreakInput> = z
  .union(
    [
      breakWord,
      z.strictObject({
        type: breakWord,
        at: lengthSchema.optional().meta({
          description:
            "`drop`: where the plumb leg stands, from where equal heights would break, + uphill. Default 0.",
        }),
      }),
    ],
    { error: 'expected "meet", "drop", "compromise" or "riser", or an object with `type`' },
  )
  .meta({
    id: "Break",
    title: "Break",
    description:
      "How the top rail gets from the leg before to this one. `meet` (default): the two lines meet. `drop`: a plumb leg holds the break in place. `compromise`: the raking rail is laid straight between the two heights. `riser`: the level rail's height puts the break over the riser face.",
    examples: ["meet", { type: "drop", at: 0 }],
  });

/** A plan turn. */
export const turnSchema: z.ZodType<TurnInput, TurnInput> = z
  .strictObject({
    angle: turnOrSurveySchema.meta({ description: "Degrees in plan, + to the left as one walks up." }),
    corner: z.enum(["post", "level", "round", "twist"]).optional().meta({
      description:
        "`post` (default): a corner post, both rails cut to it. `level`: the rail turns level before it turns in plan. `round`: round rails mitred directly. `twist`: square rails mitred directly, each rolled by half the twist.",
    }),
    past: lengthSchema
      .optional()
      .meta({ description: "From the top nosing below to the corner, along the guard. Default 0." }),
    before: lengthSchema
      .optional()
      .meta({ description: "From the corner to the lowest nosing above, along the guard. Default 0." }),
    above: lengthSchema
      .optional()
      .meta({ description: `Corner post above the higher rail. Default ${DEFAULTS.cornerAbove}: flush.` }),
    cap: lengthSchema.optional().meta({
      description: `Thickness of a plate that closes its top, within \`above\`. Default ${DEFAULTS.cap}.`,
    }),
    id: idSchema.optional().meta({ description: "Pins the corner post's mark." }),
    section: idSchema.optional().meta({ description: "Of the corner post." }),
    foot: footSchema.optional(),
  })
  .meta({
    id: "Turn",
    title: "Plan turn",
    description: "Where the guard turns in plan before this leg, and how the corner is made.",
    examples: [{ angle: 90, past: "3", corner: "post" }],
  });
