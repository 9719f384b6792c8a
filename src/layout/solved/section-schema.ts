/**
 * The schema of a section and of what it is made of, as a file of solved pieces has them.
 *
 * @packageDocumentation
 */
import * as z from "zod";
import type { Frame } from "../../kernel/frame.js";
import { type Loop, pointOn, type Segment } from "../../kernel/region.js";
import { PARALLEL_SINE, STATION_MM } from "../../kernel/tolerance.js";
import type { Vec2, Vec3 } from "../../kernel/vec.js";
import type { Section, SectionShape } from "../../members/section.js";

/** The parts of a section's schema that others are made of as well. Made when asked for: few programs read such a file. */
export interface SectionSchemas {
  readonly vec3: z.ZodType<Vec3>;
  /** Any length but zero. */
  readonly direction: z.ZodType<Vec3>;
  /** Right-handed, of unit axes. */
  readonly frame: z.ZodType<Frame>;
  /** A closed chain of sides. */
  readonly loop: z.ZodType<Loop>;
  readonly section: z.ZodType<Section>;
}

function isFrame({ x, y, z: w }: Frame): boolean {
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const unit = [x, y, w].every((a) => Math.abs(dot(a, a) - 1) < PARALLEL_SINE);
  const square = [dot(x, y), dot(y, w), dot(w, x)].every((a) => Math.abs(a) < PARALLEL_SINE);
  const right = dot([x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]], w) > 0;
  return unit && square && right;
}

/** Makes the schemas. */
export function sectionSchemas(): SectionSchemas {
  const n = z.number();
  const vec3: z.ZodType<Vec3> = z.tuple([n, n, n]);
  const direction = vec3.refine((v) => Math.hypot(...v) > 0, {
    error: "expected a direction of some length",
  });
  const frame: z.ZodType<Frame> = z
    .strictObject({ origin: vec3, x: vec3, y: vec3, z: vec3 })
    .refine(isFrame, { error: "expected three unit axes square to each other, right-handed" });
  const loop = loopSchema();
  const section: z.ZodType<Section> = z.strictObject({
    name: z.string().min(1),
    shape: shapeSchema(),
    region: z.strictObject({ outer: loop, holes: z.array(loop) }),
    source: z.string(),
  });
  return { vec3, direction, frame, loop, section };
}

function endOf(side: Segment, last: boolean): Vec2 {
  return pointOn(side, last ? 1 : 0);
}

function loopSchema(): z.ZodType<Loop> {
  const n = z.number();
  const vec2 = z.tuple([n, n]);
  const label = z.string().exactOptional();
  const segment: z.ZodType<Segment> = z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("line"), from: vec2, to: vec2, label }),
    z.strictObject({
      ...{ kind: z.literal("arc"), centre: vec2, radius: z.number().positive() },
      ...{ start: n, sweep: n, label },
    }),
  ]);
  return z
    .array(segment)
    .min(2)
    .refine(
      (sides) =>
        sides.every((side, i) => {
          const [a, b] = [endOf(side, true), endOf(sides[(i + 1) % sides.length] as Segment, false)];
          return Math.hypot(a[0] - b[0], a[1] - b[1]) < STATION_MM;
        }),
      { error: "expected a closed outline: each side starts where the one before it ends" },
    );
}

function shapeSchema(): z.ZodType<SectionShape> {
  const [size, notBelow] = [z.number().positive(), z.number().nonnegative()];
  return z.discriminatedUnion("kind", [
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
      ...{ taper: z.number().exactOptional(), flangeAt: z.number().exactOptional() },
      ...{ rootRadius: notBelow, toeRadius: notBelow },
    }),
    z.strictObject({ kind: z.literal("custom") }),
  ]);
}
