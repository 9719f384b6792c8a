/**
 * What a reading measures, in terms of the places it runs between, with exact derivatives.
 *
 * A stair lies in a plumb plane: nosing n has x along the stair and z up; number 0 is the lower finished floor, which has a
 * height and no place along. A landing lies in plan: a corner has x and y. Plane geometry: differences, Pythagoras,
 * arc tangent, the line through two points. Millimetres and degrees.
 *
 * @packageDocumentation
 */

/** What a reading on the stair runs between; nosing 1 is the lowest, 0 the lower finished floor. */
export interface StairPlace {
  /**
   * `rise` plumb from one to the other, `run` level from one to the other, `height` plumb from the datum (`from`, default 0,
   * the floor), `distance` level from the datum (`from`, default nosing 1), `slope` by tape from nosing to nosing, `level`
   * the angle from level of a straightedge over both, degrees.
   */
  readonly kind: "rise" | "run" | "height" | "distance" | "slope" | "level";
  readonly from?: number;
  readonly to: number;
}

/** A length between two corners of a landing, in plan. */
export interface LandingPlace {
  readonly kind: "side" | "diagonal";
  readonly from: string;
  readonly to: string;
}

/** The angle at a corner between the directions of two others, degrees, 0 to 180. */
export interface CornerPlace {
  readonly kind: "corner";
  readonly at: string;
  readonly from: string;
  readonly to: string;
}

/** The square distance of a corner from the line of a wall through two others, on either side of it. */
export interface OffsetPlace {
  readonly kind: "offset";
  readonly at: string;
  readonly from: string;
  readonly to: string;
}

/** What can be read in plan. */
export type PlanPlace = LandingPlace | CornerPlace | OffsetPlace;

/** Anything that can be read, or asked of an adjusted survey. */
export type Place = StairPlace | PlanPlace;

/** A place with a name of its own, and how well it can be read. */
export type PlannedReading = Place & {
  /** What the paper calls it, e.g. `R8`; each once. */
  readonly id: string;
  /** Standard uncertainty, mm or degrees, > 0; default `readingSigma` for a tape of class II. */
  readonly sigma?: number;
};

/** A reading that was taken. */
export type Reading = PlannedReading & {
  /** mm, or degrees for `level` and `corner`; > 0, a `level` may be 0. */
  readonly value: number;
};

/** Which coordinate of which point: x along (or in plan), y in plan, z up. */
export interface Coordinate {
  readonly axis: "x" | "y" | "z";
  readonly point: number | string;
}

/** One word for a coordinate, e.g. `z3`, `xA`. */
export type CoordinateName = string;

/** The word for a coordinate. */
export const nameOf = (of: Coordinate): CoordinateName => `${of.axis}${of.point}`;

/** Whether a reading is in degrees. */
export const isAngle = (of: Place): boolean => of.kind === "level" || of.kind === "corner";

/** The number or letter of the point a reading starts at, with the kind's default. */
export function fromOf(of: Place): number | string {
  return of.from ?? (of.kind === "distance" ? 1 : 0);
}

/** Which coordinates a reading depends on, the ones of `from` first. */
export function coordinatesOf(of: Place): readonly Coordinate[] {
  const points = "at" in of ? [of.at, of.from, of.to] : [fromOf(of), of.to];
  const axes: Readonly<Record<Place["kind"], readonly Coordinate["axis"][]>> = {
    rise: ["z"],
    height: ["z"],
    run: ["x"],
    distance: ["x"],
    slope: ["x", "z"],
    level: ["x", "z"],
    side: ["x", "y"],
    diagonal: ["x", "y"],
    corner: ["x", "y"],
    offset: ["x", "y"],
  };
  return points.flatMap((point) => axes[of.kind].map((axis) => ({ axis, point })));
}

/** A value and its derivatives by the coordinates of `coordinatesOf`, in the same order. */
export interface Linearised {
  /** mm or degrees. */
  readonly value: number;
  /** mm per mm, or degrees per mm. */
  readonly derivatives: readonly number[];
}

const DEGREES = 180 / Math.PI;

function length(u: number, w: number): Linearised {
  const value = Math.hypot(u, w);
  return { value, derivatives: [-u / value, -w / value, u / value, w / value] };
}

function level(u: number, w: number): Linearised {
  const square = u * u + w * w;
  const [du, dw] = [(-w / square) * DEGREES, (u / square) * DEGREES];
  return { value: Math.atan2(w, u) * DEGREES, derivatives: [-du, -dw, du, dw] };
}

function corner(a: readonly number[]): Linearised {
  const [x = 0, y = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = a;
  const [one, two] = [level(x1 - x, y1 - y), level(x2 - x, y2 - y)];
  const turn = ((((two.value - one.value + 180) % 360) + 360) % 360) - 180;
  const way = turn < 0 ? -1 : 1;
  const [d1, d2] = [one.derivatives.map((d) => -way * d), two.derivatives.map((d) => way * d)];
  const at = (from: readonly number[], i: number) => from[i] as number;
  return {
    value: way * turn,
    derivatives: [at(d1, 0) + at(d2, 0), at(d1, 1) + at(d2, 1), at(d1, 2), at(d1, 3), at(d2, 2), at(d2, 3)],
  };
}

/** Square from a point to a line: the line moves with its points as far as the foot of the square is near them. */
function offset(a: readonly number[]): Linearised {
  const [x = 0, y = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = a;
  const [u, w] = [x2 - x1, y2 - y1];
  const along = Math.hypot(u, w);
  const signed = (u * (y - y1) - w * (x - x1)) / along;
  const way = signed < 0 ? -1 : 1;
  const [nx, ny] = [(-way * w) / along, (way * u) / along];
  const share = (u * (x - x1) + w * (y - y1)) / along ** 2;
  return {
    value: way * signed,
    derivatives: [nx, ny, -(1 - share) * nx, -(1 - share) * ny, -share * nx, -share * ny],
  };
}

/**
 * What a reading would be, were the points where they are said to be.
 *
 * @param of - what is read
 * @param at - values of `coordinatesOf(of)`, in order, mm
 * @returns value and derivatives; not finite where two points of a length or an angle are one
 * @example linearise({ kind: "slope", from: 1, to: 2 }, [0, 0, 40, 30]).value; // 50
 */
export function linearise(of: Place, at: readonly number[]): Linearised {
  if (of.kind === "corner") return corner(at);
  if (of.kind === "offset") return offset(at);
  const [a = 0, b = 0, c = 0, d = 0] = at;
  if (of.kind === "level") return level(c - a, d - b);
  if (of.kind === "slope" || of.kind === "side" || of.kind === "diagonal") return length(c - a, d - b);
  return { value: b - a, derivatives: [-1, 1] };
}
