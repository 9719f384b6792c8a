/**
 * How far the holes that are drilled are off the lines that the layout wants them on. Millimetres.
 *
 * A hole fits while what goes through it clears its wall; one with nothing through it fits while its axis is within the fit
 * gap; either while it is within half a mark (`MARK_MM`) of its line. Measured where the drilled hole's axis opens on the outside of its piece.
 *
 * @packageDocumentation
 */
import type { BoreJoint, Joint, ThroughJoint } from "../../joints/joint.js";
import type { Piece, PieceBore } from "../../joints/piece.js";
import { pointToParent } from "../../kernel/frame.js";
import { MARK_MM, ON_SURFACE_MM } from "../../kernel/tolerance.js";
import { cross, length, normalize, sub, type Vec3 } from "../../kernel/vec.js";
import type { MadeMisfit } from "./made-misfit.js";

/** A line that a hole is wanted on, and how wide what goes through it is. */
interface Wanted {
  readonly id: string;
  readonly at: Vec3;
  readonly direction: Vec3;
  /** Diameter of the bar; 0 where nothing is said to go through. */
  readonly bar: number;
  readonly onto: string;
}

function wantedBy(joint: BoreJoint | ThroughJoint, byId: ReadonlyMap<string, Piece>): Wanted | null {
  if (joint.kind === "bore") {
    const { id, at, direction, member } = joint;
    return { id, at, direction, bar: 0, onto: member };
  }
  const bar = byId.get(joint.bar);
  const shape = bar?.section.shape;
  if (!bar || (shape?.kind !== "round-tube" && shape?.kind !== "round-bar")) return null;
  return { id: joint.id, at: bar.frame.origin, direction: bar.frame.z, bar: shape.od, onto: bar.id };
}

/** Distance of a point from a line. */
function offLine(p: Vec3, { at, direction }: Wanted): number {
  return length(cross(sub(p, at), normalize(direction)));
}

function misfitOf(piece: Piece, hole: PieceBore, wanted: Wanted, fitGap: number): MadeMisfit[] {
  const places = hole.marks.length > 0 ? hole.marks.map((own) => own.distance.to.point) : [hole.point];
  const by = Math.max(...places.map((own) => offLine(pointToParent(piece.frame, own), wanted)));
  const allowed = Math.max(MARK_MM, wanted.bar > 0 ? (hole.diameter - wanted.bar) / 2 : fitGap);
  if (by <= allowed + ON_SURFACE_MM) return [];
  return [
    {
      ...{ piece: piece.id, feature: "holes", onto: wanted.onto, hole: hole.id },
      ...{ kind: "off-line", by, allowed },
    },
  ];
}

/**
 * What of a piece's drilled holes does not fit.
 *
 * @param piece - with its holes, where it stands
 * @param joints - of the new layout
 * @param byId - all pieces of the new solution
 * @param fitGap - of holes with nothing through them
 */
export function holeMisfits(
  piece: Piece,
  joints: readonly Joint[],
  byId: ReadonlyMap<string, Piece>,
  fitGap: number,
): MadeMisfit[] {
  const wanted = joints.flatMap((joint) =>
    (joint.kind === "bore" || joint.kind === "through") && joint.member === piece.id
      ? (wantedBy(joint, byId) ?? [])
      : [],
  );
  const drilled = new Map(piece.bores.map((own) => [own.id, own]));
  const names = new Set(wanted.map((own) => own.id));
  const bare = { piece: piece.id, feature: "holes", by: 0, allowed: 0 } as const;
  return [
    ...wanted.flatMap((own): MadeMisfit[] => {
      const hole = drilled.get(own.id);
      if (hole) return misfitOf(piece, hole, own, fitGap);
      return [{ ...bare, onto: own.onto, hole: own.id, kind: "no-hole" }];
    }),
    ...piece.bores
      .filter((own) => !names.has(own.id))
      .map((own): MadeMisfit => ({ ...bare, onto: "", hole: own.id, kind: "spare-hole" })),
  ];
}
