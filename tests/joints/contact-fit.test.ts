/**
 * How neighbours fit: closed forms for pieces put out of place on purpose, dense sampling by another route
 * (tests/joints/fit.ts), and the common volume of the two meshes by manifold-3d.
 */
import fc from "fast-check";
import initManifold, { type ManifoldToplevel } from "manifold-3d";
import { beforeAll, describe, expect, it } from "vitest";
import {
  type Contact,
  type ContactFit,
  fitOf,
  fitsOf,
  type Joint,
  type Piece,
} from "../../src/joints/index.js";
import { pointToLocal, pointToParent, type Vec3 } from "../../src/kernel/index.js";
import type { Member, Section } from "../../src/members/index.js";
import { contactRange, endPoints, materialDistance, type Placed, placed } from "./fit.js";
import { frames, solveFrame } from "./frames.js";
import {
  BAR20,
  codesOf,
  FLAT,
  pieceOf,
  post,
  potteryGuard,
  RAD,
  RECT60X30,
  rail,
  SQUARE40,
  solve,
  TUBE42,
  TUBE48,
  TUBE60,
} from "./models.js";

/** Design, section 5: no joint open wider than its gap, none overlapping, by more than this. */
const TIGHT = 2e-6;

function measured(contact: Contact, pieces: readonly Piece[]): ContactFit {
  const made = fitOf(contact, pieces);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join(" "));
  return made.value;
}

function moved(piece: Piece, by: Vec3): Piece {
  const [x, y, z] = piece.frame.origin;
  return { ...piece, frame: { ...piece.frame, origin: [x + by[0], y + by[1], z + by[2]] } };
}

/** What is wrong with the fits of a solution whose pieces are all whole. */
function misfits(solution: Parameters<typeof fitsOf>[0]): string[] {
  return fitsOf(solution).flatMap((made, i) => {
    const c = solution.contacts[i]!;
    const name = `${c.piece} on ${c.onto}`;
    if (!made.ok) return [`${name}: ${made.diagnostics.map((d) => d.code).join(" ")}`];
    const { overlap, gap, cut, shoulder } = made.value;
    const out = [];
    if (overlap > TIGHT) out.push(`${name}: overlap ${overlap}`);
    if (gap > c.gap + TIGHT) out.push(`${name}: gap ${gap}`);
    if (cut && cut.least.value < c.gap - TIGHT) out.push(`${name}: ${cut.least.value} of a gap of ${c.gap}`);
    if (shoulder && shoulder.least.value < -TIGHT) out.push(`${name}: shoulder ${shoulder.least.value}`);
    return out;
  });
}

const one = (r: Member, p: Member, joints: readonly Joint[] = [], gap = 0) => {
  const solution = solve([r, p], joints, { gap });
  expect(codesOf(solution)).toEqual([]);
  const [contact] = solution.contacts.filter((c) => c.piece === p.id);
  return {
    ...solution,
    contact: contact as Contact,
    post: pieceOf(solution, p.id),
    rail: pieceOf(solution, r.id),
  };
};
/** A plumb post in the middle of a rail at a rake. */
const raking = (rake: number, section: Section, railSection: Section, gap = 0) => {
  const [dx, dz] = [900 * Math.cos(rake * RAD), 900 * Math.sin(rake * RAD)];
  return one(
    rail("R", [-dx, 0, 900 - dz], [dx, 0, 900 + dz], { section: railSection }),
    post("P", [0, 0, 0], [0, 0, 900], { section }),
    [],
    gap,
  );
};

describe("joints as they are solved", () => {
  it("stand on their mates with their gap and no overlap: the pottery guard", () => {
    const guard = potteryGuard();
    expect(misfits(guard)).toEqual([]);
    const fits = fitsOf(guard).flatMap((f) => (f.ok ? [f.value] : []));
    expect(fits.length).toBe(guard.contacts.length);
    expect(fits.filter((f) => f.contact.kind === "miter")).toHaveLength(2);
    expect(fits.filter((f) => f.cut).length).toBe(fits.length);
  });

  it.each([
    ["round on round", TUBE42, TUBE48],
    ["equal tubes", TUBE48, TUBE48],
    ["square on round", SQUARE40, TUBE60],
    ["round on rectangle", TUBE42, RECT60X30],
    ["flat bar on round", FLAT, TUBE48],
    ["solid bar on rectangle", BAR20, RECT60X30],
  ] as const)("%s, level and raking, with and without a root gap", (_, section, railSection) => {
    for (const rake of [0, 35.4, 55]) {
      for (const gap of [0, 1.6]) {
        const solution = raking(rake, section, railSection, gap);
        expect(misfits(solution)).toEqual([]);
        const { cut, gap: open } = measured(solution.contact, solution.pieces);
        expect(cut!.least.value).toBeCloseTo(gap, 6);
        expect(open).toBeCloseTo(gap, 6);
      }
    }
  });

  it("of random frames, in step with distances written from the sections' sizes (property)", () => {
    let joints = 0;
    fc.assert(
      fc.property(frames, (frame) => {
        const { pieces, contacts } = solveFrame(frame);
        const whole = new Set(pieces.filter((p) => p.status === "ok").map((p) => p.id));
        // Of two headers the other route knows no ends: where one stops the next goes on.
        const own = contacts.filter(
          (c) =>
            c.kind === "cope" &&
            whole.has(c.piece) &&
            whole.has(c.onto) &&
            pieceOf({ pieces }, c.piece).cuts[c.end].onto.length === 1,
        );
        expect(misfits({ pieces, contacts: own })).toEqual([]);
        for (const c of own) {
          const { cut } = measured(c, pieces);
          const other = contactRange(pieceOf({ pieces }, c.piece), pieceOf({ pieces }, c.onto), c);
          if (!cut || other.count === 0) continue;
          joints++;
          expect(cut.least.value).toBeCloseTo(other.least, 8);
          expect(cut.greatest.value).toBeCloseTo(other.greatest, 8);
        }
      }),
      { numRuns: 25 },
    );
    expect(joints).toBeGreaterThan(50);
  });

  it("at a crest and a valley, where a rail of the break is trimmed by its miter", () => {
    for (const z of [400, 1500]) {
      const solution = solve([
        rail("A", [-900, 0, z], [0, 0, 900]),
        rail("B", [0, 0, 900], [900, 0, 900]),
        post("P", [0, 0, 0], [0, 0, 900]),
      ]);
      expect(codesOf(solution)).toEqual([]);
      expect(misfits(solution)).toEqual([]);
    }
  });

  it("a root gap at a valley is wider at the ridge, where two offset skins meet sharp: G / cos(θ/2) (closed form)", () => {
    const members = (z: number) => [
      rail("A", [-900, 0, z], [0, 0, 900]),
      rail("B", [0, 0, 900], [900, 0, 900]),
      post("P", [0, 0, 0], [0, 0, 900], { section: BAR20 }),
    ];
    const worst = (z: number): number => {
      const { pieces, contacts } = solve(members(z), [], { gap: 1.6 });
      const own = contacts.filter((c) => c.piece === "P");
      return Math.max(...own.map((c) => measured(c, pieces).gap));
    };
    expect(worst(1400)).toBeCloseTo(1.6 / Math.cos(Math.atan2(500, 900) / 2), 6);
    // Under a crest the feet of the ridge's points lie on both rails.
    expect(worst(400)).toBeCloseTo(1.6, 6);
  });

  it("shoulders beside a narrow rail stand off it by what a square corner does (closed form)", () => {
    const joints: Joint[] = [
      { kind: "cope", id: "C", end: { member: "P", end: 1 }, onto: ["R"], shoulder: "midline" },
    ];
    const { contact, pieces } = one(
      rail("R", [-900, 0, 900], [900, 0, 900], { section: BAR20 }),
      post("P", [0, 0, 0], [0, 0, 900], { section: SQUARE40 }),
      joints,
    );
    const found = measured(contact, pieces);
    expect(found.gap).toBe(0);
    expect(found.overlap).toBe(0);
    // The shoulders lie in the level of the bar's axis: 20 mm from it at the post's sides, 10 past its skin.
    expect(found.shoulder!.least.value).toBeCloseTo(0, 9);
    expect(found.shoulder!.greatest.value).toBeCloseTo(10, 9);
  });

  it("a miter of unequal tubes stands proud by half the difference and is closed (closed form)", () => {
    const solution = solve([
      rail("A", [-900, 0, 900], [0, 0, 900], { section: TUBE60 }),
      rail("B", [0, 0, 900], [900, 0, 1200]),
    ]);
    const [a, b] = solution.contacts.map((c) => measured(c, solution.pieces));
    expect(codesOf(solution)).toEqual(["miter-steps"]);
    expect(a!.contact.kind).toBe("miter");
    for (const f of [a!, b!]) expect([f.gap, f.overlap]).toEqual([0, 0]);
    // The plane runs through both long points and both short points; at the sides 30.15 meets 24.15.
    const across = (60.3 - 48.3) / 2;
    expect(a!.proud!.greatest.value).toBeCloseTo(across, 9);
    expect(a!.proud!.least.value).toBeCloseTo(0, 9);
    expect(b!.proud!.least.value).toBeCloseTo(-across, 9);
    expect(b!.proud!.greatest.value).toBeCloseTo(0, 9);
  });
});

describe("pieces put out of place", () => {
  it.each([
    ["tube under a tube", TUBE42, TUBE48, 0],
    ["tube under a rectangle", TUBE42, RECT60X30, 0],
    ["square tube under a raking rectangle", SQUARE40, RECT60X30, 35],
    ["tube under a raking tube", TUBE42, TUBE48, 40],
  ] as const)(
    "%s: 0.3 mm short stands open by 0.3 cos(rake), 0.3 mm long is in as deep (closed form)",
    (_, section, railSection, rake) => {
      const { contact, rail: r, post: p } = raking(rake, section, railSection);
      const want = 0.3 * Math.cos(rake * RAD);
      const short = measured(contact, [r, moved(p, [0, 0, -0.3])]);
      expect(short.gap).toBeCloseTo(want, 9);
      expect(short.overlap).toBe(0);
      const long = measured(contact, [r, moved(p, [0, 0, 0.3])]);
      expect(long.gap).toBe(0);
      expect(long.overlap).toBeCloseTo(want, 9);
      expect(long.cut!.least.value).toBeCloseTo(-want, 9);
      if (railSection === RECT60X30) return;
      // Where the tube is widest the skin is steepest: √(r² + (√(R² − r²) + δ)²) − R.
      const [R, h] = [24.15, (section === TUBE42 ? 42.4 : 40) / 2];
      expect(short.cut!.least.value).toBeCloseTo(Math.hypot(h, Math.sqrt(R * R - h * h) + want) - R, 9);
    },
  );

  it("a miter drawn back or pushed in by 0.3 mm along its rail: 0.3 cos of the cut (closed form)", () => {
    const solution = solve([rail("A", [-900, 0, 500], [0, 0, 900]), rail("B", [0, 0, 900], [900, 0, 900])]);
    const [a, b] = [pieceOf(solution, "A"), pieceOf(solution, "B")];
    const contact = solution.contacts.find((c) => c.piece === "B")!;
    const want = 0.3 * Math.cos(Math.atan2(400, 900) / 2);
    const back = measured(contact, [a, moved(b, [0.3, 0, 0])]);
    expect(back.gap).toBeCloseTo(want, 9);
    expect(back.cut!.least.value).toBeCloseTo(want, 9);
    expect(back.overlap).toBe(0);
    const inwards = measured(contact, [a, moved(b, [-0.3, 0, 0])]);
    expect(inwards.gap).toBe(0);
    expect(inwards.overlap).toBeCloseTo(want, 9);
  });

  it("a header that ends under the branch leaves open what it does not reach (closed form)", () => {
    for (const section of [TUBE48, RECT60X30]) {
      const long = one(
        rail("R", [-900, 0, 900], [900, 0, 900], { section }),
        post("P", [0, 0, 0], [0, 0, 900]),
      );
      for (const past of [5, 12, 20.9]) {
        const short = solve([rail("R", [-900, 0, 900], [past, 0, 900], { section })]).pieces[0]!;
        const found = measured(long.contact, [short, long.post]);
        expect(found.gap).toBeCloseTo(21.2 - past, 9);
        expect(found.cut!.greatest.at[0]).toBeCloseTo(21.2, 6);
        expect(found.cut!.least.value).toBeCloseTo(0, 9);
        expect(found.overlap).toBe(0);
      }
    }
  });

  it("and where it ends on a slant, what a dense rim says (second route)", () => {
    const joint: Joint = {
      kind: "cut",
      id: "C",
      end: { member: "R", end: 1 },
      cut: { type: "plane", normal: [1, 0.4, 0.5] },
    };
    const long = one(rail("R", [-900, 0, 900], [900, 0, 900]), post("P", [0, 0, 0], [0, 0, 900]));
    const short = solve([rail("R", [-900, 0, 900], [8, 0, 900])], [joint]).pieces[0]!;
    const found = measured(long.contact, [short, long.post]);
    // The rim: x = 8 − 0.4 y − 0.5 (z − 900) on the rail's circle; a cut point past it is as far as its nearest place.
    const rim = Array.from({ length: 7200 }, (_, k): Vec3 => {
      const [y, z] = [24.15 * Math.cos((k * Math.PI) / 3600), 24.15 * Math.sin((k * Math.PI) / 3600)];
      return [8 - 0.4 * y - 0.5 * z, y, 900 + z];
    });
    let worst = 0;
    for (let k = 0; k < 720; k++) {
      const [x, y] = [21.2 * Math.cos((k * Math.PI) / 360), 21.2 * Math.sin((k * Math.PI) / 360)];
      const z = -Math.sqrt(24.15 ** 2 - y * y);
      if (x <= 8 - 0.4 * y - 0.5 * z) continue;
      const d = Math.min(...rim.map((c) => Math.hypot(c[0] - x, c[1] - y, c[2] - 900 - z)));
      worst = Math.max(worst, d);
    }
    expect(worst).toBeGreaterThan(1);
    expect(found.gap).toBeGreaterThan(worst - 1e-4);
    expect(found.gap).toBeLessThan(worst + 1e-3);
  });

  it("the shaft of a post that grazes or goes through a rail beside its joint (closed form)", () => {
    const { contact, rail: r, post: p } = raking(0, TUBE42, TUBE48);
    const low = moved(r, [0, 24.15 + 21.2 - 0.5, -300]);
    const grazing = measured(contact, [low, p]);
    expect(grazing.overlap).toBeCloseTo(0.5, 9);
    expect(grazing.deepest!.at[2]).toBeCloseTo(600, 3);
    expect(measured(contact, [moved(r, [0, 24.15 + 21.2 + 0.5, -300]), p]).overlap).toBe(0);
    // Straight through: the post's skin crosses the rail's axis, a radius deep.
    expect(measured(contact, [moved(r, [0, 0, -300]), p]).overlap).toBeCloseTo(24.15, 9);
  });

  it("says which piece is not there", () => {
    const { contact, post: p } = raking(0, TUBE42, TUBE48);
    const made = fitOf(contact, [p]);
    expect(made.ok).toBe(false);
    expect(made.diagnostics[0]).toMatchObject({ code: "unknown-member", members: ["R"] });
  });
});

describe("random misplacements, by other routes", () => {
  let kernel: ManifoldToplevel;
  beforeAll(async () => {
    kernel = await initManifold();
    kernel.setup();
  });
  const solidOf = ({ piece, mesh }: Placed) => {
    const { positions: at } = mesh;
    const out = new Float32Array(at.length);
    for (let i = 0; i < at.length; i += 3)
      out.set(pointToParent(piece.frame, [at[i]!, at[i + 1]!, at[i + 2]!]), i);
    return new kernel.Manifold(
      new kernel.Mesh({ numProp: 3, vertProperties: out, triVerts: Uint32Array.from(mesh.triangles) }),
    );
  };
  const small = fc.double({ min: -2, max: 2, noNaN: true });

  it("overlap exactly when the meshes have a common volume, a rectangle's is area times depth (manifold-3d)", () => {
    let [apart, common] = [0, 0];
    for (const [section, railSection] of [
      [TUBE42, TUBE48],
      [SQUARE40, RECT60X30],
      [BAR20, RECT60X30],
    ] as const) {
      const { contact, rail: r, post: p } = raking(0, section, railSection);
      const header = solidOf(placed(r));
      for (const by of [-1, -0.2, 0.2, 0.5, 1]) {
        const lifted = moved(p, [0, 0, by]);
        const branch = solidOf(placed(lifted));
        const volume = branch.intersect(header).volume();
        const { overlap, gap } = measured(contact, [r, lifted]);
        if (by < 0) {
          apart++;
          expect(volume).toBe(0);
          expect(overlap).toBe(0);
          expect(gap).toBeCloseTo(-by, 9);
        } else {
          common++;
          expect(volume).toBeGreaterThan(0);
          expect(overlap).toBeCloseTo(by, 9);
          if (section === SQUARE40) expect(volume / by).toBeCloseTo(40 * 40 - 34 * 34, 1);
        }
        branch.delete();
      }
      header.delete();
    }
    expect([apart, common]).toEqual([6, 9]);
  });

  it("is as deep and as open as dense points of the piece say (property)", () => {
    const sections = fc.constantFrom<readonly [Section, Section]>(
      [TUBE42, TUBE48],
      [TUBE42, RECT60X30],
      [SQUARE40, TUBE60],
      [BAR20, TUBE48],
    );
    const rakes = fc.constantFrom(0, 20, 40);
    fc.assert(
      fc.property(sections, rakes, small, small, small, ([section, railSection], rake, dx, dy, dz) => {
        const { contact, rail: r, post: p } = raking(rake, section, railSection);
        const piece = moved(p, [dx, dy, dz]);
        const found = measured(contact, [r, piece]);
        const deep = (at: Vec3): number => -outside(r.section, ...pointToLocal(r.frame, at));
        let deepest = 0;
        // Vertices lie on the solid itself; the first of the points are these.
        const { mesh, points } = placed(piece);
        for (const at of points.slice(0, mesh.positions.length / 3)) deepest = Math.max(deepest, deep(at));
        expect(found.overlap).toBeGreaterThan(deepest - 1e-9);
        // Half the 3 mm between two vertices from the deepest place a tube of 24 mm has fallen off by 0.05.
        expect(found.overlap - deepest).toBeLessThan(0.1);
        const cut = endPoints(piece, 1, "R").map((x) => -deep(x.p));
        expect(found.cut!.greatest.value).toBeGreaterThan(Math.max(...cut) - 1e-9);
        expect(found.cut!.least.value).toBeLessThan(Math.min(...cut) + 1e-9);
        expect(found.cut!.greatest.value - Math.max(...cut)).toBeLessThan(0.05);
      }),
      { numRuns: 40 },
    );
  });

  /** Distance from the full section: a tube counts as a bar. */
  function outside(section: Section, u: number, v: number, _along: number): number {
    const { shape } = section;
    if (shape.kind === "round-tube") return Math.hypot(u, v) - shape.od / 2;
    if (shape.kind !== "rect-tube") return materialDistance(section, u, v);
    return materialDistance({ ...section, shape: { ...shape, kind: "rect-bar", edgeRadius: 0 } }, u, v);
  }
});
