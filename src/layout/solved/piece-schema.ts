/**
 * The schema of a piece, as a file of solved pieces has it: every field by name, nothing besides.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import type { EndCut, MeasuredLength, Piece, PieceBore, SawSetting } from "../../joints/piece.js";
import type { EndExpression } from "../../kernel/end.js";
import { type SectionSchemas, sectionSchemas } from "./section-schema.js";

/** Makes the schema of a piece. */
export function pieceSchema(): z.ZodType<Piece> {
  const of = sectionSchemas();
  const n = z.number();
  const name = z.string().min(1);
  const end = endSchema(of);
  const length = lengthSchema(of);
  const cut = cutSchema(of);
  return z.strictObject({
    id: name,
    mark: name,
    kind: z.enum(["member", "plate", "bracket"]),
    role: z.enum(["top-rail", "rail", "post", "other"]),
    section: of.section,
    material: name,
    frame: of.frame,
    heading: n.exactOptional(),
    ends: z.tuple([end, end]),
    bores: z.array(boreSchema(of, length)),
    cuts: z.tuple([cut, cut]),
    lengths: z.strictObject({
      ...{ blank: length, longPoint: length, shortPoint: length, squareCut: length },
      ...{ top: length.exactOptional(), bottom: length.exactOptional(), axis: length.exactOptional() },
    }),
    shopPose: z.strictObject({ faceUp: z.string(), towards: of.vec3 }),
    hook: z.strictObject({ end: z.literal([0, 1]), name: z.string() }),
    dependsOn: z.array(z.string()),
    status: z.enum(["ok", "blocked"]),
    identity: z.string(),
    handOf: z.string().exactOptional(),
  });
}

function endSchema({ vec3, direction, frame, loop }: SectionSchemas): z.ZodType<EndExpression> {
  const source = z.strictObject({ joint: z.string(), onto: z.string() });
  const plane = z.strictObject({ kind: z.literal("plane"), point: vec3, normal: direction, source });
  const hit = z.strictObject({
    kind: z.literal("hit"),
    skin: z.strictObject({
      ...{ frame, loop, gap: z.number().nonnegative().exactOptional() },
      shoulder: z.enum(["refuse", "midline"]).exactOptional(),
    }),
    source,
  });
  // Ends nest: each looks its parts up when it is asked.
  const end: z.ZodType<EndExpression> = z.lazy(() =>
    z.discriminatedUnion("kind", [
      plane,
      hit,
      z.strictObject({ kind: z.literal("min"), of: z.array(end).min(1) }),
      z.strictObject({ kind: z.literal("max"), of: z.array(end).min(1) }),
      z.strictObject({
        kind: z.literal("select"),
        plane: z.strictObject({ point: vec3, normal: direction }),
        of: z.tuple([end, end]),
      }),
    ]),
  );
  return end;
}

function lengthSchema({ vec3 }: SectionSchemas): z.ZodType<MeasuredLength> {
  const point = z.strictObject({ name: z.string(), point: vec3 });
  return z.strictObject({ value: z.number(), from: point, to: point });
}

function cutSchema({ vec3 }: SectionSchemas): z.ZodType<EndCut> {
  const n = z.number();
  const saw: z.ZodType<SawSetting> = z.strictObject({
    ...{ miter: n, bevel: n, fromSquare: n, fromLength: n, clock: n },
  });
  return z.strictObject({
    end: z.literal([0, 1]),
    kind: z.enum(["square", "plane", "miter", "cope"]),
    joint: z.string(),
    onto: z.array(z.string()),
    saw: saw.exactOptional(),
    flatPart: saw.exactOptional(),
    arris: z.array(z.strictObject({ name: z.string(), offset: n })),
    cope: z.array(z.strictObject({ onto: z.string(), angle: n, offset: n, gap: n, toe: vec3 })),
    dihedral: z.strictObject({ least: n, greatest: n }).exactOptional(),
    fit: z.strictObject({ step: n, gap: n }),
  });
}

function boreSchema(
  { vec3, direction }: SectionSchemas,
  length: z.ZodType<MeasuredLength>,
): z.ZodType<PieceBore> {
  const n = z.number();
  const towards = z.strictObject({ value: n, towards: z.string() });
  const mark = z.strictObject({
    ...{ side: z.string(), face: z.string(), distance: length, offset: towards.exactOptional() },
    ...{ angle: n.exactOptional(), fromSquare: n, along: n, across: towards },
  });
  return z.strictObject({
    ...{ id: z.string().min(1), point: vec3, direction, diameter: z.number().positive() },
    ...{ through: z.enum(["first", "both"]), marks: z.array(mark) },
  });
}
