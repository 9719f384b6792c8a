/**
 * Checks that a simplified solver would fail: exact edges, cuts rebuilt from the printed numbers, a guard turned and moved
 * a kilometre, and rays against the finite, mitred headers by code that shares nothing with the kernel.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Member, member, type Piece, roundTube, saddle, solidOf, solveJoints } from "../../src/index.js";
import { compileEnd, endAt } from "../../src/kernel/end-compile.js";
import { distanceTo, evaluate, type Solid, type Vec3 } from "../../src/kernel/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { randomFrom } from "../support/random.js";

const guard = buildGuard(JSON.parse(readFileSync("examples/pottery-studio.json", "utf8")));

function solid(piece: Piece): Solid {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(JSON.stringify(made.diagnostics));
  return made.value;
}

const add = (a: Vec3, b: Vec3, k = 1): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec3): Vec3 => {
  const n = Math.hypot(...a);
  return [a[0] / n, a[1] / n, a[2] / n];
};
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

describe("edges of the pottery guard", () => {
  it("lie within 1e-9 mm of both their faces at random parameters", () => {
    const next = randomFrom(20261125);
    for (const piece of guard.pieces) {
      const s = solid(piece);
      for (const face of s.faces) {
        for (const { edge } of face.loops.flat()) {
          const e = s.edges[edge]!;
          const t = e.t0 + (e.t1 - e.t0) * next.between(0, 1);
          expect(Math.abs(distanceTo(face.surface, evaluate(e.curve, t)))).toBeLessThan(1e-9);
        }
      }
    }
  });
});

describe("cuts rebuilt from the printed numbers", () => {
  it("miter, bevel, clock and the farthest point give back every flat cut to 1e-9 mm", () => {
    let flat = 0;
    for (const piece of guard.pieces) {
      const s = solid(piece);
      for (const cut of piece.cuts) {
        if (!cut.saw) continue;
        flat++;
        const dir = cut.end === 1 ? 1 : -1;
        const far = (cut.end === 1 ? piece.lengths.blank.to : piece.lengths.blank.from).point;
        const gu = tan(cut.saw.miter);
        const gv = tan(cut.saw.bevel) * Math.hypot(1, gu);
        const steep = tan(cut.saw.fromSquare);
        expect(steep * Math.cos((cut.saw.clock * Math.PI) / 180)).toBeCloseTo(gu, 12);
        expect(steep * Math.sin((cut.saw.clock * Math.PI) / 180)).toBeCloseTo(gv, 12);
        for (const face of s.faces) {
          if (face.provenance.from !== "end" || face.provenance.end !== cut.end) continue;
          for (const { edge } of face.loops.flat()) {
            const e = s.edges[edge]!;
            for (const f of [0, 0.3, 0.8]) {
              const p = evaluate(e.curve, e.t0 + (e.t1 - e.t0) * f);
              const out = dir * far[2] + gu * (p[0] - far[0]) + gv * (p[1] - far[1]);
              expect(Math.abs(dir * p[2] - out)).toBeLessThan(1e-9);
            }
          }
        }
      }
    }
    expect(flat).toBeGreaterThan(20);
  });

  it("angle, offset, gap, toe and the printed ordinates give back the edge of a saddle to 1e-9 mm", () => {
    for (const [offset, gap] of [
      [0, 0],
      [4, 0],
      [-3, 1.5],
    ] as const) {
      const rake = unit([0.8, 0.1, 0.6]);
      const header = member({
        id: "R",
        section: roundTube({ od: 60.3, wall: 3.2 }),
        from: add([0, offset, 900], rake, -800),
        to: add([0, offset, 900], rake, 800),
        role: "top-rail",
      });
      const post = member({
        id: "P",
        section: roundTube({ od: 42.4, wall: 3.2 }),
        from: [0, 0, 0],
        to: [0, 0, 900],
        role: "post",
      });
      const joint = { kind: "cope", id: "j", end: { member: "P", end: 1 }, onto: ["R"], gap } as const;
      const { pieces, diagnostics } = solveJoints({ members: [header, post], joints: [joint] });
      expect(diagnostics).toEqual([]);
      const piece = pieces[1]!;
      const cope = piece.cuts[1].cope[0]!;
      const table = saddle({
        branch: { od: 42.4, wall: 3.2 },
        header: { od: 60.3 },
        angle: cope.angle,
        offset: cope.offset,
        gap: cope.gap,
        stations: 36,
      });
      // Nearest point of the branch's axis to the header's axis, by the formula for two lines, in the piece's frame.
      const f = piece.frame;
      const local = (d: Vec3): Vec3 => [dot(d, f.x), dot(d, f.y), dot(d, f.z)];
      const a = local(header.frame.z);
      const w = local(add(f.origin, header.from, -1));
      const b = a[2];
      const nearest = (b * dot(w, a) - w[2]) / (1 - b * b);
      const side = cross([0, 0, -1], cope.toe);
      const end = compileEnd(piece.ends[1], 1, piece.section.region).end!;
      for (const { phi, outer, inner } of table.stations) {
        for (const [rho, s] of [
          [21.2, outer],
          [18, inner],
        ] as const) {
          const [c, n] = [Math.cos((phi * Math.PI) / 180), Math.sin((phi * Math.PI) / 180)];
          const u = rho * (c * cope.toe[0] + n * side[0]);
          const v = rho * (c * cope.toe[1] + n * side[1]);
          expect(Math.abs(endAt(end, u, v).out - (nearest - s!))).toBeLessThan(1e-9);
        }
      }
    }
  });
});

describe("a turned and moved guard", () => {
  it("has the same solids in its pieces' frames within 1e-6 mm after any turn and a kilometre", () => {
    const next = randomFrom(77);
    const axis = unit([next.between(0, 1) - 0.5, next.between(0, 1) - 0.5, next.between(0, 1) - 0.5]);
    const angle = 2 * Math.PI * next.between(0, 1);
    const turn = (p: Vec3): Vec3 => {
      const k = 1 - Math.cos(angle);
      const base = add(
        [p[0] * Math.cos(angle), p[1] * Math.cos(angle), p[2] * Math.cos(angle)],
        cross(axis, p),
        Math.sin(angle),
      );
      return add(base, axis, k * dot(axis, p));
    };
    const shift: Vec3 = [6e5, -5e5, 6.2e5];
    const moved = (m: Member): Member =>
      member({ ...m, from: add(turn(m.from), shift), to: add(turn(m.to), shift), up: turn(m.frame.y) });
    const rails = guard.members
      .filter((m) => m.role !== "rail" && m.kind === undefined)
      .map((m) => member({ ...m, up: m.frame.y }));
    const joints = [
      {
        kind: "miter",
        id: "break",
        ends: [
          { member: "stair-top", end: 1 },
          { member: "landing-top", end: 0 },
        ],
      },
      ...rails
        .filter(
          (m) => m.role === "post" && m.section.shape.kind === "rect-tube" && m.section.shape.width > 48.26,
        )
        .map((m) => ({
          kind: "cope",
          id: `${m.id}-top`,
          end: { member: m.id, end: 1 },
          onto: [m.from[0] < 0 ? "stair-top" : "landing-top"],
          shoulder: "midline",
        })),
    ] as Parameters<typeof solveJoints>[0]["joints"];
    const before = solveJoints({ members: rails, joints: joints! });
    const after = solveJoints({ members: rails.map(moved), joints: joints! });
    expect(after.diagnostics.map((d) => d.code)).toEqual(before.diagnostics.map((d) => d.code));
    for (const [i, piece] of before.pieces.entries()) {
      const [p, q] = [solid(piece), solid(after.pieces[i]!)];
      expect(q.faces.length).toBe(p.faces.length);
      // The vertices of a tube start where its section does; both frames carry the same up.
      for (const [k, v] of p.vertices.entries()) {
        expect(Math.hypot(...add(v, q.vertices[k]!, -1))).toBeLessThan(1e-6);
      }
    }
  });
});

describe("rays against the finite, mitred headers (own code, by brute force)", () => {
  /** Where a ray p + t·d first enters a rail: a full cylinder, cut by its miter plane and at its far end. */
  function firstHit(p: Vec3, d: Vec3, rail: { from: Vec3; axis: Vec3; radius: number; miter: Vec3 }): number {
    const w = add(p, rail.from, -1);
    const wa = add(w, rail.axis, -dot(w, rail.axis));
    const da = add(d, rail.axis, -dot(d, rail.axis));
    const [qa, qb, qc] = [dot(da, da), 2 * dot(wa, da), dot(wa, wa) - rail.radius ** 2];
    const disc = qb * qb - 4 * qa * qc;
    if (disc < 0) return Number.POSITIVE_INFINITY;
    const [t0, t1] = [(-qb - Math.sqrt(disc)) / (2 * qa), (-qb + Math.sqrt(disc)) / (2 * qa)];
    // Inside the cylinder for t0..t1; the rail keeps what is on its own side of the miter plane.
    const [m0, m1] = [dot(w, rail.miter), dot(d, rail.miter)];
    // A ray along the miter plane is on one side of it all the way.
    if (Math.abs(m1) < 1e-12) return m0 >= 0 ? t0 : Number.POSITIVE_INFINITY;
    const cut = -m0 / m1;
    const from = m1 > 0 ? Math.max(t0, cut) : t0;
    const to = m1 < 0 ? Math.min(t1, cut) : t1;
    return from < to ? from : Number.POSITIVE_INFINITY;
  }

  for (const [name, rise1, rise2, turn] of [
    ["crest", -0.7, 0, 0],
    ["crest of two rakes", -0.7, -0.3, 0],
    ["valley", 0.7, 0, 0],
    ["valley of two rakes", 0.5, 0.9, 0],
    ["level plan corner", 0, 0, 90],
    ["plan corner of a rake and a level", -0.7, 0, 90],
    ["plan corner of two rakes", -0.6, 0.5, 60],
    ["rail that turns almost straight back", 0, 0, 140],
  ] as const) {
    it(`a post under a ${name} ends where the rays do, within 1e-9 mm`, () => {
      const node: Vec3 = [0, 0, 900];
      const first = unit([-1, 0, rise1]);
      const [c, t] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
      const second = unit([c, t, rise2]);
      const rail = (id: string, away: Vec3) =>
        member({
          id,
          section: roundTube({ od: 48.3, wall: 3.2 }),
          from: node,
          to: add(node, away, 900),
          role: "top-rail",
        });
      const post = member({
        id: "P",
        section: roundTube({ od: 42.4, wall: 3.2 }),
        from: [0, 0, 0],
        to: node,
        role: "post",
      });
      const { pieces, diagnostics } = solveJoints({ members: [rail("A", first), rail("B", second), post] });
      expect(diagnostics).toEqual([]);
      const piece = pieces[2]!;
      const s = solid(piece);
      const n = add(first, second, -1);
      const headers = [
        { from: node, axis: first, radius: 24.15, miter: n },
        { from: node, axis: second, radius: 24.15, miter: [-n[0], -n[1], -n[2]] as Vec3 },
      ];
      const world = (p: Vec3): Vec3 =>
        add(add(add(piece.frame.origin, piece.frame.x, p[0]), piece.frame.y, p[1]), piece.frame.z, p[2]);
      let checked = 0;
      for (const face of s.faces) {
        if (face.provenance.from !== "end" || face.provenance.end !== 1) continue;
        for (const { edge } of face.loops.flat()) {
          const e = s.edges[edge]!;
          for (const f of [0.1, 0.37, 0.62, 0.9]) {
            const p = evaluate(e.curve, e.t0 + (e.t1 - e.t0) * f);
            const start = world([p[0], p[1], 0]);
            const hits = headers.map((h) => firstHit(start, [0, 0, 1], h));
            // On the ridge itself both rails may claim the point by a rounding.
            expect(Math.min(...hits.map((h) => Math.abs(h - p[2])))).toBeLessThan(1e-9);
            expect(Math.min(...hits)).toBeGreaterThan(p[2] - 1e-9);
            checked++;
          }
        }
      }
      expect(checked).toBeGreaterThan(20);
    });
  }
});
