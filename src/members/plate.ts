/**
 * Plates, tabs and the legs of brackets: an outline with round holes, as thick as it is long.
 *
 * To the kernel a plate is a short member: its section is the outline with its holes, its length the thickness, its two
 * flat faces are its ends. The rules of who meets whom leave plates alone; an end is cut to one by a joint that says so.
 * Holes run square through; a flat that is drilled on a slant is a `member` of `rectBar` with a bore joint, which goes through
 * its sides at any angle. Millimetres; the outline is drawn in the section's coordinates (u, v), seen on the `to` face with u to the right, v up.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { loopDistance } from "../kernel/loop-distance.js";
import { circleLoop, type Loop, type Region } from "../kernel/region.js";
import { extentAlong } from "../kernel/region-extent.js";
import { LEFT_BESIDE_BORE_MM } from "../kernel/tolerance.js";
import { addScaled, isFiniteVec, length, normalize, type Vec2, type Vec3 } from "../kernel/vec.js";
import { type Member, type MemberInput, member } from "./member.js";
import { requireRadius, requireSizes, shortSize, sizesOf } from "./sections/checks.js";
import { customSection } from "./sections/custom.js";
import { roundedRectLoop } from "./sections/rounded-rect.js";

/** A round hole square through a plate. */
export interface PlateHole {
  /** Centre in the outline's coordinates. */
  readonly at: Vec2;
  readonly diameter: number;
}

/** A rectangle about the origin: `width` along u, `depth` along v. */
export interface PlateRectangle {
  readonly width: number;
  readonly depth: number;
  /** Of all four corners: 0 (default), or from 0.001 mm to half the smaller side. */
  readonly cornerRadius?: number;
}

/** What a plate is made from. */
export interface PlateInput extends Pick<MemberInput, "id" | "up" | "roll" | "role" | "material" | "mark"> {
  /** Any closed loop of lines and arcs, or a rectangle. */
  readonly outline: Loop | PlateRectangle;
  readonly thickness: number;
  readonly holes?: readonly PlateHole[];
  /** Where the outline's origin lies on the face the thickness starts from, in the layout. */
  readonly at: Vec3;
  /** The way the thickness goes from there, any length above zero. */
  readonly normal: Vec3;
  /** `plate` (default; tabs too), or `bracket` for a leg of a bracket. */
  readonly kind?: "plate" | "bracket";
  /** Least material from a hole to the outline, and between two holes, millimetres: the shop's own limits. Default 0.001: not cut into. */
  readonly leastEdge?: number;
  readonly leastWeb?: number;
}

/**
 * A plate as `solveJoints` takes it among the members.
 *
 * @returns a member of kind `plate` or `bracket`, from `at`, its thickness along `normal`; its v axis is as near to `up` as
 *   can be (default Z; X where the plate lies level)
 * @throws RakewrightError `bad-plate` for a hole without size, too near the outline or another hole; `bad-section` for an
 *   outline or a thickness that is none; `bad-member` for a direction that is none
 * @example
 * ```ts
 * const base = plate({
 *   id: "BP1",
 *   outline: { width: 100, depth: 100, cornerRadius: 8 },
 *   thickness: 10,
 *   holes: [{ at: [36, 36], diameter: 11 }, { at: [-36, -36], diameter: 11 }],
 *   at: [0, 0, 0],
 *   normal: [0, 0, 1],
 * });
 * base.to; // [0, 0, 10]
 * ```
 */
export function plate(input: PlateInput): Member {
  const { id, outline, thickness, holes = [], at, normal, kind = "plate" } = input;
  const what = `Plate ${id}`;
  requireSizes(what, { thickness });
  const outer = "width" in outline ? rectangle(what, outline) : outline;
  holes.forEach((hole, i) => {
    requireSize(id, hole, i);
  });
  const least = { edge: input.leastEdge ?? LEFT_BESIDE_BORE_MM, web: input.leastWeb ?? LEFT_BESIDE_BORE_MM };
  // The outline first: distances to one that crosses itself would say nothing.
  const bare = customSection({ name: what, outer });
  holes.forEach((hole, i) => {
    requireEdge(id, bare.region.outer, hole, i, least.edge);
    requireWeb(id, holes, i, least.web);
  });
  const section = customSection({
    name: `plate ${sizesOf(...overAll(bare.region))}`,
    outer,
    holes: holes.map((hole, i) => circleLoop(hole.at, hole.diameter / 2, `hole ${i + 1}`, true)),
  });
  if (!isFiniteVec(normal) || length(normal) === 0) {
    refuse(id, `expected a direction for its thickness, got ${normal}.`, "Give the normal of its face.", {
      code: "bad-member",
    });
  }
  const { up, roll, role, material, mark } = input;
  const made = member({
    id,
    section,
    from: at,
    to: addScaled(at, normalize(normal), thickness),
    ...(up && { up }),
    ...(roll !== undefined && { roll }),
    ...(role && { role }),
    ...(material !== undefined && { material }),
    ...(mark !== undefined && { mark }),
  });
  return { ...made, kind };
}

/** Width along u and depth along v over all. */
function overAll({ outer }: Region): readonly [number, number] {
  const [u, v] = [extentAlong(outer, [1, 0]), extentAlong(outer, [0, 1])];
  return [u.greatest - u.least, v.greatest - v.least];
}

function rectangle(what: string, { width, depth, cornerRadius = 0 }: PlateRectangle): Loop {
  requireSizes(what, { width, depth });
  requireRadius(what, "cornerRadius", cornerRadius, Math.min(width, depth));
  return roundedRectLoop(width, depth, cornerRadius, "");
}

function requireSize(id: string, { at, diameter }: PlateHole, i: number): void {
  if (diameter > 0 && [diameter, ...at].every(Number.isFinite)) return;
  refuse(
    id,
    `hole ${i + 1}: expected a centre and a diameter above 0 mm, got ${diameter} at (${at}).`,
    "Give the drill's diameter and where its point goes.",
    { values: { hole: i + 1 } },
  );
}

function requireEdge(id: string, outer: Loop, { at, diameter }: PlateHole, i: number, least: number): void {
  const left = -loopDistance(outer, at).distance - diameter / 2;
  if (left >= least) return;
  refuse(
    id,
    `hole ${i + 1}, ${shortSize(diameter)} mm at (${at.map(shortSize).join(", ")}), leaves ${left.toFixed(3)} mm to the outline; expected at least ${least} mm.`,
    "Move the hole in, make it smaller, or make the plate larger.",
    { values: { hole: i + 1, left, least } },
  );
}

function requireWeb(id: string, holes: readonly PlateHole[], i: number, least: number): void {
  const hole = holes[i] as PlateHole;
  holes.slice(0, i).forEach((other, j) => {
    const apart = Math.hypot(hole.at[0] - other.at[0], hole.at[1] - other.at[1]);
    const left = apart - (hole.diameter + other.diameter) / 2;
    if (left >= least) return;
    refuse(
      id,
      `holes ${j + 1} and ${i + 1} leave ${left.toFixed(3)} mm between them; expected at least ${least} mm.`,
      "Move one of the holes, or make one of a slot as its own outline.",
      { values: { hole: i + 1, other: j + 1, left, least } },
    );
  });
}

function refuse(
  id: string,
  what: string,
  hint: string,
  more: { readonly code?: string; readonly values?: Readonly<Record<string, number>> },
): never {
  throw new RakewrightError({
    code: "bad-plate",
    message: `Plate ${id}: ${what}`,
    hint,
    members: [id],
    ...more,
  });
}
