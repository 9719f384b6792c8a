/** Unrolled loops: which points a ruling goes through, where two of a corner's lie beside the same ruling. */
import { describe, expect, it } from "vitest";
import { WORLD } from "../../../src/kernel/frame.js";
import type { EdgeSamples } from "../../../src/kernel/mesh/edge-samples.js";
import { flatRoom, NO_RULING, unroll } from "../../../src/kernel/mesh/flat-face.js";
import type { Edge, Face, Solid } from "../../../src/kernel/solid.js";
import type { Vec3 } from "../../../src/kernel/vec.js";

const [RADIUS, STEPS, NEAR] = [20, 44, 1e-4];
const STEP_MM = (2 * Math.PI * RADIUS) / STEPS;

/**
 * A loop of two edges from a corner and back, as (turn in steps, height): the corner, a point of the first edge, the far
 * end, two points of the second edge. Rulings of the five points.
 */
function rulings(corner: number, next: number, last: readonly [number, number]): number[] {
  const turned: (readonly [number, number])[] = [[corner, 0], [5, 9], [next, -2], [1.6, 2], last];
  const points = turned.map(([turn, z]): Vec3 => {
    const angle = (turn * 2 * Math.PI) / STEPS;
    return [RADIUS * Math.cos(angle), RADIUS * Math.sin(angle), z];
  });
  const edge = (from: number, to: number): Edge => ({
    curve: { kind: "conic", centre: [0, 0, 0], major: [RADIUS, 0, 0], minor: [0, RADIUS, 0] },
    t0: 0,
    t1: 1,
    from,
    to,
  });
  const face: Face = {
    surface: { kind: "cylinder", frame: WORLD, radius: RADIUS },
    sense: 1,
    loops: [[0, 1].map((e) => ({ edge: e, forward: true }))],
    provenance: { from: "end", end: 1, joint: "J", onto: "H" },
  };
  const solid: Solid = { vertices: points.slice(0, 2), edges: [edge(0, 1), edge(1, 0)], faces: [face] };
  const side = { atEnds: [corner, 5, 5, corner], atPoints: turned.map(([turn]) => turn) };
  const samples: EdgeSamples = {
    positions: points.flat(),
    first: [2, 3, 5],
    same: [0, 1],
    feet: null,
    steps: [STEPS],
    near: NEAR,
    turns: [side, side],
  };
  const flat = flatRoom();
  unroll(flat, face, face.loops[0]!, { solid, samples, uses: [0, 0] }, STEPS, null);
  return flat.ruling.slice(0, flat.size);
}

describe("unroll", () => {
  const beside = 2 + (0.7 * NEAR) / STEP_MM;

  it("puts a corner onto a ruling that one edge crosses there, though the other has a point of its own on it", () => {
    expect(rulings(beside, 1.5, [2, 1.3 * NEAR])).toEqual([2, NO_RULING, 5, NO_RULING, 2]);
  });

  it("leaves it beside the ruling where its edge goes on beyond", () => {
    expect(rulings(beside, 2.5, [2, 1.3 * NEAR])).toEqual([NO_RULING, NO_RULING, 5, NO_RULING, 2]);
  });

  it("puts it onto one that no other point is nearer to", () => {
    expect(rulings(beside, 2.5, [1.9, 1.3 * NEAR])).toEqual([2, NO_RULING, 5, NO_RULING, NO_RULING]);
  });
});
