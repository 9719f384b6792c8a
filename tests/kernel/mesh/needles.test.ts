/**
 * Needles, on faces of a few lines written down here: which are left off, which must stay, which welding would lose.
 */
import { describe, expect, it } from "vitest";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import { needlesOf } from "../../../src/kernel/mesh/needles.js";
import type { Edge, Face, Solid } from "../../../src/kernel/solid.js";
import { anySquareTo, lerp, normalize, scale, sub, type Vec3 } from "../../../src/kernel/vec.js";

const WITHIN = 4e-4;
const SAME = [0, 1, 2, 3, 4];

/** A face from its tip 0 along a long edge to 1, over 3 back to the foot 2 of its short edge, and the faces across the two. */
function needle(thick: number, acrossLong: Vec3, acrossShort: Vec3): Solid {
  const vertices: Vec3[] = [
    [0, 0, 0],
    [10, 0, 0],
    [6, thick, 0],
    [8, 5, 0],
    [5, -1, 0],
  ];
  const line = (from: number, to: number): Edge => {
    const [p, q] = [vertices[from]!, vertices[to]!];
    const way = sub(q, p);
    return {
      curve: { kind: "line", origin: p, direction: normalize(way) },
      t0: 0,
      t1: Math.hypot(...way),
      from,
      to,
    };
  };
  const face = (normal: Vec3, ...uses: (readonly [number, boolean])[]): Face => ({
    surface: { kind: "plane", frame: frameFromAxis([0, 0, 0], normal, anySquareTo(normal)) },
    sense: 1,
    loops: [uses.map(([edge, forward]) => ({ edge, forward }))],
    provenance: { from: "end", end: 1, joint: "J", onto: "H" },
  });
  return {
    vertices,
    edges: [line(1, 0), line(0, 2), line(2, 3), line(3, 1), line(4, 1)],
    faces: [
      face([0, 0, 1], [0, true], [1, true], [2, true], [3, true]),
      face(acrossLong, [0, false]),
      face(acrossShort, [1, false]),
    ],
  };
}

/** Faces beside each edge of the above. */
const BESIDE = [0, 1, 0, 2, 0, -1, 0, -1, -1, -1];
const look = (solid: Solid, same = SAME) => needlesOf(solid, same, BESIDE, WITHIN);

describe("needlesOf", () => {
  it("makes the foot of a thin needle a point of its long edge", () => {
    const found = look(needle(1e-4, [0, -1, 0], [1, 0, 0]));
    expect(found).toMatchObject({ cut: 1, lost: false });
    expect([...found.feet]).toEqual([[0, [2]]]);
  });

  it("keeps one as thick as an edge may be short", () => {
    expect(look(needle(4.1e-4, [0, -1, 0], [1, 0, 0]))).toMatchObject({ cut: 0, lost: false });
  });

  it("keeps one between faces that stand back to back, unless welding takes its angle", () => {
    const fin = needle(1e-4, [0, -1, 0], normalize([1e-5, 1, 0]));
    expect(look(fin)).toMatchObject({ cut: 0, lost: false });
    // The long edge's end falls on a vertex beyond its other side: the needle would be turned over.
    expect(look(needleTo(fin, [10, 3e-4, 0]), [0, 4, 2, 3, 4])).toMatchObject({ cut: 0, lost: true });
  });

  it("keeps needles that end in one tip", () => {
    const spire = needle(1e-4, [0, -1, 0], [1, 0, 0]);
    const twice = { ...spire, faces: [...spire.faces, spire.faces[0]!] };
    expect(look(twice)).toMatchObject({ cut: 0 });
  });

  it("leaves off a spire that welding has closed at its foot, and gives its curves no points", () => {
    const found = spire({ bend: 3.9e-4, welded: true });
    expect(found).toMatchObject({ cut: 2, lost: false });
    expect([...found.feet]).toEqual([[0, [2]]]);
    expect([...found.bare.keys()]).toEqual([1, 4]);
    // Open at its foot it holds faces apart; and a curve that bends by more than a needle is thick is no side of one.
    for (const kept of [
      { bend: 3.9e-4, welded: false },
      { bend: 4.1e-4, welded: true },
    ]) {
      const still = spire(kept);
      expect(still).toMatchObject({ cut: 0, lost: false });
      expect(still.feet.size + still.bare.size).toBe(0);
    }
  });
});

/** Two needles on one long edge; their shorter edges are half ellipses that leave their chords by `bend`, with a sliver between. */
function spire({ bend, welded }: { bend: number; welded: boolean }): ReturnType<typeof needlesOf> {
  const one = needle(1e-4, [0, -1, 0], normalize([0, 1, -1]));
  const { vertices, edges, faces } = needleTo(one, [6, 0, -1e-4]);
  const arc = (from: number, to: number): Edge => {
    const [p, q] = [vertices[from]!, vertices[to]!];
    const [centre, major] = [lerp(p, q, 0.5), scale(sub(q, p), 0.5)];
    return { curve: { kind: "conic", centre, major, minor: [0, 0, bend] }, t0: Math.PI, t1: 0, from, to };
  };
  const loop = (...uses: (readonly [number, boolean])[]) => [
    uses.map(([edge, forward]) => ({ edge, forward })),
  ];
  const solid: Solid = {
    vertices,
    edges: [edges[0]!, arc(0, 2), edges[2]!, edges[3]!, arc(4, 0)],
    faces: [
      faces[0]!,
      { ...faces[1]!, loops: loop([4, true], [0, false], [3, false], [2, false]) },
      { ...faces[2]!, loops: loop([1, false], [4, false]) },
    ],
  };
  return needlesOf(solid, [0, 1, 2, 3, welded ? 2 : 4], [0, 1, 0, 2, 0, 1, 0, 1, 1, 2], WITHIN);
}

/** The same with vertex 4, which the long edge's end may be welded to, elsewhere. */
function needleTo(solid: Solid, p: Vec3): Solid {
  return { ...solid, vertices: solid.vertices.map((v, k) => (k === 4 ? p : v)) };
}
