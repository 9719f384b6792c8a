/**
 * Which cuts are beyond the saw, and how else are they made?
 *
 * Every flat cut, and every flat part of a cope, is held against the shop's limits as the papers print it. A cut beyond
 * them is a warning with each other way that the numbers carry: on its side, rolled, across the fence, or square and then
 * finished to the marks. Whether the saw's throat takes the cut is not known: its length is said. Degrees, millimetres.
 *
 * @packageDocumentation
 */
import { atan2Degrees, cosDegrees } from "../joints/degrees.js";
import type { ArrisMark, EndCut, Piece, SawSetting } from "../joints/piece.js";
import { endWord, sightOf } from "../joints/words.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { extentAlong } from "../kernel/region-extent.js";
import { tanDegrees } from "../layout/angles.js";
import type { Shop } from "../layout/document/shop.js";
import { sayLength } from "../layout/say-length.js";
import { rolls, type SawWay, sawWays } from "./saw-ways.js";

/**
 * Cuts that the shop's saw does not reach as they are printed.
 *
 * @param pieces - from `solveJoints` or `buildGuard`; plates and blocked pieces are passed over
 * @param shop - its saw: how far it swings and tilts, degrees from square, either way
 * @returns a `saw-beyond-limit` warning for each such end; pieces that are alike share one
 * @example
 * // A rail that rakes 50°, cut plumb, on a saw that swings and tilts 45°:
 * sawLimits(pieces, { saw: { miter: 45, bevel: 45 } })[0]?.code; // "saw-beyond-limit"
 */
export function sawLimits(
  pieces: readonly Piece[],
  { saw: limits }: Pick<Shop, "saw">,
): readonly Diagnostic[] {
  const sawn = pieces.filter((piece) => piece.kind === "member" && piece.status === "ok");
  const firsts = sawn.filter((piece, i) => sawn.findIndex((own) => own.identity === piece.identity) === i);
  return firsts.flatMap((piece) =>
    piece.cuts.flatMap((cut) => {
      const setting = cut.saw ?? cut.flatPart;
      if (!setting) return [];
      const ways = sawWays(setting, piece.section.shape.kind, limits);
      if (ways[0]?.lie === "upright") return [];
      const alike = sawn.filter((own) => own.identity === piece.identity);
      return [beyond(alike, cut, setting, limits, ways)];
    }),
  );
}

function beyond(
  alike: readonly Piece[],
  cut: EndCut,
  setting: SawSetting,
  limits: Shop["saw"],
  ways: readonly SawWay[],
): Diagnostic {
  const [piece] = alike as [Piece];
  const others = alike.slice(1).map((own) => own.mark);
  const also = others.length === 0 ? "" : ` (and ${others.join(", ")}, cut alike)`;
  const part = cut.saw ? "cut" : "flat part";
  const { miter, bevel, fromSquare } = setting;
  return diagnostic({
    code: "saw-beyond-limit",
    severity: "warning",
    members: alike.map((own) => own.id),
    end: cut.end,
    message:
      `${piece.mark}${also}, ${endWord(sightOf(piece), cut.end)} end: expected a ${part} within the saw's` +
      ` ${degrees(limits.miter)} miter and ${degrees(limits.bevel)} bevel, got miter ${degrees(Math.abs(miter))}` +
      ` and bevel ${degrees(Math.abs(bevel))} from square.`,
    hint: sentence([...ways.map((way) => wayText(way, setting, piece)), byHand(piece, cut, setting)]),
    values: { miter, bevel, fromSquare, miterLimit: limits.miter, bevelLimit: limits.bevel },
  });
}

/** The ways, the first begun with a capital. */
function sentence(ways: readonly string[]): string {
  const all = ways.join(" Or ");
  return `${all.charAt(0).toUpperCase()}${all.slice(1)}`;
}

function wayText({ lie, miter, bevel }: SawWay, setting: SawSetting, piece: Piece): string {
  switch (lie) {
    case "on-side":
      return `turn the tube a quarter onto its side: miter ${degrees(miter)}, bevel ${degrees(bevel)}.`;
    case "rolled":
      return `roll the tube by its clock angle ${degrees(setting.clock)} and cut ${degrees(miter)} plain.`;
    case "across":
      return (
        `roll the tube by its clock angle ${degrees(setting.clock)}, hold it square to the fence against a block and` +
        ` swing ${degrees(miter)}: the cut is ${sayLength(cutLength(piece, setting))} long, the saw must reach that.`
      );
    case "upright":
      return `cut miter ${degrees(miter)}, bevel ${degrees(bevel)} as printed.`;
  }
}

/** Along the cut, from its long point to its short point. */
function cutLength(piece: Piece, { clock, fromSquare }: SawSetting): number {
  const [turn, tilt] = [clock, fromSquare].map((angle) => (angle * Math.PI) / 180) as [number, number];
  const { least, greatest } = extentAlong(piece.section.region.outer, [Math.cos(turn), Math.sin(turn)]);
  return (greatest - least) / Math.cos(tilt);
}

/** The way that needs no saw angle at all. */
function byHand(piece: Piece, { arris }: EndCut, { miter, bevel }: SawSetting): string {
  const blank = `cut it square to its blank, ${sayLength(piece.lengths.blank.value)}, and finish it with a grinder`;
  if (rolls(piece.section.shape.kind)) {
    const marks = arris.map(({ name, offset }: ArrisMark) => `${name} ${sayLength(offset)}`).join("; ");
    return `${blank} to marks past the axis point of the cut (+ outwards): ${marks}.`;
  }
  // On faces that stand the cut runs at atan(gv) from square, on faces that lie at atan(gu), the miter.
  const standing = atan2Degrees(tanDegrees(Math.abs(bevel)), cosDegrees(miter));
  return (
    `${blank} to lines scribed ${degrees(Math.abs(miter))} from square across its lying faces and ${degrees(standing)}` +
    " across its standing ones."
  );
}

/** An angle to 0.01°, so that one that only just passes a limit is seen to; without a sign on zero. */
function degrees(angle: number): string {
  return `${(Math.round(angle * 100) / 100 + 0).toFixed(2)}°`;
}
