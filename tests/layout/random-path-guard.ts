/**
 * Random guards of up to four legs with plan turns, on either side or both, for the property tests of this folder.
 */
import fc from "fast-check";
import type { Loose } from "./designs.js";

const mm = (min: number, max: number) => fc.integer({ min, max });

/** A random design document. */
export const pathGuard = fc
  .record({
    risers: fc.array(mm(3, 9), { minLength: 2, maxLength: 2 }),
    riser: mm(150, 200),
    going: mm(240, 320),
    top: mm(850, 1100),
    higher: fc.constantFrom(0, 0, 150),
    how: fc.constantFrom("meet", "drop", "compromise", "riser"),
    rail: fc.constantFrom("round 48.3 x 3.2", "square 40 x 3", "rect 60 x 40 x 3"),
    post: fc.constantFrom("round 42.4 x 2.6", "square 40 x 3"),
    low: fc.constantFrom("square 25 x 2", "round bar 16"),
    turns: fc.array(fc.constantFrom(0, 90, -90, 60, -35), { minLength: 3, maxLength: 3 }),
    corner: fc.constantFrom("post", "level"),
    legs: mm(1, 4),
    floor: fc.boolean(),
    wall: fc.boolean(),
    both: fc.boolean(),
  })
  .map((g): Loose => {
    const turn = (i: number, more: Loose) =>
      g.turns[i] === 0
        ? {}
        : {
            turn: {
              ...{ angle: g.turns[i], corner: g.corner, ...more },
              ...(g.corner === "post" ? { section: "corner", above: 40, cap: 5 } : {}),
            },
          };
    const stair = (n: number) => ({
      ...{ along: "stair", top: g.top, undersides: { low: 60 } },
      stair: { risers: g.risers[n], floorToFloor: g.risers[n]! * g.riser, going: g.going, overhang: 20 },
      posts: { onTreads: [1, g.risers[n]! - 1], behindNosing: 80 },
    });
    const landing = { along: "landing", top: g.top, undersides: { low: 60 } };
    const all = [
      stair(0),
      { ...landing, length: 1600, ...turn(0, { past: 400 }), posts: { at: [600, 1200] } },
      // Straight on, the landing ends at the next nosing; at a corner, 500 in front of it.
      { ...stair(1), ...turn(1, { before: 500 }) },
      {
        ...{ ...landing, top: g.top + g.higher, length: 1500, ...turn(2, { past: 400 }) },
        ...(g.turns[2] === 0 && g.higher > 0 ? { break: g.how } : {}),
        posts: { spacing: { from: 400, to: 1300, greatest: 700 } },
        ...(g.wall ? { end: { type: "wall", endPlate: 8 } } : {}),
      },
    ].slice(0, g.legs);
    if (g.legs === 2 && g.wall) Object.assign(all[1]!, { end: { type: "wall", endPlate: 8 } });
    const floor = {
      along: "floor",
      top: g.top,
      undersides: { low: 60 },
      posts: { at: [g.going + 300, g.going + 900] },
    };
    return {
      ...{ version: 1, job: "Random path", unit: "mm", side: g.both ? "both" : "left" },
      stair: { risers: 4, floorToFloor: 700, going: 260, width: 1100, inset: 60 },
      sections: { rail: g.rail, post: g.post, low: g.low, corner: "square 60 x 4" },
      rails: [
        { role: "top", section: "rail" },
        { id: "low", role: "lower", section: "low" },
      ],
      posts: { section: "post" },
      foot: { thickness: 8, along: 90, across: 90, holes: { diameter: 11, along: 60, across: 60 } },
      legs: g.floor ? [floor, ...all] : all,
    };
  });

/** Turns a design over: the other side, turns the other way. */
export function mirrored(document: Loose): Loose {
  const other = structuredClone(document);
  other.side = "right";
  for (const leg of other.legs) if (leg.turn) leg.turn.angle = -leg.turn.angle;
  return other;
}
