/**
 * How two neighbours fit: how far the cut of one stands off the other, and how deep one lies in the other.
 *
 * The cut's faces are taken from the yielding piece's exact solid; distances are measured to the mate's own faces, trimmed
 * by its own ends (`mate.ts`, `cut-range.ts`, `deepest.ts`). Millimetres; points in the layout.
 *
 * A root gap G under a valley of two rails reads G / cos(half the break) at the ridge: the skins a gap away meet sharp there,
 * while what is everywhere a gap from both would be round about the rails' common edge.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Result } from "../kernel/diagnostic.js";
import { type At, type Extremes, extremesAlong } from "../kernel/edge-extremes.js";
import { pointToParent } from "../kernel/frame.js";
import { ROUNDING_MM } from "../kernel/tolerance.js";
import type { Vec3 } from "../kernel/vec.js";
import { cutFaces, faceMet, rangeOver, rimOfCut } from "./cut-range.js";
import { deepestIn } from "./deepest.js";
import { type Body, bodyOf, fromOutline, mateOf } from "./mate.js";
import type { Contact, Piece } from "./piece.js";
import { solidOf } from "./solid-of.js";

/** A distance, millimetres, and the point of the yielding piece where it is taken, in the layout. */
export interface FitPoint {
  readonly value: number;
  readonly at: Vec3;
}

/** Least and greatest of a distance. */
export interface FitRange {
  readonly least: FitPoint;
  readonly greatest: FitPoint;
}

/** How one contact fits. */
export interface ContactFit {
  readonly contact: Contact;
  /** How far the cut stands open at the worst, millimetres; 0 within rounding. Compare with `contact.gap`. */
  readonly gap: number;
  /** How deep any of the piece lies in its mate, millimetres; 0 within rounding. */
  readonly overlap: number;
  /** Signed distance of the cut from the mate's face, − inside it; absent where none of the cut is onto this mate. */
  readonly cut?: FitRange;
  /** The same of shoulders, the flats that close a branch beside a narrower header: they stand off it by design. */
  readonly shoulder?: FitRange;
  /** Of a miter: signed distance of the cut's rim from the mate's skin, + where this piece stands proud of it. */
  readonly proud?: FitRange;
  /** Where the piece lies deepest in the mate; absent where it does not. */
  readonly deepest?: FitPoint;
}

/**
 * How a contact fits.
 *
 * @param contact - from `solveJoints`
 * @param pieces - with both pieces among them
 * @returns gap and overlap with the points where they are taken; not ok where a piece is missing or has no solid
 * @example
 * ```ts
 * const { pieces, contacts } = solveJoints(model);
 * const fit = fitOf(contacts[0], pieces);
 * if (fit.ok) console.log(fit.value.gap, fit.value.overlap);
 * ```
 */
export function fitOf(contact: Contact, pieces: readonly Piece[]): Result<ContactFit> {
  return measure(contact, bodies(pieces));
}

/**
 * How every contact of a solution fits, in their order.
 *
 * @param solution - pieces and contacts; each piece's solid is made once
 * @example
 * fitsOf(solveJoints(model)).every((fit) => fit.ok && fit.value.overlap === 0);
 */
export function fitsOf(solution: {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
}): Result<ContactFit>[] {
  const of = bodies(solution.pieces);
  return solution.contacts.map((contact) => measure(contact, of));
}

type Bodies = (id: string) => Result<Body>;

function bodies(pieces: readonly Piece[]): Bodies {
  const known = new Map(pieces.map((p) => [p.id, p]));
  const made = new Map<string, Result<Body>>();
  return (id) => {
    const before = made.get(id);
    if (before) return before;
    const piece = known.get(id);
    const result = piece ? bodyFrom(piece) : { ok: false as const, diagnostics: [missing(id)] };
    made.set(id, result);
    return result;
  };
}

function bodyFrom(piece: Piece): Result<Body> {
  const solid = solidOf(piece);
  if (!solid.ok) return solid;
  return { ...solid, value: bodyOf(piece, solid.value) };
}

function missing(id: string): Diagnostic {
  return diagnostic({
    code: "unknown-member",
    members: [id],
    message: `The contact names ${id}, which is not among the pieces.`,
    hint: "Give the pieces of the same solution as the contact.",
  });
}

function measure(contact: Contact, of: Bodies): Result<ContactFit> {
  const [own, other] = [of(contact.piece), of(contact.onto)];
  if (!own.ok) return own;
  if (!other.ok) return other;
  const body = own.value;
  const mate = mateOf(body.piece, other.value);
  const faces = cutFaces(body, contact);
  const others = body.piece.cuts[contact.end].onto.filter((id) => id !== contact.onto).map(of);
  const beside = others.flatMap((m) => (m.ok ? [mateOf(body.piece, m.value)] : []));
  const field = faceMet(contact, body, mate, beside);
  const cut = field && rangeOver(body, faces.onMate, field, mate);
  const shoulder = field && rangeOver(body, faces.shoulders, field, mate);
  const proud = contact.kind === "miter" ? extremesAlong(rimOfCut(body, contact), fromOutline(mate)) : null;
  const deepest = deepestIn(body, mate, cut?.least.at);
  const inside = deepest.value > ROUNDING_MM;
  const placed = ({ value, at }: At): FitPoint => ({ value, at: pointToParent(body.piece.frame, at) });
  const range = ({ least, greatest }: Extremes): FitRange => ({
    least: placed(least),
    greatest: placed(greatest),
  });
  const value: ContactFit = {
    contact,
    gap: cut && cut.greatest.value > ROUNDING_MM ? cut.greatest.value : 0,
    overlap: inside ? deepest.value : 0,
    ...(cut ? { cut: range(cut) } : {}),
    ...(shoulder ? { shoulder: range(shoulder) } : {}),
    ...(proud ? { proud: range(proud) } : {}),
    ...(inside ? { deepest: placed(deepest) } : {}),
  };
  return { ok: true, value, diagnostics: [] };
}
