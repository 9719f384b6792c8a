/** Points along edges: on both surfaces, on every ruling, each edge once. */
import { describe, expect, it } from "vitest";
import { stepsPerTurn } from "../../../src/kernel/mesh/grid.js";
import { sampleEdges } from "../../../src/kernel/mesh/sample.js";
import type { Face } from "../../../src/kernel/solid.js";
import { distanceTo, parametersOf } from "../../../src/kernel/surface.js";
import { RULING_MM } from "../../../src/kernel/tolerance.js";
import { distance, type Vec3 } from "../../../src/kernel/vec.js";
import { turned } from "../../support/bar-moves.js";
import { BARS, solidFor } from "../../support/bars.js";

describe("sampleEdges", () => {
  it.each(Object.entries(BARS))("keeps to surfaces and rulings: %s", (_, bar) => {
    const solid = solidFor(turned(bar, 0.37));
    const { positions, chains, edgeOf } = sampleEdges(solid, 0.05);
    const at = (v: number): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
    expect(edgeOf).toHaveLength(positions.length / 3);
    const beside = solid.edges.map((): Face[] => []);
    for (const f of solid.faces) for (const use of f.loops.flat()) beside[use.edge]!.push(f);
    for (const [e, chain] of chains.entries()) {
      const edge = solid.edges[e]!;
      expect([chain[0], chain.at(-1)]).toEqual([edge.from, edge.to]);
      for (const v of chain.slice(1, -1)) expect(edgeOf[v]).toBe(e);
      for (const { surface } of beside[e]!) {
        for (const v of chain) expect(Math.abs(distanceTo(surface, at(v)))).toBeLessThan(2e-6);
        if (surface.kind === "plane" || edge.curve.kind === "line") continue;
        const step = (2 * Math.PI) / stepsPerTurn(surface.radius, 0.05);
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

  it("keeps neighbours apart", () => {
    for (const bar of Object.values(BARS)) {
      const { positions, chains } = sampleEdges(solidFor(bar), 0.5);
      for (const chain of chains) {
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
