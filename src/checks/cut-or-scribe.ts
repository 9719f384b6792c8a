/**
 * Cut to length, or leave long and scribe: for each end of each piece, with its reason.
 *
 * The length that counts at an end is the piece's own, from one end's mate to the other's: that is what has to fit between
 * them. The first rule that fits decides:
 *
 * | rule           | when                                                                            | decision                   |
 * | -------------- | ------------------------------------------------------------------------------- | -------------------------- |
 * | `plate-face`   | a plate, a bracket's leg: its ends are its faces                                  | cut                        |
 * | `made`         | this end is cut already, or a post stands on it                                   | made                       |
 * | `counted`      | its length, or this end's angle, follows steps that were only counted             | counted: do not cut        |
 * | `free`         | nothing meets it: sigma does not matter                                           | cut                        |
 * | `bench`        | its mate is in the same welded assembly: both are made to each other              | cut                        |
 * | `set-first`    | its mate is in an assembly that is set later, and is scribed to it                | cut                        |
 * | `set-later`    | its mate is in an assembly that is set earlier, but is not set yet                | scribe, whatever sigma is  |
 * | `not-set`      | it meets a wall that was not measured as found, or a post that is not set         | scribe, whatever sigma is  |
 * | `within-gap`   | k sigma, of the length and of the angle over the section, is within the gap       | cut                        |
 * | `closes`       | it is more, and this end takes it up                                              | scribe                     |
 * | `fitted-first` | it is more, and the other end takes it up                                         | cut                        |
 *
 * Which end takes it up: one that is scribed anyway, else the upper or uphill end, as posts stand on their feet and rails
 * slide down against their lower end; a miter is fitted first. A tread or a floor stands already: what is known of it is its
 * reading, so k sigma decides. What is not set yet will be off by what setting it by tape and mark leaves: one tape reading
 * of the piece's length on top of the design's own. Posts are set first where something is known of posts as set, else the
 * guard is made on the bench as its assemblies say, and the ends on site, feet and walls, take up what is off. How even a
 * floor or a wall is, and what welding pulls, no reading says: none of it is in sigma. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { Contact, Piece } from "../joints/piece.js";
import { endWord, isSteep, sightOf } from "../joints/words.js";
import type { Result } from "../kernel/diagnostic.js";
import { ROUNDING_SHARE } from "../kernel/tolerance.js";
import { NOTHING_SET } from "../layout/as-set/as-set.js";
import type { LayoutAssembly } from "../layout/assemblies.js";
import type { LayoutReport } from "../layout/report-types.js";
import { sayLength } from "../layout/say-length.js";
import { sectionExtent } from "../layout/section-extent.js";
import type { TapeClass } from "../layout/tape.js";
import { decisionReason, type EndDecision, openingOf } from "../layout/uncertainty/end-decision.js";
import { endsOnSite } from "../layout/uncertainty/ends-on-site.js";
import { lengthOf } from "../layout/uncertainty/measures.js";
import { type PieceUncertainty, pieceUncertainties } from "../layout/uncertainty/piece-uncertainty.js";
import type { LaidCase } from "../layout/uncertainty/unknown.js";
import { tapeSigma, unknownsOf } from "../layout/uncertainty/unknowns.js";
import { type Meeting, meetingOf, type Scene } from "./end-meets.js";
import { COVERAGE, checkAllowed, type FitAllowed, leaveLong } from "./leave-long.js";

/** A solved guard, as `buildGuard` returns it. */
export interface SolvedGuard {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  readonly assemblies: readonly LayoutAssembly[];
  readonly report: Pick<LayoutReport, "posts">;
}

/** What is allowed, and how the guard is set. */
export interface FitOptions extends FitAllowed {
  /** Posts are set on site before rails are cut to them; default true where something is known of posts as set. */
  readonly postsFirst?: boolean | undefined;
}

/** Before it is decided who of two ends takes up the length. */
type Draft = EndDecision & { readonly pending: boolean };

const RADIANS = Math.PI / 180;

type Rule = Pick<EndDecision, "decision" | "rule"> & { readonly meets?: string };

/** The rules from `made` on, down to what k sigma has to decide. */
function ruleOf(
  scene: Scene,
  piece: Piece,
  end: 0 | 1,
  known: PieceUncertainty,
  meeting: Meeting,
): Rule | undefined {
  if (piece.kind !== "member") return { decision: "cut", rule: "plate-face", meets: "" };
  const made = scene.asSet.made.find((own) => own.piece.id === piece.id);
  if (made?.set || made?.features.includes(end === 0 ? "start" : "end")) {
    return { decision: "made", rule: "made", meets: "" };
  }
  if (meeting.kind === "stands") return { decision: "made", rule: "made" };
  if (known.onCountedSteps || (meeting.kind !== "nothing" && known.ends[end].onCountedSteps)) {
    return { decision: "counted", rule: "counted" };
  }
  switch (meeting.kind) {
    case "nothing":
      return { decision: "cut", rule: "free" };
    case "bench":
    case "set-first":
      return { decision: "cut", rule: meeting.kind };
    case "set-later":
    case "not-set":
      return { decision: "scribe", rule: meeting.kind };
    case "known":
      return undefined;
  }
}

/** Rails that are held against a plumb face with a block: 1 / cos of their rise (a block is level, the cut is along the rail). */
function alongPerBlock(scene: Scene, piece: Piece, end: 0 | 1): number | undefined {
  if (isSteep(piece.frame)) return undefined;
  const site = scene.onSite.find((own) => own.piece === piece.id && own.end === end);
  const posts = scene.contacts.some(
    (own) => own.piece === piece.id && own.end === end && scene.pieces.get(own.onto)?.role === "post",
  );
  if (site?.on !== "wall" && !posts) return undefined;
  return 1 / Math.hypot(piece.frame.z[0], piece.frame.z[1]);
}

/** Where most of the uncertainty is from: setting what is not set, the site's own place, or an input of the design. */
function mostlyOf(
  scene: Scene,
  piece: Piece,
  known: PieceUncertainty,
  set: Extract<Meeting, { what: string }> | undefined,
): string {
  if (set !== undefined) return `setting ${set.what}`;
  const site = scene.onSite.find((one) => one.piece === piece.id && one.sigma > known.sigmaLength);
  if (site === undefined) return known.mostly;
  return site.on === "floor" ? `the level of ${site.what} there` : `the place of ${site.what}`;
}

function draftOf(
  scene: Scene,
  piece: Piece,
  end: 0 | 1,
  known: PieceUncertainty,
  { gap, k = COVERAGE, tape }: FitOptions & { readonly tape: TapeClass },
): Draft {
  const meeting = meetingOf(scene, piece, end);
  const rule = ruleOf(scene, piece, end, known, meeting);
  const site = scene.onSite.find((one) => one.piece === piece.id && one.end === end);
  const others = scene.onSite.filter((one) => one.piece === piece.id).map((one) => one.sigma);
  const later = meeting.kind === "set-later" || (meeting.kind === "not-set" && site === undefined);
  const setting = later ? tapeSigma(lengthOf(piece), tape) : 0;
  const { depth, halfWidth } = sectionExtent(piece.section);
  const onCounted = known.onCountedSteps;
  const angle = known.ends[end];
  const sigmaLength = onCounted ? null : Math.hypot(known.sigmaLength, setting, ...others);
  const sigmaAngle = angle.onCountedSteps ? null : angle.sigmaAngle;
  const angleOverDepth = sigmaAngle === null ? null : Math.max(depth, 2 * halfWidth) * sigmaAngle * RADIANS;
  const opening = openingOf({ sigmaLength, angleOverDepth });
  const length = leaveLong(opening, { gap, k });
  const within = length.ok && length.value.decision === "cut";
  const decided = rule ?? { decision: "cut", rule: "within-gap" };
  const scribed = decided.decision === "scribe";
  return {
    ...{ piece: piece.id, mark: piece.mark, end, name: endWord(sightOf(piece), end) },
    meets: decided.meets ?? (meeting.kind === "nothing" ? "" : meeting.what),
    ...{ sigmaLength, sigmaAngle, angleOverDepth },
    mostly: onCounted
      ? ""
      : mostlyOf(scene, piece, known, setting > known.sigmaLength && "what" in meeting ? meeting : undefined),
    ...{ gap, k, decision: decided.decision, rule: decided.rule },
    leaveLong: scribed ? k * opening : 0,
    reason: "",
    pending: rule === undefined && !within,
  };
}

/** Of two ends, which is fitted first: a miter, else the lower one, else the first in walking order. */
function firstOf({ cuts, frame }: Piece): 0 | 1 {
  const miters = cuts.map((cut) => cut.kind === "miter");
  if (miters[0] !== miters[1]) return miters[0] ? 0 : 1;
  return frame.z[2] < -ROUNDING_SHARE ? 1 : 0;
}

function closed(scene: Scene, piece: Piece, ends: readonly [Draft, Draft]): EndDecision[] {
  const scribed = ends.some((own) => own.decision === "scribe");
  const both = ends.every((own) => own.pending);
  return ends.map(({ pending, ...own }): EndDecision => {
    const first = pending && (scribed || (both && own.end === firstOf(piece)));
    const rule = !pending ? own.rule : first ? "fitted-first" : "closes";
    const scribe = own.decision === "scribe" || rule === "closes";
    const block = scribe ? alongPerBlock(scene, piece, own.end) : undefined;
    const done: EndDecision = {
      ...own,
      ...{ rule, decision: scribe ? "scribe" : own.decision },
      leaveLong: scribe ? own.k * openingOf(own) : 0,
      ...(block === undefined ? {} : { alongPerBlock: block }),
    };
    return { ...done, reason: decisionReason(done, { exact: sayLength, mark: sayLength }) };
  });
}

/**
 * Decides for every end of every piece.
 *
 * @param laid - the design; the shop, for its tape; what was found as set
 * @param guard - the same design, solved
 * @param options - gap, k, and whether posts are set first
 * @returns two decisions for each piece, in the pieces' order; or `fit-gap-missing`, `bad-coverage`, `sigma-missing`
 * @example
 * const guard = buildGuard(document, shop);
 * const fits = cutOrScribe({ design: guard.design, shop }, guard, { gap: guard.design.gap });
 * if (fits.ok) fits.value[0].reason;
 */
export function cutOrScribe(
  laid: LaidCase,
  guard: SolvedGuard,
  options: FitOptions,
): Result<readonly EndDecision[]> {
  const unknowns = unknownsOf(laid);
  const diagnostics = [...checkAllowed(options), ...unknowns.diagnostics];
  if (!unknowns.ok || diagnostics.length > 0) return { ok: false, diagnostics };
  const known = new Map(
    pieceUncertainties(laid, unknowns.value, guard.contacts).map((own) => [own.piece, own]),
  );
  const asSet = laid.asSet ?? NOTHING_SET;
  const tape = laid.shop?.tape ?? "II";
  const scene: Scene = {
    pieces: new Map(guard.pieces.map((own) => [own.id, own])),
    contacts: guard.contacts,
    onSite: endsOnSite(laid, guard.pieces, guard.contacts, guard.report),
    assemblies: guard.assemblies,
    asSet,
    postsFirst: options.postsFirst ?? asSet.posts.length > 0,
  };
  const value = guard.pieces.flatMap((piece): EndDecision[] => {
    const own = known.get(piece.id);
    if (own === undefined) return [];
    const ends = [0, 1] as const;
    const drafts = ends.map((end) => draftOf(scene, piece, end, own, { ...options, tape })) as [Draft, Draft];
    return closed(scene, piece, drafts);
  });
  return { ok: true, value, diagnostics };
}
