/**
 * Does it get in? An assembly against a door, a corner, a stair's turn and the longest piece that was found to get up.
 *
 * Each answer is a number, its limit and what it rests on. The assembly counts as its box; a box is carried with its
 * longest side ahead. No room for hands, padding or handrails is in any limit. Millimetres.
 *
 * @packageDocumentation
 */
import { ROUNDING_MM } from "../kernel/tolerance.js";
import type { Access, PassageTurn } from "../layout/document/shop.js";
import { longestRound, longestWithin } from "./round-corner.js";

/** The flights run into the corner like corridors; what their slope gives or takes is left out. */
const STAIR = "a square corner on a level landing, the flights' slope left out";

/** Sizes over all, mm, in any order. */
export interface CarriedBox {
  readonly length: number;
  readonly depth: number;
  readonly thickness: number;
}

/** One place on the way in. */
export interface Passage {
  readonly through: "door" | "corridor" | "stair" | "longest";
  /** What of the assembly is held against the limit. */
  readonly what: "depth" | "length";
  /** mm. */
  readonly value: number;
  /** The most that gets through with the assembly's other sizes, mm. */
  readonly limit: number;
  readonly fits: boolean;
  /** How it is carried and what is taken for granted. */
  readonly assumption: string;
}

/**
 * Every place of the way in that the shop file has.
 *
 * @param box - of the assembly, see `AssemblyReport.box`
 * @param access - from the shop file
 * @returns door, corridor, stair and longest, those that are known
 * @example
 * fitsThrough({ length: 3000, depth: 1100, thickness: 60 }, { corridor: { from: 1000, to: 1000 } })[0]?.limit;
 * // 2708.43: the rod's √8 m less twice the thickness
 */
export function fitsThrough(box: CarriedBox, access: Access): readonly Passage[] {
  const [thickness, depth, length] = [box.length, box.depth, box.thickness].sort((a, b) => a - b) as [
    number,
    number,
    number,
  ];
  const sides: CarriedBox = { length, depth, thickness };
  const { door, corridor, stair, longest } = access;
  return [
    ...(door
      ? [
          passage("door", "depth", depth, {
            limit: longestWithin(thickness, [door.width, door.height]),
            assumption:
              "carried end on, with room for its length on both sides of the door; tilted if need be",
          }),
        ]
      : []),
    ...(corridor
      ? [passage("corridor", "length", length, aroundTurn(sides, corridor, "a square corner"))]
      : []),
    ...(stair ? [passage("stair", "length", length, aroundTurn(sides, stair, STAIR))] : []),
    ...(longest === undefined
      ? []
      : [
          passage("longest", "length", length, {
            limit: longest,
            assumption: "the longest piece that was found to get up, whatever its depth",
          }),
        ]),
  ];
}

function passage(
  through: Passage["through"],
  what: Passage["what"],
  value: number,
  { limit, assumption }: Pick<Passage, "limit" | "assumption">,
): Passage {
  return { through, what, value, limit, fits: value <= limit + ROUNDING_MM, assumption };
}

/** The longest that goes round with these two other sides: on edge or lying flat, whichever lets more round. */
function aroundTurn(
  { depth, thickness }: CarriedBox,
  turn: PassageTurn,
  corner: string,
): Pick<Passage, "limit" | "assumption"> {
  const onEdge = carriedRound(thickness, depth, turn);
  const flat = carriedRound(depth, thickness, turn);
  const [limit, lies] = flat > onEdge ? [flat, "lying flat"] : [onEdge, "on edge"];
  const tipped =
    turn.height === undefined
      ? "level; the height there is not known"
      : "tipped lengthwise within the height there if need be";
  return { limit, assumption: `${corner}, carried ${lies}, ${tipped}` };
}

/** In plan it is as thick as `across`; in its plumb plane it stays between floor and ceiling. */
function carriedRound(across: number, upright: number, { from, to, height }: PassageTurn): number {
  const plan = longestRound({ from, to, thickness: across });
  return height === undefined || plan === 0 ? plan : longestWithin(upright, [plan, height]);
}
