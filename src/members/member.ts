/**
 * Members: straight centreline segments with a section.
 *
 * Which way up a section stands follows one rule: its v axis is as near to `up` as can be, `up` is the layout's Z, and
 * for a member that is plumb or nearly so the layout's X (uphill), so that a post's width runs across the stair.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { type Frame, frameFromAxis } from "../kernel/frame.js";
import { PARALLEL_SINE, SHORTEST_FIBRE_MM } from "../kernel/tolerance.js";
import { cross, distance, isFiniteVec, length, negate, normalize, sub, type Vec3 } from "../kernel/vec.js";
import type { Section } from "./section.js";

/** What a member does in a guard; who yields to whom at a joint follows from it. */
export type Role = "top-rail" | "rail" | "post" | "other";

/** A straight member as it is designed, before any joint cuts it. */
export interface Member {
  /** Unique in the model. */
  readonly id: string;
  /** Piece mark on the papers; the id when absent. */
  readonly mark?: string;
  readonly section: Section;
  /** Ends of the centreline in the layout, millimetres. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Axis frame: origin at `from`, z towards `to`, y as near to up as can be (the section's "up"). */
  readonly frame: Frame;
  readonly role: Role;
  /** Set for flat things made by `plate`: no rule cuts them or cuts others to them. */
  readonly kind?: "plate" | "bracket";
  /** Material name; its density comes from the materials table. */
  readonly material: string;
  /** Degrees from the layout's X, + to the left: the way that shop words call uphill for it. Absent: 0. */
  readonly heading?: number;
}

/** What a member is made from; everything else follows. */
export interface MemberInput {
  /** Unique in the model, not empty. */
  readonly id: string;
  readonly section: Section;
  /** Ends of the centreline in the layout, millimetres. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Direction the section's v axis is to be nearest to; by default Z, or X within {@link PLUMB_WITHIN} degrees of plumb. */
  readonly up?: Vec3;
  /** Turn of the section about the axis, degrees, right-handed about from → to; default 0. */
  readonly roll?: number;
  /** Default `other`. */
  readonly role?: Role;
  /** Name in the materials table or the caller's own; default `mild-steel`. */
  readonly material?: string;
  readonly mark?: string;
}

/** Degrees. A member this near to plumb takes its up from X: a post set out of plumb keeps its faces to the stair. Our convention. */
export const PLUMB_WITHIN = 5;

/**
 * A member from its centreline and section.
 *
 * Looking along the member from `from` to `to` with `up` on top, u is to the left. A post drawn from its foot up has
 * v uphill (X) and u to the right of someone walking up (−Y).
 *
 * @throws RakewrightError `bad-member` for an empty id, a number that is not finite, ends that coincide, or an `up`
 *   along the axis
 * @example
 * member({ id: "P1", section: roundTube({ od: 42.4, wall: 3.2 }), from: [0, 0, 0], to: [0, 0, 950], role: "post" });
 */
export function member(input: MemberInput): Member {
  const { id, section, from, to, roll = 0, role = "other", material = "mild-steel", mark } = input;
  if (id.trim() === "")
    refuse("Member: expected an id, got none.", "Give every member a name of its own.", id);
  if (!isFiniteVec(from) || !isFiniteVec(to) || !Number.isFinite(roll)) {
    refuse(
      `Member ${id}: expected finite ends and roll, got ${from} to ${to}, roll ${roll}.`,
      "Look for a missing input.",
      id,
    );
  }
  if (distance(from, to) <= SHORTEST_FIBRE_MM) {
    refuse(
      `Member ${id}: expected two ends apart, got both at ${from}.`,
      "Leave the member out, or move an end.",
      id,
    );
  }
  const axis = normalize(sub(to, from));
  const up = input.up ?? defaultUp(axis);
  const square = cross(up, axis);
  if (!isFiniteVec(up) || !(length(square) > PARALLEL_SINE * length(up))) {
    refuse(
      `Member ${id}: expected an up direction across the axis ${axis}, got ${up}.`,
      "Give another up.",
      id,
    );
  }
  const flat = frameFromAxis(from, axis, square);
  const [c, s] = [Math.cos((roll * Math.PI) / 180), Math.sin((roll * Math.PI) / 180)];
  const turned = (a: Vec3, b: Vec3): Vec3 => [c * a[0] + s * b[0], c * a[1] + s * b[1], c * a[2] + s * b[2]];
  const frame = roll === 0 ? flat : { ...flat, x: turned(flat.x, flat.y), y: turned(flat.y, negate(flat.x)) };
  return { id, section, from, to, frame, role, material, ...(mark === undefined ? {} : { mark }) };
}

function defaultUp(axis: Vec3): Vec3 {
  return Math.hypot(axis[0], axis[1]) <= Math.sin((PLUMB_WITHIN * Math.PI) / 180) ? [1, 0, 0] : [0, 0, 1];
}

function refuse(message: string, hint: string, id: string): never {
  throw new RakewrightError({ code: "bad-member", message, hint, members: [id] });
}
