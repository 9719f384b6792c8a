/**
 * How well are the length of a piece and the angles at its ends known?
 *
 * First order: variance g·C·g, C the covariance of what was measured (JCGM 100:2008, 5.2), g the derivatives by differences
 * through the layout itself: every input is moved a step either way and the guard laid out again, nothing is solved. The line
 * of least greatest miss over measured nosings has kinks: it leaves one nosing for another. Where the two sides of a step
 * differ, the steeper one counts, and of the steeper ones, all forward and all backward ones the greatest variance: a kink
 * within a step cannot hide. Where many nosings all but carry the line together, that is up to 2.5 times what draws of the
 * readings spread, mostly within a sixth, and never less than the draws can tell (`tests/layout/uncertainty/monte-carlo`). The
 * steps do not depend on how good a reading is, so a better one never makes a sigma greater.
 * Millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { Contact } from "../../joints/piece.js";
import { HANGS_MM, KINK_SHARE } from "../../kernel/tolerance.js";
import type { Member } from "../../members/member.js";
import type { AsSet } from "../as-set/as-set.js";
import type { Design } from "../document/design.js";
import type { Shop } from "../document/shop.js";
import { type Layout, layOut } from "../lay-out.js";
import { dot, type Matrix, times } from "../survey/factor.js";
import { countOf, endOfMeasure, type Measures, type MemberMates, measuresOf } from "./measures.js";
import { type LaidCase, movedCase, sayUnknown, stepOf, type Unknown } from "./unknown.js";
import type { Unknowns } from "./unknowns.js";

/** One end. */
export interface EndUncertainty {
  /** Standard uncertainty of the angle to what it meets, the greatest where it meets several, degrees. */
  readonly sigmaAngle: number;
  /** True where the angle follows counted steps. */
  readonly onCountedSteps: boolean;
}

/** One piece. */
export interface PieceUncertainty {
  /** Id of the piece. */
  readonly piece: string;
  /** Standard uncertainty of its length from mate to mate, mm. */
  readonly sigmaLength: number;
  /** True where the length follows counted steps. */
  readonly onCountedSteps: boolean;
  /** The reading most of it comes from, in words; empty where it hangs on none. */
  readonly mostly: string;
  readonly ends: readonly [EndUncertainty, EndUncertainty];
}

/** What one unknown does to one measure: per millimetre or degree, forward, backward, and the one that counts. */
interface Slopes {
  readonly forward: number;
  readonly backward: number;
  readonly counts: number;
}

const STILL: Slopes = { forward: 0, backward: 0, counts: 0 };

function slopesOf(forward: number | undefined, backward: number | undefined): Slopes {
  const [f, b] = [forward ?? backward ?? 0, backward ?? forward ?? 0];
  const steeper = Math.abs(f) >= Math.abs(b) ? f : b;
  // Where there is no kink both sides together are nearer the slope than either.
  const middle = (f + b) / 2;
  const smooth = Math.abs(f - b) <= KINK_SHARE * Math.abs(steeper);
  return smooth
    ? { forward: middle, backward: middle, counts: middle }
    : { forward: f, backward: b, counts: steeper };
}

/** Ids of a layout's members in one word: where they change, as one more bar goes in, numbers no longer mean the same pieces. */
const namesOf = (members: readonly Member[]): string => members.map((own) => own.id).join(" ");

/** A layout of everything a case has. */
const lay: (design: Design, shop?: Shop, asSet?: AsSet) => Pick<Layout, "members"> = layOut;

const membersOf = ({ design, shop, asSet }: LaidCase): readonly Member[] => lay(design, shop, asSet).members;

interface Side {
  readonly alike: boolean;
  readonly measures: readonly (Measures | undefined)[];
}

/** Slopes by member and measure; of a side that has other members only where the other has them too. */
function slopesBy(
  laid: LaidCase,
  own: Unknown,
  wanted: readonly MemberMates[],
  base: { readonly names: string; readonly measures: readonly (Measures | undefined)[] },
): readonly (readonly Slopes[] | undefined)[] {
  const step = stepOf(laid, own);
  const [up, down] = [step, -step].map((by) => {
    const members = membersOf(movedCase(laid, own, by));
    const alike = namesOf(members) === base.names;
    return { alike, measures: measuresOf(members, wanted) };
  }) as [Side, Side];
  return wanted.map((_, i) => {
    const here = base.measures[i];
    const one = up.alike !== down.alike;
    const [forward, backward] = [up, down].map((side) => (one && !side.alike ? undefined : side.measures[i]));
    if (here === undefined || (forward === undefined && backward === undefined)) return undefined;
    return here.map((value, k) =>
      slopesOf(
        forward === undefined ? undefined : ((forward[k] as number) - value) / step,
        backward === undefined ? undefined : (value - (backward[k] as number)) / step,
      ),
    );
  });
}

/** Greatest of the variances, and which unknown has the greatest share in the one that counts. */
function spread(covariance: Matrix, slopes: readonly Slopes[]) {
  const quadratic = (g: readonly number[]) => Math.max(dot(g, times(covariance, g)), 0);
  const counts = slopes.map((own) => own.counts);
  const product = times(covariance, counts);
  const sides = slopes.some((own) => own.forward !== own.backward)
    ? [slopes.map((own) => own.forward), slopes.map((own) => own.backward)]
    : [];
  const variance = Math.max(dot(counts, product), 0, ...sides.map(quadratic));
  const shares = product.map((value, i) => Math.abs(value * (counts[i] as number)));
  const most = shares.indexOf(Math.max(...shares));
  return { sigma: Math.sqrt(variance), most: (shares[most] ?? 0) > 0 ? most : -1 };
}

/** Whom the ends of each member meet, as the solver found; its order is the members'. */
export function matesOf(members: readonly Member[], contacts: readonly Contact[]): MemberMates[] {
  const known = new Set(members.map((own) => own.id));
  const met = (id: string, end: 0 | 1) =>
    contacts
      .filter((own) => own.piece === id && own.end === end && own.kind !== "flush" && known.has(own.onto))
      .map((own) => own.onto);
  return members.map(({ id }) => ({ id, mates: [met(id, 0), met(id, 1)] }));
}

/**
 * The uncertainty of every piece of a guard.
 *
 * @param laid - design, shop and what was found as set
 * @param unknowns - from `unknownsOf`
 * @param contacts - of the solved guard: who meets whom
 * @returns one entry for each member, in their order. Costs two layouts for every unknown.
 * @example
 * const guard = buildGuard(document);
 * const found = unknownsOf({ design: guard.design });
 * if (found.ok) pieceUncertainties({ design: guard.design }, found.value, guard.contacts)[0].sigmaLength;
 */
export function pieceUncertainties(
  laid: LaidCase,
  unknowns: Unknowns,
  contacts: readonly Contact[],
): readonly PieceUncertainty[] {
  const members = membersOf(laid);
  const wanted = matesOf(members, contacts);
  const base = { names: namesOf(members), measures: measuresOf(members, wanted) };
  const through = (own: Unknown) => slopesBy(laid, own, wanted, base);
  const [measured, unmeasured] = [unknowns.measured.map(through), unknowns.unmeasured.map(through)];
  return wanted.map((mates, i): PieceUncertainty => {
    const own = measured.map((all) => all[i]);
    const counted = unmeasured.map((all) => all[i]);
    const spreads = Array.from({ length: countOf(mates) }, (_, k) =>
      spread(
        unknowns.covariance,
        own.map((all) => all?.[k] ?? STILL),
      ),
    );
    const hangs = (k: number) =>
      counted.some((all) => all === undefined || Math.abs(all[k]?.counts ?? 0) > HANGS_MM);
    const [length, ...angles] = spreads as [(typeof spreads)[0], ...typeof spreads];
    const end = (side: 0 | 1): EndUncertainty => {
      const ks = angles.map((_, k) => k + 1).filter((k) => endOfMeasure(mates, k) === side);
      return {
        sigmaAngle: Math.max(...ks.map((k) => spreads[k]?.sigma ?? 0)),
        onCountedSteps: ks.some(hangs),
      };
    };
    const most = unknowns.measured[length.most];
    return {
      piece: mates.id,
      sigmaLength: length.sigma,
      onCountedSteps: hangs(0),
      mostly: most === undefined ? "" : sayUnknown(laid, most),
      ends: [end(0), end(1)],
    };
  });
}
