/**
 * Handrails beside the guard or on a wall, their ends and brackets; toe boards.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type {
  BracketsInput,
  GraspableInput,
  HandrailEndInput,
  HandrailInput,
  ToeBoardInput,
} from "../handrail-input.js";
import { flangeFields, flangeSchema } from "./ends.js";
import { idSchema, lengthSchema } from "./words.js";

const sideSchema = z.enum(["outside", "inside"]);

const endSchema: z.ZodType<HandrailEndInput, HandrailEndInput> = z
  .strictObject({
    extend: lengthSchema.optional().meta({
      description:
        "Level part, in plan: past the top nosing, or below the sloped part at the foot; on a level leg, past the leg's far end (- short of it; without a length, past its outermost post). Default 0.",
    }),
    slope: lengthSchema.optional().meta({
      description:
        "`bottom` of a flight: how far it goes on at the flight's slope past the lowest nosing, in plan. Default: one going.",
    }),
    return: z.enum(["wall", "post", "ground"]).optional().meta({
      description:
        "Turned level to a wall, turned level into the next post at or past the end, or turned plumb down to the ground.",
    }),
    distance: lengthSchema
      .optional()
      .meta({ description: "`wall`: from the handrail's centre to the wall's face; needed there." }),
    towards: sideSchema
      .optional()
      .meta({ description: "`wall`: past the guard's plane (`outside`, default) or away from it." }),
    endPlate: lengthSchema
      .optional()
      .meta({ description: "Thickness of the plate at the wall or on the ground. Default 0: none." }),
    plate: flangeSchema.optional(),
  })
  .meta({
    id: "HandrailEnd",
    title: "End of a handrail",
    description: "How far a handrail goes on past its legs and how it is turned away.",
    examples: [{ extend: "12", return: "post" }],
  });

const bracketsSchema: z.ZodType<BracketsInput, BracketsInput> = z
  .strictObject({
    from: z.enum(["posts", "wall"]).meta({ description: "One at each post of its legs, or from a wall." }),
    section: idSchema.meta({ description: "Name of a round section: arm and stem." }),
    drop: lengthSchema.meta({
      description: "Plumb from the handrail's underside to the centreline of the level arm.",
    }),
    wall: lengthSchema
      .optional()
      .meta({ description: "`wall`: from the handrail's centre to the wall's face; needed there." }),
    side: sideSchema.optional().meta({
      description:
        "`wall`: on the handrail's side towards the guard's plane (`outside`, default) or beyond it (`inside`).",
    }),
    greatest: lengthSchema
      .optional()
      .meta({ description: "`wall`: greatest space between two, in plan; needed there." }),
    ends: lengthSchema.optional().meta({
      description:
        "`wall`: from an end of the handrail or a plan corner to the first bracket, in plan; needed there.",
    }),
    flange: z
      .strictObject({ thickness: lengthSchema.meta({ description: "Of the plate." }), ...flangeFields })
      .optional()
      .meta({ description: "`wall`: plate on the wall. Default: none, the arm is cut square at the wall." }),
  })
  .meta({
    id: "Brackets",
    title: "Brackets",
    description: "A level arm under the handrail, mitred to a plumb stem that is shaped to its underside.",
    examples: [{ from: "posts", section: "arm", drop: "3" }],
  });

const graspableSchema: z.ZodType<GraspableInput, GraspableInput> = z
  .strictObject({
    perimeterFrom: lengthSchema.optional().meta({ description: "Least perimeter of the section." }),
    perimeterTo: lengthSchema.optional().meta({ description: "Greatest perimeter." }),
    greatest: lengthSchema
      .optional()
      .meta({ description: "Greatest size of the section, corner to corner." }),
    source: z.string().min(1).max(200).meta({ description: "Where these figures come from." }),
  })
  .meta({
    id: "Graspable",
    title: "Graspable section",
    description: "Figures to print beside the section's own. Nothing is decided from them.",
  });

/** A handrail. */
export const handrailSchema: z.ZodType<HandrailInput, HandrailInput> = z
  .strictObject({
    id: idSchema.optional().meta({ description: "Default: `handrail`, later ones `handrail-2`…" }),
    section: idSchema.meta({ description: "Name of a section." }),
    height: lengthSchema.meta({
      description: "Plumb to its TOP: above the nosing line, the landing or the floor.",
    }),
    inward: lengthSchema.meta({
      description: "From the guard's middle plane to its centre, towards the walking side.",
    }),
    legs: z
      .array(idSchema)
      .min(1)
      .max(LIMITS.legs)
      .optional()
      .meta({ description: "Legs it follows, one after another. Default: all." }),
    bottom: endSchema.optional(),
    top: endSchema.optional(),
    brackets: bracketsSchema.optional(),
    graspable: graspableSchema.optional(),
  })
  .meta({
    id: "Handrail",
    title: "Handrail",
    description:
      "A rail parallel to the guard, level where it turns in plan. Without an end of its own it is cut plumb over a flight's last nosing and at a level leg's far end.",
    examples: [{ section: "handrail", height: "36", inward: "4", legs: ["stair"], top: { extend: "12" } }],
  });

/** Toe boards. */
export const toeBoardSchema: z.ZodType<ToeBoardInput, ToeBoardInput> = z
  .strictObject({
    section: idSchema.meta({ description: "Name of a flat; it stands on its narrow side." }),
    gap: lengthSchema.meta({ description: "From the floor or landing to its underside." }),
    face: z.enum(["between", "inside"]).optional().meta({
      description:
        "`between` (default): cut to the posts, in the guard's plane. `inside`: in front of them, on the walking side.",
    }),
    legs: z
      .array(idSchema)
      .min(1)
      .max(LIMITS.legs)
      .optional()
      .meta({ description: "Level legs. Default: all of them." }),
  })
  .meta({
    id: "ToeBoard",
    title: "Toe board",
    description: "A flat along the floor, one a bay.",
    examples: [{ section: "toe", gap: "3/8" }],
  });
