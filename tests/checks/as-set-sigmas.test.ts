/**
 * What is known of a piece between posts as set, by closed form. Level bays: the place of each post counts once, and its lean
 * over the height of the rail above its base, σ² = 2 (σx² + (z σlean)²); a post's own height has its base's.
 */
import { describe, expect, it } from "vitest";
import { type AsSet, solveAsSet } from "../../src/layout/index.js";
import { layOut } from "../../src/layout/lay-out.js";
import { designOf, document, knownOf } from "../layout/uncertainty/fit-designs.js";

const SIGMA = { x: 0.5, z: 0.4, lean: 0.05 };

const design = designOf(document());
const posts = layOut(design).report.posts.map(({ mark, x, baseZ }) => ({
  ...{ post: mark, stage: "set" as const, x: x + 1.5, baseZ: baseZ - 0.5 },
  ...{ lean: 0, leanAcross: 0, across: 0, sigma: SIGMA, path: `posts.${mark}` },
}));
const asSet: AsSet = {
  posts,
  legs: [{ leg: "landing", length: 2003, sigma: 0.4, path: "legs[0]" }],
  made: [],
};
const laid = layOut(design, undefined, asSet);

describe("posts as set", () => {
  const known = knownOf({ design, asSet }, { ...laid, design, ...solveAsSet(laid, asSet) });

  it("give a level bay the places and leans of its two posts", () => {
    const own = laid.members.find((one) => one.id === "bay-5-low")!;
    const post = laid.members.find((one) => one.id === "landing-post-2")!;
    // Posts lean about their base, a plate's thickness below the tube.
    const high = own.from[2] - post.from[2] + 10;
    const sigma = Math.hypot(SIGMA.x, (high * SIGMA.lean * Math.PI) / 180);
    expect(Math.abs(known.get(own.id)!.sigmaLength - Math.SQRT2 * sigma)).toBeLessThan(0.01);
    expect(known.get(own.id)!.mostly).toMatch(/^the place of P\d as set$/);
  });

  it("give a post the base it stands on", () => {
    // The landing's slope tilts rail and floor, the floor stays as measured: level reading 0.1° over 80 mm and the 1.5 set off.
    const slope = 81.5 * Math.tan(Math.PI / 1800);
    const wanted = Math.hypot(SIGMA.z, slope);
    expect(Math.abs(known.get("landing-post-1")!.sigmaLength - wanted)).toBeLessThan(0.01);
  });
});
