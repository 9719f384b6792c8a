/** Points along edges: on both surfaces, on every ruling, within the chord of the edge, each edge once. */
import { describe, expect, it } from "vitest";
import { toTriangle } from "../../../bench/deviation.mjs";
import { evaluate } from "../../../src/kernel/curve/curve.js";
import { stepsPerTurn } from "../../../src/kernel/mesh/grid.js";
import { type EdgeSamples, sampleEdges } from "../../../src/kernel/mesh/sample.js";
import type { Face, Solid } from "../../../src/kernel/solid.js";
import { distanceTo, parametersOf } from "../../../src/kernel/surface.js";
import { RULING_MM } from "../../../src/kernel/tolerance.js";
import { distance, type Vec3 } from "../../../src/kernel/vec.js";
import { turned } from "../../support/bar-moves.js";
import { BARS, solidFor } from "../../support/bars.js";

/** The points of each edge from start to end. */
function chainsOf(solid: Solid, { first, same }: EdgeSamples): number[][] {
  return solid.edges.map(({ from, to }, e) => {
    if (same[from] === same[to]) return [same[from]!];
    const inner = Array.from({ length: first[e + 1]! - first[e]! }, (_, k) => first[e]! + k);
    return [same[from]!, ...inner, same[to]!];
  });
}

describe("sampleEdges", () => {
  it.each(Object.entries(BARS))("keeps to surfaces and rulings: %s", (_, bar) => {
    const solid = solidFor(turned(bar, 0.37));
    const samples = sampleEdges(solid, 0.05);
    const { positions, turns } = samples;
    const chains = chainsOf(solid, samples);
    const at = (v: number): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
    expect(samples.first.at(-1)).toBe(positions.length / 3);
    const beside = solid.edges.map((): Face[] => []);
    for (const f of solid.faces) for (const use of f.loops.flat()) beside[use.edge]!.push(f);
    for (const [e, chain] of chains.entries()) {
      const edge = solid.edges[e]!;
      expect([chain[0], chain.at(-1)]).toEqual([edge.from, edge.to]);
      for (const [side, { surface }] of beside[e]!.entries()) {
        for (const v of chain) expect(Math.abs(distanceTo(surface, at(v)))).toBeLessThan(2e-6);
        if (surface.kind === "plane" || edge.curve.kind === "line") continue;
        const step = (2 * Math.PI) / stepsPerTurn(surface.radius, 0.05);
        for (const v of chain.slice(1, -1)) {
          const off = turns[side as 0 | 1].atPoints[v]! * step - parametersOf(surface, at(v))[0];
          const apart = Math.abs(off - 2 * Math.PI * Math.round(off / (2 * Math.PI)));
          expect(apart * surface.radius).toBeLessThan(RULING_MM);
        }
        const slack = (2 * RULING_MM) / surface.radius / step;
        for (let k = 0; k + 1 < chain.length; k++) {
          const [p, q] = [chain[k]!, chain[k + 1]!].map((v) => parametersOf(surface, at(v))[0] / step) as [
            number,
            number,
          ];
          const on = q - Math.round((q - p) / ((2 * Math.PI) / step)) * ((2 * Math.PI) / step);
          // No ruling strictly between two neighbours.
          expect(
            Math.ceil(Math.max(p, on) - slack) - Math.floor(Math.min(p, on) + slack),
          ).toBeLessThanOrEqual(1);
        }
      }
    }
  });

  it.each(Object.entries(BARS))("keeps the chord along every edge: %s", (_, bar) => {
    for (const chord of [0.5, 0.05]) {
      const solid = solidFor(turned(bar, 1.1));
      const samples = sampleEdges(solid, chord);
      const { positions } = samples;
      const at = (v: number): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
      for (const [e, chain] of chainsOf(solid, samples).entries()) {
        const { curve, t0, t1 } = solid.edges[e]!;
        const count = 7 * chain.length;
        for (let k = 0; k <= count; k++) {
          const p = evaluate(curve, t0 + ((t1 - t0) * k) / count);
          // The chain runs with the parameter, so the chord of a point is the one it is nearest to.
          const off = chain.slice(1).map((v, i) => toTriangle(p, at(chain[i]!), at(v), at(v)));
          expect(Math.min(...off, distance(p, at(chain[0]!)))).toBeLessThanOrEqual(chord + 1e-9);
        }
      }
    }
  });

  it("keeps neighbours apart", () => {
    for (const bar of Object.values(BARS)) {
      const solid = solidFor(bar);
      const samples = sampleEdges(solid, 0.5);
      const { positions } = samples;
      for (const chain of chainsOf(solid, samples)) {
        for (let k = 0; k + 1 < chain.length; k++) {
          const [p, q] = [chain[k]!, chain[k + 1]!].map(
            (v): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!],
          ) as [Vec3, Vec3];
          expect(distance(p, q)).toBeGreaterThan(RULING_MM / 2);
        }
      }
    }
  });
});
