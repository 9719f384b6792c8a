/**
 * The words every part of the document is made of: lengths, names, ids.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import { LIMITS } from "../defaults.js";
import type { LengthInput } from "../design-input.js";

const EXPECTED_LENGTH =
  'expected a length: a number in the document\'s unit or tape language such as "37 1/2" or "952 mm"';
const EXPECTED_ID =
  "expected a name of letters, digits, - and _ that starts with a letter, at most 32 characters";

/** A length; its text is read later, when the document's unit is known. */
export const lengthSchema: z.ZodType<LengthInput, LengthInput> = z
  .union([z.number().min(-LIMITS.length).max(LIMITS.length), z.string().min(1).max(80)], {
    error: EXPECTED_LENGTH,
  })
  .meta({
    id: "Length",
    title: "Length",
    description: "A number in the document's unit, or tape language that may name its own unit.",
    examples: ["37 1/2", "3' 1-1/2\"", "952 mm", 37.5],
  });

/** A name that also becomes a file name and a mark. */
export const idSchema: z.ZodType<string, string> = z
  .string({ error: EXPECTED_ID })
  .regex(/^[A-Za-z][A-Za-z0-9_-]{0,31}$/, { error: EXPECTED_ID })
  .meta({
    id: "Id",
    title: "Id",
    description: "Letters, digits, - and _, first a letter; at most 32.",
    examples: ["P1", "low"],
  });
