/**
 * Instances of a Part 21 file in the order they are made: numbered, spelt and handed on in chunks.
 *
 * Lengths are scaled to the file's unit here and nowhere else.
 *
 * @packageDocumentation
 */
import type { Frame } from "../../kernel/frame.js";
import { ROUNDING_MM, ROUNDING_SHARE } from "../../kernel/tolerance.js";
import type { Vec2, Vec3 } from "../../kernel/vec.js";
import { real } from "./part21.js";

/** mm. A tenth of what rounding makes of a length: written as 0, it saves twenty characters. */
const NOTHING_MM = ROUNDING_MM / 10;
/** The same of a component of a direction. */
const NOTHING = ROUNDING_SHARE / 100;
const orZero = (x: number): number => (Math.abs(x) < NOTHING ? 0 : x);

/** Collects instances; what has been collected is taken away by `drain`. */
export class Sink {
  private next = 1;
  private waiting = "";
  private readonly directions = new Map<string, number>();

  /** Number of the context of pcurves. */
  readonly flat: number;

  /** @param scale - file units in a millimetre */
  constructor(readonly scale: number) {
    this.flat = this.put(
      "(GEOMETRIC_REPRESENTATION_CONTEXT(2)PARAMETRIC_REPRESENTATION_CONTEXT()REPRESENTATION_CONTEXT('','parameters'))",
    );
  }

  /** Writes an instance, e.g. `VERTEX_POINT('',#3)`; returns its number. */
  put(body: string): number {
    const id = this.next++;
    this.waiting += `#${id}=${body};\n`;
    return id;
  }

  /** A number for an instance that is written later, by `fill`. */
  reserve(): number {
    return this.next++;
  }

  /** Writes an instance whose number was reserved. */
  fill(id: number, body: string): void {
    this.waiting += `#${id}=${body};\n`;
  }

  /** Characters that wait. */
  get size(): number {
    return this.waiting.length;
  }

  /** Takes away what waits. */
  drain(): string {
    const out = this.waiting;
    this.waiting = "";
    return out;
  }

  /** A length in the file's unit; rounding's remains of zero are written as zero. */
  length(millimetres: number): string {
    return real(Math.abs(millimetres) < NOTHING_MM ? 0 : millimetres * this.scale);
  }

  point(p: Vec3): number {
    return this.put(`CARTESIAN_POINT('',(${this.length(p[0])},${this.length(p[1])},${this.length(p[2])}))`);
  }

  /** A point of a pcurve, each coordinate in its own unit already. */
  point2(u: number, v: number): number {
    return this.put(`CARTESIAN_POINT('',(${real(u)},${real(v)}))`);
  }

  /** Unit directions are written once. */
  direction(d: Vec3): number {
    return this.once(`DIRECTION('',(${real(orZero(d[0]))},${real(orZero(d[1]))},${real(orZero(d[2]))}))`);
  }

  direction2(d: Vec2): number {
    return this.once(`DIRECTION('',(${real(orZero(d[0]))},${real(orZero(d[1]))}))`);
  }

  placement({ origin, x, z }: Frame): number {
    return this.put(
      `AXIS2_PLACEMENT_3D('',#${this.point(origin)},#${this.direction(z)},#${this.direction(x)})`,
    );
  }

  private once(body: string): number {
    const known = this.directions.get(body);
    if (known !== undefined) return known;
    const id = this.put(body);
    this.directions.set(body, id);
    return id;
  }
}
