/**
 * The shop file's schema, for checking a document and for editors.
 *
 * Every field may be left out; its default is in its description and in `DEFAULT_SHOP`.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { TAPE_CLASSES } from "../../tape.js";
import { LIMITS } from "../defaults.js";
import { PAPER_SIZES } from "../paper.js";
import { DEFAULT_SHOP, FINISH_MM, type PassageTurnInput, type ShopInput } from "../shop.js";
import { lengthSchema } from "./words.js";

/** Most of each list, and the widest angle a saw may claim, degrees. */
export const SHOP_LIMITS = { stockLengths: 20, remnants: 500, saw: 85 } as const;

const D = DEFAULT_SHOP;

const sawAngle = (what: string, value: number) =>
  z
    .number()
    .min(0)
    .max(SHOP_LIMITS.saw)
    .optional()
    .meta({ description: `${what}, either way, degrees from a square cut. Default ${value}.` });

const sawSchema = z
  .strictObject({
    miter: sawAngle("How far the saw swings", D.saw.miter),
    bevel: sawAngle("How far the blade tilts", D.saw.bevel),
  })
  .meta({ id: "ShopSaw", title: "Saw", description: "Its limits.", examples: [{ miter: 45, bevel: 0 }] });

const remnantSchema = z
  .strictObject({
    section: z.string().min(1).max(120).meta({
      description:
        "Section in the trade's words, in the shop file's unit, or the name of a standard section.",
    }),
    length: lengthSchema.meta({ description: "Usable length." }),
  })
  .meta({
    id: "ShopRemnant",
    title: "Remnant",
    description: "A piece of stock left over.",
    examples: [{ section: "round 1.900 x 0.145", length: "61 1/2" }],
  });

const finishSchema = z
  .strictObject({
    kind: z
      .enum(["bare", "paint", "zinc", "powder"])
      .meta({ description: "What the steel is covered with." }),
    thickness: lengthSchema.optional().meta({
      description: `On each surface; what holes and slip fits allow for. Default ${FINISH_MM.paint} mm paint, ${FINISH_MM.zinc} mm zinc, ${FINISH_MM.powder} mm powder, 0 bare.`,
    }),
  })
  .meta({
    id: "ShopFinish",
    title: "Finish",
    description: "Default: bare.",
    examples: [{ kind: "zinc", thickness: "0.1 mm" }],
  });

const seamSchema = z
  .strictObject({
    rails: z
      .enum(["top", "bottom", "left", "right", "any"])
      .optional()
      .meta({ description: "Of members that lie, seen looking uphill. Default any." }),
    posts: z
      .enum(["uphill", "downhill", "left", "right", "any"])
      .optional()
      .meta({ description: "Of members that stand, seen looking uphill. Default any." }),
  })
  .meta({
    id: "ShopSeam",
    title: "Seam",
    description: "The face that a welded tube's seam is turned to.",
    examples: [{ rails: "bottom", posts: "downhill" }],
  });

const turnSchema = (
  id: string,
  title: string,
  description: string,
): z.ZodType<PassageTurnInput, PassageTurnInput> =>
  z
    .strictObject({
      from: lengthSchema.meta({ description: "Clear width before the corner." }),
      to: lengthSchema.meta({ description: "Clear width after it." }),
      height: lengthSchema
        .optional()
        .meta({ description: "Clear height at the corner. Absent: everything is carried level." }),
    })
    .meta({ id, title, description, examples: [{ from: "36", to: "42", height: "96" }] });

const accessSchema = z
  .strictObject({
    door: z
      .strictObject({
        width: lengthSchema.meta({ description: "Clear width." }),
        height: lengthSchema.meta({ description: "Clear height." }),
      })
      .optional()
      .meta({ description: "The narrowest door on the way." }),
    corridor: turnSchema("ShopCorridor", "Corridor", "A square corner between two corridors.").optional(),
    stair: turnSchema("ShopStairTurn", "Stair turn", "The landing where the way up turns square.").optional(),
    longest: lengthSchema.optional().meta({ description: "The longest piece that was found to get up." }),
  })
  .meta({
    id: "ShopAccess",
    title: "Access",
    description: "The way into the building. What is absent is not asked about.",
    examples: [{ door: { width: "32", height: "80" } }],
  });

const chuckSchema = z
  .strictObject({
    diameter: lengthSchema
      .optional()
      .meta({ description: `Of the chuck. Default ${D.drillChuck.diameter} mm.` }),
    clearance: lengthSchema
      .optional()
      .meta({ description: `From the chuck to a riser or a wall. Default ${D.drillChuck.clearance} mm.` }),
  })
  .meta({
    id: "ShopDrillChuck",
    title: "Drill chuck",
    description: "What has to stand beside a riser when a foot's holes are drilled in place.",
    examples: [{ diameter: "1 3/4", clearance: "1/4" }],
  });

const stopSchema = z
  .strictObject({
    width: lengthSchema
      .optional()
      .meta({ description: "Along the guard. Default: the post's own depth there." }),
  })
  .meta({
    id: "ShopStop",
    title: "Stop",
    description: "The flat block clamped to the side of a post, centred on it, that a rail is laid on.",
    examples: [{ width: "1 1/2" }],
  });

/**
 * The shape of a shop file: strict objects, so that a misspelt key is an error.
 *
 * @example
 * ```ts
 * shopSchema.safeParse({ unit: "in", kerf: "1/8" }).success; // true
 * ```
 */
export const shopSchema: z.ZodType<ShopInput, ShopInput> = z
  .strictObject({
    $schema: z
      .string()
      .max(500)
      .optional()
      .meta({ description: "Lets an editor complete and check the file." }),
    version: z.literal(1).optional().meta({ description: "Of this document's form. Default 1." }),
    name: z.string().min(1).max(200).optional().meta({ description: "Printed on the papers." }),
    unit: z
      .enum(["in", "mm"])
      .optional()
      .meta({ description: `Of every bare number here. Default ${D.unit}.` }),
    kerf: lengthSchema.optional().meta({ description: `What one cut takes away. Default ${D.kerf} mm.` }),
    fitGap: lengthSchema
      .optional()
      .meta({ description: `Root gap of a design that has no \`gap\` of its own. Default ${D.fitGap}.` }),
    saw: sawSchema.optional(),
    drillStep: lengthSchema
      .optional()
      .meta({ description: `Drills come in multiples of this. Default ${D.drillStep} mm.` }),
    stockLengths: z
      .array(lengthSchema)
      .min(1)
      .max(SHOP_LIMITS.stockLengths)
      .optional()
      .meta({ description: `Lengths that stock is bought in. Default ${D.stockLengths.join(", ")} mm.` }),
    remnants: z.array(remnantSchema).max(SHOP_LIMITS.remnants).optional(),
    tape: z
      .enum(TAPE_CLASSES)
      .optional()
      .meta({ description: `Class of the tape (2014/32/EU, MI-008). Default ${D.tape}.` }),
    paper: z
      .enum(PAPER_SIZES)
      .optional()
      .meta({ description: `Sheet that is printed on. Default ${D.paper}.` }),
    finish: finishSchema.optional(),
    slipFit: lengthSchema
      .optional()
      .meta({ description: `Diametral clearance of an inner sleeve. Default ${D.slipFit} mm.` }),
    seam: seamSchema.optional(),
    access: accessSchema.optional(),
    stop: stopSchema.optional(),
    mostSag: lengthSchema.optional().meta({
      description: `A rail that sags more than this as it lies is propped before it is scribed. Default ${D.mostSag} mm.`,
    }),
    drillChuck: chuckSchema.optional(),
  })
  .meta({
    title: "Rakewright shop",
    description: `What one shop saws, drills, measures and carries with, for every job. Lengths are numbers in \`unit\` or tape language, up to ${LIMITS.length} mm. Every field may be left out.`,
  });

/**
 * The JSON Schema of a shop file, draft 2020-12, of what a person writes.
 *
 * @example
 * ```ts
 * shopJsonSchema()["$schema"]; // "https://json-schema.org/draft/2020-12/schema"
 * ```
 */
export function shopJsonSchema(): Record<string, unknown> {
  const made: Record<string, unknown> = {
    ...z.toJSONSchema(shopSchema, { io: "input", target: "draft-2020-12" }),
  };
  return made;
}
