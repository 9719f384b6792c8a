/**
 * A list of what differs, filled number by number: each is kept only when it moved by more than the least that counts.
 *
 * @packageDocumentation
 */
import type { MeasuredLength } from "../../joints/piece.js";
import type { ChangedPart, NumberChange } from "./change-types.js";

/** What is compared with, and what has been found so far. */
export interface Differences {
  readonly found: NumberChange[];
  /** What moved by no more is left out: mm, and degrees. */
  readonly over: number;
  readonly overAngle: number;
  length(part: ChangedPart, what: string, old: number | undefined, now: number | undefined): void;
  /** A length with the points it runs between; `moved` where other points than before are to be told. */
  measured(
    part: ChangedPart,
    what: string,
    old: MeasuredLength | undefined,
    now: MeasuredLength | undefined,
    moved?: boolean,
  ): void;
  angle(part: ChangedPart, what: string, old: number | undefined, now: number | undefined): void;
  /** A direction round a tube: 359 is 2 from 1. */
  turn(part: ChangedPart, what: string, old: number | undefined, now: number | undefined): void;
  word(part: ChangedPart, what: string, old: string | undefined, now: string | undefined): void;
}

function betweenOf(length: MeasuredLength | undefined): string {
  return length ? `from ${length.from.name} to ${length.to.name}` : "";
}

/**
 * An empty list.
 *
 * @param over - mm, and `overAngle` degrees: what moved by no more is left out
 * @param made - tells of a part whether it is made already
 */
export function differences(
  over: number,
  overAngle: number,
  made: (part: ChangedPart) => boolean,
): Differences {
  const found: NumberChange[] = [];
  const put = (
    part: ChangedPart,
    what: string,
    unit: NumberChange["unit"],
    old: number | string | undefined,
    now: number | string | undefined,
    difference: number | null,
  ): void => {
    found.push({ part, what, unit, old: old ?? null, new: now ?? null, difference, made: made(part) });
  };
  const number =
    (unit: "mm" | "degree", least: number, between: (old: number, now: number) => number) =>
    (part: ChangedPart, what: string, old: number | undefined, now: number | undefined): void => {
      if (old === undefined && now === undefined) return;
      const difference = old === undefined || now === undefined ? null : between(old, now);
      if (difference !== null && !(Math.abs(difference) > least)) return;
      put(part, what, unit, old, now, difference);
    };
  const plain = (old: number, now: number): number => now - old;
  return {
    found,
    over,
    overAngle,
    length: number("mm", over, plain),
    measured: (part, what, old, now, moved = false) => {
      const before = found.length;
      number("mm", over, plain)(part, what, old?.value, now?.value);
      const [row] = found.splice(before, 1);
      if (row)
        found.push({
          ...row,
          between: {
            old: betweenOf(old),
            new: betweenOf(now),
            moved: moved && betweenOf(old) !== betweenOf(now),
          },
        });
    },
    angle: number("degree", overAngle, plain),
    turn: number("degree", overAngle, (old, now) => ((((now - old + 180) % 360) + 360) % 360) - 180),
    word: (part, what, old, now) => {
      if (old !== now) put(part, what, "word", old, now, null);
    },
  };
}
