/** Documents with handrails for the tests of this folder: the example with one, and two flights with a landing between two turns. */
import type { Loose } from "./designs.js";

export const INCH = 25.4;

/** The example's change that gives it a handrail along the stair, in inches. */
export function handrailOf(own: Loose = {}): (document: Loose) => void {
  return (document) => {
    document.sections.hand = "round 1-1/2 x 0.120";
    document.sections.arm = "round bar 1/2";
    document.handrails = [
      {
        ...{ section: "hand", height: "36", inward: "4", legs: ["stair"] },
        bottom: { extend: "12", return: "ground", endPlate: "1/4" },
        top: { extend: "12", return: "post" },
        brackets: { from: "posts", section: "arm", drop: "3" },
        ...own,
      },
    ];
  };
}

/** Two flights round a landing, millimetres; posts 50 square so that corner posts take the top rail. */
export function twoFlights(
  own: { side: string; angle: number; before?: number; corner?: string },
  change: (document: Loose) => void = () => undefined,
): Loose {
  const { side, angle, before = 300, corner = "level" } = own;
  const document: Loose = {
    ...{ version: 1, job: "Two flights round a landing (invented)", unit: "mm", side },
    stair: { risers: 6, floorToFloor: 1050, going: 280, width: 1400, inset: 60 },
    sections: {
      ...{ rail: "round 42.4 x 3.2", post: "square 42.4 x 3", hand: "round 42.4 x 3.2" },
      ...{ arm: "round bar 14", toe: "flat 100 x 6", corner: "square 60 x 4" },
    },
    rails: [{ role: "top", section: "rail" }],
    posts: { section: "post" },
    legs: [
      { along: "stair", top: 1000, posts: { onTreads: [1, 3, 5], behindNosing: 100 } },
      {
        ...{ along: "landing", top: 1000, length: 1400, posts: { at: [300, 1100] } },
        turn: { angle, past: 420, corner },
      },
      {
        ...{ along: "stair", top: 1000, posts: { onTreads: [1, 4], behindNosing: 100 } },
        stair: { risers: 5, floorToFloor: 875, going: 280 },
        turn: { angle, before, corner },
      },
      { along: "landing", top: 1000, length: 1500, posts: { at: [200, 1400] } },
    ],
    handrails: [
      {
        ...{ section: "hand", height: 900, inward: 90, bottom: { extend: 300 }, top: {} },
        brackets: { from: "posts", section: "arm", drop: 70 },
      },
    ],
  };
  if (corner === "post") for (const i of [1, 2]) document.legs[i].turn.section = "corner";
  change(document);
  return document;
}
