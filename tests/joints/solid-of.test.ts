import { describe, expect, it } from "vitest";
import { type Piece, solidOf } from "../../src/joints/index.js";
import { distanceTo, evaluate, pointToParent } from "../../src/kernel/index.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { cutPieces, post, potteryGuard, rail } from "./models.js";

const solid = (piece: Piece) => {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join());
  return made.value;
};

describe("solidOf", () => {
  const guard = potteryGuard();

  it.each(guard.pieces.map((p) => p.id))("passes every rule of a solid for the pottery guard's %s", (id) => {
    const made = solid(guard.pieces.find((p) => p.id === id)!);
    expect(validateSolid(made)).toEqual([]);
    expect(made.faces.length).toBeGreaterThan(5);
  });

  it("names on every face of a cope the joint and the member it lies on, and lies there (second route: distances in the layout)", () => {
    const pieces = cutPieces([
      rail("A", [-900, 0, 300], [0, 0, 900]),
      rail("B", [0, 0, 900], [900, 0, 900]),
      post("P", [0, 0, 0], [0, 0, 900]),
    ]);
    const p = pieces[2]!;
    const made = solid(p);
    const onto = new Set<string>();
    for (const face of made.faces) {
      if (face.provenance.from !== "end" || face.provenance.end !== 1) continue;
      const rails = { A: [-900, -600], B: [900, 0] } as const;
      const name = face.provenance.onto as "A" | "B";
      onto.add(name);
      const [x, z] = rails[name];
      const k = Math.hypot(x, z);
      for (const use of face.loops.flat()) {
        const edge = made.edges[use.edge]!;
        for (const t of [0, 0.3, 0.7]) {
          const q = evaluate(edge.curve, edge.t0 + t * (edge.t1 - edge.t0));
          expect(Math.abs(distanceTo(face.surface, q))).toBeLessThan(2e-6);
          const [px, py, pz] = pointToParent(p.frame, q);
          // Off the rail's axis through (0, 0, 900) in the plane of both: |w × d|, with y square to it.
          const off = Math.hypot((px * z - (pz - 900) * x) / k, py);
          expect(Math.abs(off - 24.15)).toBeLessThan(2e-6);
        }
      }
    }
    expect([...onto].sort()).toEqual(["A", "B"]);
  });

  it("stands in the piece's own frame: a guard moved and turned has the same solids", () => {
    const at = (x: number, y: number, z: number): [number, number, number] => [7e4 - y, -3e4 + x, 5e3 + z];
    const model = (
      move: (x: number, y: number, z: number) => [number, number, number],
      up: [number, number, number],
    ) =>
      cutPieces([
        rail("R", move(-900, 0, 300), move(900, 0, 1500)),
        post("P", move(0, 0, 0), move(0, 0, 900), { up }),
      ]);
    const still = model((x, y, z) => [x, y, z], [1, 0, 0]);
    const moved = model(at, [0, 1, 0]);
    for (const [i, p] of still.entries()) {
      const [a, b] = [solid(p), solid(moved[i]!)];
      expect(b.faces.length).toBe(a.faces.length);
      expect(b.vertices.length).toBe(a.vertices.length);
      for (const [k, q] of a.vertices.entries()) {
        expect(Math.hypot(...q.map((x, j) => x - b.vertices[k]![j]!))).toBeLessThan(1e-6);
      }
    }
  });
});
