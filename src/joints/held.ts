/**
 * Pieces of which some is made: where they stand in a new layout, and which of their cuts others must take as they are.
 *
 * What is made keeps its shape in the piece's own frame, to the last bit; the frame is slid along the member's axis until the
 * made end lies where the layout wants that end: the axis point of its cut on the axis point of the cut that would be made
 * now. Of two made ends the start decides (a post's foot stands, its top is where it is); of a piece with nothing but holes
 * made, the holes do, each as near as the others allow. A piece that stands is not slid: its frame is where it is. Section and material are those of the made piece. Millimetres.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type CompiledEnd, compileEnd, outAt } from "../kernel/end-compile.js";
import { ROUNDING_MM } from "../kernel/tolerance.js";
import { addScaled, dot, normalize } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { decide } from "./decide.js";
import { draft } from "./draft.js";
import type { HeldPiece, JointModel } from "./solve-types.js";

/** A model whose held pieces stand where the layout puts them, their members with them. */
export function placeHeld(model: JointModel): JointModel {
  const given = new Map((model.held ?? []).map((own) => [own.piece.id, own]));
  if (given.size === 0) return model;
  // A plate is cut to nothing, so it can be placed by itself, and what stands on it follows.
  const plates = model.members.map((m) => {
    const own = given.get(m.id);
    return own && m.kind !== undefined ? heldPlate(m, own) : m;
  });
  const ofItsSection = plates.map((m) => {
    const own = given.get(m.id);
    return own && m.kind === undefined ? inItsSection(m, own) : m;
  });
  const { members, byEnd, bores } = decide({ ...model, members: ofItsSection, held: [] });
  const placed = ofItsSection.map((m) => {
    const own = given.get(m.id);
    if (!own || m.kind !== undefined) return m;
    if (own.stands === true) return { ...m, frame: own.piece.frame };
    const designed = draft(m, members, byEnd, bores.get(m.id) ?? []);
    const by = slide(own, m, designed.ends, designed.bores);
    return { ...m, frame: { ...m.frame, origin: addScaled(m.frame.origin, m.frame.z, by) } };
  });
  const frames = new Map(placed.map((m) => [m.id, m.frame]));
  return {
    ...model,
    members: placed,
    held: [...given.values()].map((own) => {
      const frame = frames.get(own.piece.id);
      return frame ? { ...own, piece: { ...own.piece, frame } } : own;
    }),
  };
}

function inItsSection(m: Member, { piece }: HeldPiece): Member {
  return { ...m, section: piece.section, material: piece.material };
}

/** A made plate lies with its start face where the design has it, as thick as it is. */
function heldPlate(m: Member, own: HeldPiece): Member {
  if (!own.ends[0] && !own.ends[1]) return inItsSection(m, own);
  const [low, high] = madeAlong(own, m);
  const frame =
    own.stands === true ? own.piece.frame : { ...m.frame, origin: addScaled(m.from, m.frame.z, -low) };
  const along = (s: number) => addScaled(frame.origin, frame.z, s);
  return { ...inItsSection(m, own), frame, from: along(low), to: along(high) };
}

/** Where on its axis a made piece begins and ends. */
function madeAlong({ piece }: HeldPiece, m: Member): readonly [number, number] {
  const { region } = piece.section;
  const [low, high] = [compileEnd(piece.ends[0], -1, region).end, compileEnd(piece.ends[1], 1, region).end];
  const drawn = dot(m.frame.z, [m.to[0] - m.from[0], m.to[1] - m.from[1], m.to[2] - m.from[2]]);
  return [-axisOut(low, 0), axisOut(high, drawn)];
}

/** How far an end goes out on the axis; `drawn` where nothing closes it there. */
function axisOut(end: CompiledEnd | null, drawn: number): number {
  const out = end ? outAt(end, 0, 0) : Number.NaN;
  return Number.isFinite(out) ? out : drawn;
}

/** How far the frame of a held piece is slid along the member's axis. */
function slide(
  own: HeldPiece,
  m: Member,
  [low, high]: readonly [CompiledEnd | null, CompiledEnd | null],
  bores: readonly Bore[],
): number {
  const [start, end] = madeAlong(own, m);
  const drawn = dot(m.frame.z, [m.to[0] - m.from[0], m.to[1] - m.from[1], m.to[2] - m.from[2]]);
  let by = 0;
  if (own.ends[0]) by = -axisOut(low, 0) - start;
  else if (own.ends[1]) by = axisOut(high, drawn) - end;
  else if (own.holes) by = slideOfHoles(own.piece.bores, bores);
  return Math.abs(by) <= ROUNDING_MM ? 0 : by;
}

/** The mean of how far the holes that are wanted are from those that are drilled. */
function slideOfHoles(made: readonly Bore[], wanted: readonly Bore[]): number {
  const along = ({ point, direction }: Bore): number => {
    const d = normalize(direction);
    // Where the hole's axis passes nearest to the bar's.
    const across = d[0] * d[0] + d[1] * d[1];
    const t = across === 0 ? 0 : -(point[0] * d[0] + point[1] * d[1]) / across;
    return point[2] + t * d[2];
  };
  const pairs = made.flatMap((own) => {
    const same = wanted.find((other) => other.id === own.id);
    return same ? [along(same) - along(own)] : [];
  });
  return pairs.length === 0 ? 0 : pairs.reduce((sum, x) => sum + x, 0) / pairs.length;
}
