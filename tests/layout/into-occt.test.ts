/**
 * Each way to build a guard, written as STEP and read back by Open CASCADE Technology (npm replicad-opencascadejs): as many
 * solids as pieces, every one valid and closed, volumes as our own exact integrals.
 */
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { toStep } from "../../src/export/index.js";
import { massOf, solidOf } from "../../src/joints/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { loadStepReader, type StepReader } from "../support/step-occt.js";
import { example, type Loose } from "./designs.js";

const LOFT = readFileSync(new URL("../../examples/kiln-loft.json", import.meta.url), "utf8");

const studio = (change: (d: Loose) => void) =>
  example((d) => {
    d.endPosts = undefined;
    change(d);
  });
const loft = (change: (d: Loose) => void) => {
  const document: Loose = JSON.parse(LOFT);
  change(document);
  return document;
};
const bare = (d: Loose) => {
  delete d.infill;
  for (const leg of d.legs) leg.undersides = {};
};

/** What is built, and how. Heights of direct corners by hand, see corners.test.ts. */
const WAYS: readonly (readonly [string, Loose])[] = [
  ["a corner post, plumb bars, a handrail on brackets", loft(() => undefined)],
  [
    "a level piece before the corner",
    loft((d) => {
      bare(d);
      d.legs[0].top = "42";
      d.legs[1].turn = { angle: 90, past: "3", corner: "level" };
    }),
  ],
  [
    "round tube mitred at the corner",
    loft((d) => {
      bare(d);
      delete d.handrails;
      Object.assign(d.sections, { rail: "round 1.900 x 0.145", post: "square 1-1/2 x 0.120" });
      d.posts.section = "post";
      d.legs[1].turn = { angle: 90, past: "3", corner: "round" };
      d.legs[1].top = "37.8365";
    }),
  ],
  [
    "square tube with its twist split",
    loft((d) => {
      bare(d);
      delete d.handrails;
      d.legs[1].turn = { angle: 90, past: "3", corner: "twist" };
      d.legs[1].top = "37.8783";
    }),
  ],
  [
    "a break held by a plumb leg, a return to the post, a panel a bay",
    studio((d) => {
      d.legs[0].top = "36";
      d.legs[1].break = "drop";
      d.legs[0].start = { type: "return", to: "post", overhang: "6", down: "12" };
      d.infill = { type: "panel", thickness: "1/8", clear: "1/2" };
    }),
  ],
  [
    "posts on a stringer's face, a spliced rail under a cap, a break by compromise",
    studio((d) => {
      Object.assign(d.sections, {
        cap: "flat 2 x 1/2",
        rail: "square 1-1/2 x 0.120",
        sleeve: "square bar 1.2",
      });
      d.rails.splice(1, 0, { role: "cap", section: "cap" });
      d.legs[0].top = "38";
      d.legs[1].break = "compromise";
      d.splices = [{ leg: "stair", at: "50", sleeve: "sleeve", reach: "3" }];
      const holes = { diameter: "9/16", along: "2 1/2", across: "4" };
      const plate = { thickness: "3/8", along: "4", height: "6", centre: "4", holes };
      d.legs[0].foot = { type: "side", below: "8", plate, packer: "1/4" };
    }),
  ],
];

describe("every way to build a guard", () => {
  let read: StepReader;
  beforeAll(async () => {
    read = await loadStepReader();
  }, 60_000);

  it.each(WAYS)(
    "%s: valid closed solids of the right volumes",
    (_, document) => {
      const guard = buildGuard(document);
      expect(guard.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
      const named = guard.pieces.map((piece) => {
        const solid = solidOf(piece);
        if (!solid.ok) throw new Error(`${piece.id} has no solid`);
        return { name: piece.mark, solid: solid.value, frame: piece.frame };
      });
      const text = toStep(named);
      if (!text.ok) throw new Error(text.diagnostics.map((d) => d.message).join());
      const solids = read(text.value);
      expect(solids).toHaveLength(named.length);
      for (const solid of solids ?? []) expect([solid.valid, solid.closed]).toEqual([true, true]);
      const ours = guard.pieces.map((piece) => {
        const mass = massOf(piece);
        return mass.ok ? mass.value.volume : Number.NaN;
      });
      const theirs = (solids ?? []).map((solid) => solid.volume);
      const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b);
      sorted(ours).forEach((volume, i) => {
        expect(Math.abs((sorted(theirs)[i] as number) / volume - 1)).toBeLessThan(1e-6);
      });
    },
    120_000,
  );
});
