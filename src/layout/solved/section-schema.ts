/**
 * The schema of a section and of what it is made of, as a file of solved pieces has them.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import type { Frame } from "../../kernel/frame.js";
import type { Loop } from "../../kernel/region.js";
import { PARALLEL_SINE, STATION_MM } from "../../kernel/tolerance.js";
import type { Vec2, Vec3 } from "../../kernel/vec.js";
import type { Section } from "../../members/section.js";

const n = z.number();
const size = z.number().positive();
const notBelow = z.number().nonnegative();

/** A point or a direction of a section, and of space. */
export const vec2: z.ZodType<Vec2> = z.tuple([n, n]);
export const vec3: z.ZodType<Vec3> = z.tuple([n, n, n]);

/** A direction: any length but zero. */
export const direction: z.ZodType<Vec3> = vec3.refine((v) => Math.hypot(...v) > 0, {
  error: "expected a direction of some length",
});

function isFrame({ x, y, z: w }: Frame): boolean {
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const unit = [x, y, w].every((a) => Math.abs(dot(a, a) - 1) < PARALLEL_SINE);
  const square = [dot(x, y), dot(y, w), dot(w, x)].every((a) => Math.abs(a) < PARALLEL_SINE);
  const right = dot([x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]], w) > 0;
  return unit && square && right;
}

/** A right-handed frame of unit axes. */
export const frameSchema: z.ZodType<Frame> = z
  .strictObject({ origin: vec3, x: vec3, y: vec3, z: vec3 })
  .refine(isFrame, { error: "expected three unit axes square to each other, right-handed" });

const label = z.string().exactOptional();
const segment = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("line"), from: vec2, to: vec2, label }),
  z.strictObject({ kind: z.literal("arc"), centre: vec2, radius: size, start: n, sweep: n, label }),
]);

type Side = z.infer<typeof segment>;

function endOf(side: Side, last: boolean): readonly number[] {
  if (side.kind === "line") return last ? side.to : side.from;
  const angle = side.start + (last ? side.sweep : 0);
  return [side.centre[0] + side.radius * Math.cos(angle), side.centre[1] + side.radius * Math.sin(angle)];
}

/** A closed chain of sides. */
export const loopSchema: z.ZodType<Loop> = z
  .array(segment)
  .min(2)
  .refine(
    (sides) =>
      sides.every((side, i) => {
        const [a, b] = [endOf(side, true), endOf(sides[(i + 1) % sides.length] as Side, false)];
        return (
          Math.hypot((a[0] as number) - (b[0] as number), (a[1] as number) - (b[1] as number)) < STATION_MM
        );
      }),
    { error: "expected a closed outline: each side starts where the one before it ends" },
  );

const shape = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("round-tube"), od: size, wall: size }),
  z.strictObject({ kind: z.literal("round-bar"), od: size }),
  z.strictObject({
    ...{ kind: z.literal("rect-tube"), width: size, depth: size, wall: size },
    ...{ outerRadius: notBelow, innerRadius: notBelow },
  }),
  z.strictObject({ kind: z.literal("rect-bar"), width: size, depth: size, edgeRadius: notBelow }),
  z.strictObject({
    ...{ kind: z.literal("angle"), width: size, depth: size, thickness: size },
    ...{ rootRadius: notBelow, toeRadius: notBelow },
  }),
  z.strictObject({
    ...{ kind: z.literal("channel"), width: size, depth: size, web: size, flange: size },
    ...{ taper: n.exactOptional(), flangeAt: n.exactOptional() },
    ...{ rootRadius: notBelow, toeRadius: notBelow },
  }),
  z.strictObject({ kind: z.literal("custom") }),
]);

/** A section with its outline. */
export const sectionSchema: z.ZodType<Section> = z.strictObject({
  name: z.string().min(1),
  shape,
  region: z.strictObject({ outer: loopSchema, holes: z.array(loopSchema) }),
  source: z.string(),
});
