/**
 * Does what is made still fit where the layout now puts it?
 *
 * Every made end is measured against its mates' own faces (`fitsOf`), every drilled hole against the line it is wanted on.
 * An end fits while it stands open by no more than the fit gap, or the root gap it was cut with and half a mark, and no more
 * of it lies in its mate than the fit gap less that root gap, or half a mark (`MARK_MM`): what is cut to its marks may be off by
 * so much itself. Under two mitred rails a root gap is by nature wider at the ridge: there an
 * end may stand open as far as one that would be cut now. Millimetres.
 *
 * @packageDocumentation
 */
import { type ContactFit, fitOf, fitsOf } from "../../joints/contact-fit.js";
import type { Joint } from "../../joints/joint.js";
import type { Contact, Piece } from "../../joints/piece.js";
import type { JointSolution } from "../../joints/solve-types.js";
import { endWord, sightOf } from "../../joints/words.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { MARK_MM, ON_SURFACE_MM } from "../../kernel/tolerance.js";
import { sayLength } from "../say-length.js";
import type { Feature, MadePiece } from "./as-set.js";
import { holeMisfits } from "./hole-misfit.js";
import type { MadeMisfit } from "./made-misfit.js";

/** Misfits as data, and the same as findings. */
export interface MadeFit {
  readonly misfits: readonly MadeMisfit[];
  readonly diagnostics: readonly Diagnostic[];
}

/** What the fit is measured on. */
export interface MadeFitInput {
  readonly solution: JointSolution;
  readonly joints: readonly Joint[];
  /** By id. */
  readonly made: ReadonlyMap<string, MadePiece>;
  /** How far a joint may stand open, mm. */
  readonly fitGap: number;
  /** The same model with nothing made; asked for only where a root gap runs under two rails. */
  readonly anew: () => JointSolution;
}

const featureAt = (end: 0 | 1): Feature => (end === 0 ? "start" : "end");

/**
 * Measures everything that is made.
 *
 * @returns misfits in the pieces' order. Diagnostics: `made-misfit`
 */
export function madeFit(input: MadeFitInput): MadeFit {
  const { solution, joints, made, fitGap } = input;
  const byId = new Map(solution.pieces.map((own) => [own.id, own]));
  const isMade = ({ piece, end }: Contact): boolean =>
    made.get(piece)?.features.includes(featureAt(end)) === true;
  const contacts = solution.contacts.filter(isMade);
  const fits = fitsOf({ pieces: solution.pieces, contacts });
  const ends = contacts.flatMap((contact, i) => {
    const fit = fits[i];
    return fit?.ok ? endMisfits(fit.value, byId.get(contact.piece) as Piece, input) : [];
  });
  const misfits = solution.pieces.flatMap((piece) => {
    const holes = made.get(piece.id)?.features.includes("holes") === true;
    return [
      ...ends.filter((own) => own.misfit.piece === piece.id),
      ...(holes ? holeMisfits(piece, joints, byId, fitGap).map((misfit): Found => ({ misfit })) : []),
    ];
  });
  return {
    misfits: misfits.map((own) => own.misfit),
    diagnostics: misfits.map((own) => finding(own, byId, made)),
  };
}

/** A misfit, and where in the layout it is worst. */
interface Found {
  readonly misfit: MadeMisfit;
  readonly at?: Diagnostic["point"];
}

function endMisfits(fit: ContactFit, piece: Piece, { fitGap, anew }: MadeFitInput): Found[] {
  const { contact } = fit;
  const { end, onto, gap } = contact;
  const common = { piece: piece.id, feature: featureAt(end), onto };
  const cutFor = piece.cuts[end].onto;
  if (!cutFor.includes(onto)) return [{ misfit: { ...common, kind: "no-mate", by: 0, allowed: 0 } }];
  const open = Math.max(fitGap, gap + MARK_MM);
  const under = Math.max(MARK_MM, fitGap - gap);
  const opened =
    fit.gap > open + ON_SURFACE_MM ? Math.max(open, asCutNow(contact, cutFor, anew) + MARK_MM) : open;
  const found: Found[] = [];
  if (fit.gap > opened + ON_SURFACE_MM) {
    const misfit: MadeMisfit = { ...common, kind: "stands-off", by: fit.gap, allowed: opened };
    found.push({ misfit, ...(fit.cut && { at: fit.cut.greatest.at }) });
  }
  if (fit.overlap > under + ON_SURFACE_MM) {
    const misfit: MadeMisfit = { ...common, kind: "overlaps", by: fit.overlap, allowed: under };
    found.push({ misfit, ...(fit.deepest && { at: fit.deepest.at }) });
  }
  return found;
}

/** How far an end cut now would stand open by its root gap; 0 where that is the gap itself. */
function asCutNow(contact: Contact, mates: readonly string[], anew: MadeFitInput["anew"]): number {
  if (contact.gap === 0 || mates.length < 2) return 0;
  const { contacts, pieces } = anew();
  const same = contacts.find(
    (own) => own.piece === contact.piece && own.end === contact.end && own.onto === contact.onto,
  );
  const fit = same && fitOf(same, pieces);
  return fit?.ok ? fit.value.gap : 0;
}

function finding(
  { misfit, at }: Found,
  byId: ReadonlyMap<string, Piece>,
  made: ReadonlyMap<string, MadePiece>,
): Diagnostic {
  const piece = byId.get(misfit.piece) as Piece;
  const mate = byId.get(misfit.onto);
  const { message, hint } = words(misfit, piece, mate?.mark ?? misfit.onto);
  return diagnostic({
    code: "made-misfit",
    severity: misfit.kind === "spare-hole" ? "note" : "warning",
    path: made.get(misfit.piece)?.path ?? "",
    members: mate ? [piece.id, mate.id] : [piece.id],
    ...(misfit.feature === "holes" ? {} : { end: misfit.feature === "start" ? 0 : 1 }),
    ...(misfit.hole === undefined ? {} : { bore: misfit.hole }),
    ...(at && { point: at }),
    message,
    hint,
    values: { kind: misfit.kind, by: misfit.by, allowed: misfit.allowed },
  });
}

function words(misfit: MadeMisfit, piece: Piece, mate: string): { message: string; hint: string } {
  const { kind, by, allowed, feature, hole } = misfit;
  const own =
    feature === "holes" ? `hole ${hole}` : `${endWord(sightOf(piece), feature === "start" ? 0 : 1)} end`;
  const what = `${piece.mark}: its ${own} is made already`;
  switch (kind) {
    case "stands-off":
      return {
        message: `${what} and stands off ${mate} by up to ${sayLength(by)}: expected at most ${sayLength(allowed)}.`,
        hint: "Shim or fill it if the weld allows that, move the piece, or make it anew; no figure hides it.",
      };
    case "overlaps":
      return {
        message: `${what} and overlaps ${mate} by up to ${sayLength(by)}: expected at most ${sayLength(allowed)}.`,
        hint: "Recut it by that much there, or move the piece.",
      };
    case "no-mate":
      return {
        message: `${what}, cut for ${piece.cuts[feature === "start" ? 0 : 1].onto.join(" and ") || "nothing"}: expected a cut for ${mate}; its fit there is not measured.`,
        hint: "Recut it, or keep the design at this end as it was.",
      };
    case "off-line":
      return {
        message: `${what} and is ${sayLength(by)} off the line of ${mate}: expected at most ${sayLength(allowed)}.`,
        hint: "Open the hole up, move the piece, or drill a new one.",
      };
    case "no-hole":
      return {
        message: `${piece.mark}: its holes are drilled already: expected one for ${mate} (${hole}), got none.`,
        hint: "Drill it on the spot, or take the holes out of what is made and mark them again.",
      };
    case "spare-hole":
      return {
        message: `${what}: expected no hole there any more.`,
        hint: "Plug it, or keep the design as it was.",
      };
  }
}
