/**
 * What is welded together in the shop and carried in as one: how heavy, how large, where it balances, whether it gets in.
 *
 * Masses and centroids are the exact ones of the pieces' solids; weld metal and finish are not in them. Layout frame,
 * millimetres, kilograms.
 *
 * @packageDocumentation
 */
import type { PieceMass } from "../joints/mass-of.js";
import type { Piece } from "../joints/piece.js";
import { endWord } from "../joints/words.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { frameFromAxis, pointToParent } from "../kernel/frame.js";
import type { Solid } from "../kernel/solid.js";
import { addScaled, anySquareTo, dot, scale, type Vec3 } from "../kernel/vec.js";
import type { Access } from "../layout/document/shop.js";
import { type AssemblyBox, assemblyBox } from "./assembly-box.js";
import { fitsThrough, type Passage } from "./fits-through.js";

/** Pieces that are put together in the shop. */
export interface Assembly {
  readonly id: string;
  readonly mark: string;
  /** Ids of the pieces. */
  readonly pieces: readonly string[];
}

/** One assembly as it is lifted and carried. */
export interface AssemblyReport {
  readonly id: string;
  readonly mark: string;
  /** Marks of its pieces, in the order given. */
  readonly pieces: readonly string[];
  /** Kilograms. */
  readonly mass: number;
  /** Centre of gravity in the layout. */
  readonly centre: Vec3;
  readonly box: AssemblyBox;
  /** Along the box's length, from the end named to the centre of gravity, mm. */
  readonly balance: { readonly from: string; readonly distance: number };
  /** Each known place of the way in. */
  readonly passages: readonly Passage[];
}

/** The pieces with what is known of them, by id. */
export interface AssemblyParts {
  readonly pieces: readonly Piece[];
  readonly solids: ReadonlyMap<string, Solid>;
  readonly masses: ReadonlyMap<string, Pick<PieceMass, "mass" | "centroid">>;
}

/** Reports of the assemblies that could be made, and why others could not. */
export interface Assemblies {
  readonly reports: readonly AssemblyReport[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Weight, size, balance and access of each assembly.
 *
 * @param list - the assemblies
 * @param parts - pieces with their solids and masses
 * @param access - of the shop file; default nothing is asked
 * @returns a report for each assembly whose pieces are all there; `unknown-piece` errors and `assembly-incomplete` warnings
 *   for others
 * @example
 * assemblies([{ id: "A1", mark: "A1", pieces: ["R1", "P1"] }], { pieces, solids, masses }).reports[0]?.mass;
 */
export function assemblies(list: readonly Assembly[], parts: AssemblyParts, access: Access = {}): Assemblies {
  const byId = new Map(parts.pieces.map((piece) => [piece.id, piece]));
  const reports: AssemblyReport[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const assembly of list) {
    const found = placedOf(assembly, byId, parts);
    diagnostics.push(...found.diagnostics);
    if (found.placed.length > 0 && found.diagnostics.length === 0)
      reports.push(reportOf(assembly, found.placed, access));
  }
  return { reports, diagnostics };
}

/** A piece with its solid and mass. */
interface Placed {
  readonly piece: Piece;
  readonly solid: Solid;
  readonly mass: number;
  /** In the layout. */
  readonly centroid: Vec3;
}

function placedOf(
  assembly: Assembly,
  byId: ReadonlyMap<string, Piece>,
  { solids, masses }: AssemblyParts,
): { readonly placed: readonly Placed[]; readonly diagnostics: readonly Diagnostic[] } {
  const placed: Placed[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const id of new Set(assembly.pieces)) {
    const piece = byId.get(id);
    const [solid, own] = [solids.get(id), masses.get(id)];
    if (!piece) diagnostics.push(unknownPiece(assembly, id));
    else if (!solid || !own)
      diagnostics.push(incomplete(assembly, `${piece.mark} has no solid or no mass`, [id]));
    else placed.push({ piece, solid, mass: own.mass, centroid: pointToParent(piece.frame, own.centroid) });
  }
  if (assembly.pieces.length === 0) diagnostics.push(incomplete(assembly, "it has no pieces", []));
  return { placed, diagnostics };
}

function unknownPiece({ mark }: Assembly, id: string): Diagnostic {
  return diagnostic({
    code: "unknown-piece",
    members: [id],
    message: `Assembly ${mark}: expected ids of the guard's pieces, got "${id.slice(0, 60)}".`,
    hint: "Take it out, or name a piece by its id.",
  });
}

function incomplete({ mark }: Assembly, why: string, members: readonly string[]): Diagnostic {
  return diagnostic({
    code: "assembly-incomplete",
    severity: "warning",
    members,
    message: `Assembly ${mark}: expected pieces that can all be made, but ${why}; it is neither weighed nor measured.`,
    hint: "Correct the piece, or take it out of the assembly.",
  });
}

function reportOf(assembly: Assembly, placed: readonly Placed[], access: Access): AssemblyReport {
  const mass = placed.reduce((sum, own) => sum + own.mass, 0);
  const moment = placed.reduce<Vec3>((sum, own) => addScaled(sum, own.centroid, own.mass), [0, 0, 0]);
  const centre = scale(moment, 1 / mass);
  const box = assemblyBox(placed.map(({ solid, piece }) => ({ solid, frame: piece.frame })));
  const along = frameFromAxis([0, 0, 0], box.direction, anySquareTo(box.direction));
  return {
    id: assembly.id,
    mark: assembly.mark,
    pieces: placed.map(({ piece }) => piece.mark),
    mass,
    centre,
    box,
    balance: { from: endWord(along, 0), distance: dot(centre, box.direction) - box.start },
    passages: fitsThrough(box, access),
  };
}

/**
 * The longest member that is in no assembly, as an assembly of its own: what is carried in loose.
 *
 * @returns undefined where every member is in an assembly, or there is none
 * @example longestLoose(pieces, [])?.pieces; // ["R1"]
 */
export function longestLoose(pieces: readonly Piece[], list: readonly Assembly[]): Assembly | undefined {
  const taken = new Set(list.flatMap((own) => own.pieces));
  const loose = pieces.filter((p) => p.kind === "member" && p.status === "ok" && !taken.has(p.id));
  const [first, ...more] = loose;
  if (!first) return undefined;
  const longest = more.reduce((a, b) => (b.lengths.blank.value > a.lengths.blank.value ? b : a), first);
  return { id: longest.id, mark: longest.mark, pieces: [longest.id] };
}
