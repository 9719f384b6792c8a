/**
 * Sheets between the rails: sizes, areas and mass by hand from the demo stair (steel 7.85 kg/dm³, the convention of EN 10025's
 * mass tables), clearances measured from every corner to the members round it, and the pieces: built exactly, nothing crossing.
 */
import { describe, expect, it } from "vitest";
import { massOf, type Piece } from "../../src/joints/index.js";
import { pointToParent } from "../../src/kernel/index.js";
import { dot, sub, type Vec3 } from "../../src/kernel/vec.js";
import type { BuiltGuard } from "../../src/layout/build-guard.js";
import type { Member } from "../../src/members/index.js";
import { INCH, inches } from "./cases.js";
import { codesOf, type Loose, laidOut } from "./designs.js";
import { filled, infillOf, soundGuard, twoFlights } from "./infill-cases.js";

const PANEL = { type: "panel", thickness: "1/8", clear: "1/2" };
const LEVEL = { angle: 90, past: 60, before: 480, corner: "level" };

/** Outline corners of a panel's middle plane, in the layout. */
function cornersOf({ frame, section, lengths }: Piece): Vec3[] {
  const half = lengths.blank.value / 2;
  return section.region.outer.map((side) => {
    if (side.kind !== "line") throw new Error("a panel has straight sides");
    return pointToParent(frame, [side.from[0], side.from[1], half]);
  });
}

const panels = (guard: BuiltGuard) => guard.pieces.filter((own) => own.id.includes("-panel"));

/** Distance of a point of the guard's plane from a member's nearer face: from its axis less half of its depth. */
function freeOf(p: Vec3, own: Member, half: number): number {
  const w = sub(p, own.from);
  const along = dot(w, own.frame.z);
  return Math.sqrt(Math.max(0, dot(w, w) - along * along)) - half;
}

describe("panels", () => {
  it("are as large as by hand: level 28 3/4 less 1 wide, 42 less 2 + 1 + 1.9 + 1 high; raking the same plumb, less their secant", () => {
    const guard = soundGuard(filled(PANEL));
    const [rake, level] = [panels(guard)[0]!, panels(guard)[6]!];
    expect([rake.mark, level.mark, rake.kind]).toEqual(["PN1", "PN7", "plate"]);
    const secant = 1 / Math.cos((guard.report!.pitch * Math.PI) / 180);
    const levelArea = (30.25 - 1.5 - 1) * (42 - 2 - 1 - 1.9 - 1);
    const rakeArea = (31.875 - 1.5 - 1) * (41.5 - (1 + 1.9 + 1) * secant);
    for (const [piece, area] of [
      [level, levelArea],
      [rake, rakeArea],
    ] as const) {
      const made = massOf(piece);
      if (!made.ok) throw new Error(piece.id);
      expect(made.value.mass / (area * 0.125 * INCH ** 3 * 7.85e-6)).toBeCloseTo(1, 10);
    }
    expect(rake.section.region.outer).toHaveLength(4);
    expect(guard.report!.infill[0]).toMatchObject({ type: "panel", from: "P1", to: "P2", count: 1 });
    inches(guard.report!.infill[0]!.clear, 0.5);
  });

  it("stand clear of posts and rails by the same distance all round, also where the bay breaks", () => {
    // Posts 20 in before the top nosing and after it: the rails break in the bay between.
    const guard = soundGuard(
      filled(PANEL, (d) => {
        d.legs[1].posts.at = ["20", "50", "93 3/4"];
      }),
    );
    const broken = panels(guard)[3]!;
    // Both rails break: two corners more.
    expect(cornersOf(broken)).toHaveLength(6);
    const by = (id: string) => guard.members.find((own) => own.id === id)!;
    const posts = [by("stair-post-4"), by("landing-post-1")];
    const rails = ["stair-top", "landing-top"].map((id) => ({ own: by(id), half: 0.95 }));
    const low = ["bay-4-low-a", "bay-4-low-b"].map((id) => ({ own: by(id), half: 0.5 }));
    const corners = cornersOf(broken);
    const least = (of: readonly { own: Member; half: number }[], count: number) => {
      const all = corners.map((p) => Math.min(...of.map(({ own, half }) => freeOf(p, own, half * INCH))));
      const touching = all.filter((x) => Math.abs(x - 0.5 * INCH) < 1e-6);
      expect(Math.min(...all)).toBeGreaterThan(0.5 * INCH - 1e-6);
      expect(touching.length).toBe(count);
    };
    least(
      posts.map((own) => ({ own, half: 0.75 })),
      4,
    );
    least(rails, 3);
    least(low, 3);
  });

  it("have five corners where the top rail alone breaks, and keep the rake along the lower one", () => {
    // The demo's bay 4: the rail breaks over the nosing, the lower rail keeps its rake to the post 3 in past it; from the post's
    // face and 1/2 in before it the level edge is longer than the miter takes away.
    const guard = soundGuard(filled(PANEL));
    expect(panels(guard).map((own) => own.section.region.outer.length)).toEqual([4, 4, 4, 5, 4, 4, 4]);
  });

  it("step round the plumb leg of a held break", () => {
    const guard = soundGuard(
      twoFlights(LEVEL, { type: "panel", thickness: 3, clear: 15 }, (d) => {
        Object.assign(d.legs[1], { top: 1150, break: "drop", posts: { at: [400, 600] } });
      }),
    );
    const stepped = panels(guard).find((own) => own.mark === "PN2")!;
    // The lower flight runs along −Y. Two plumb sides at posts and one 15 mm beside the leg.
    const along = cornersOf(stepped).map((p) => -p[1]);
    const plumb = along.filter((y, i) => Math.abs(y - along[(i + 1) % along.length]!) < 1e-9);
    expect(plumb).toHaveLength(3);
    const leg = guard.members.find((own) => own.id.endsWith("-drop"))!;
    const beside = along.map((y) => y + leg.from[1] - 48.3 / 2);
    expect(beside.filter((x) => Math.abs(x - 15) < 1e-6)).toHaveLength(2);
  });

  it("are one sheet a reach at a plan corner, each clear of the plane that halves the turn; alike in both guards", () => {
    const guard = soundGuard(
      twoFlights(LEVEL, { type: "panel", thickness: 4, clear: 15 }, (d) => {
        Object.assign(d, { side: "both" });
        Object.assign(d.stair, { width: 900, inset: 40 });
      }),
    );
    const of = (side: string) => panels(guard).filter((own) => own.id.startsWith(side));
    expect(of("left").map((own) => own.mark)).toEqual([
      "PN1-L",
      "PN2-L",
      "PN3-L",
      "PN4-1-L",
      "PN4-2-L",
      "PN5-L",
    ]);
    of("right").forEach((own, i) => {
      const [a, b] = [massOf(of("left")[i]!), massOf(own)];
      expect(a.ok && b.ok && b.value.mass / a.value.mass).toBeCloseTo(1, 10);
    });
    // The corner stands 60 past the flight's top nosing: the bisecting plane goes through it at 45 degrees.
    const corner = guard.members.find((own) => own.id === "left-landing-top")!.to;
    const normal: Vec3 = [Math.SQRT1_2, Math.SQRT1_2, 0];
    for (const mark of ["PN4-1-L", "PN4-2-L"]) {
      const piece = of("left").find((own) => own.mark === mark)!;
      const { frame, section } = piece;
      const away = section.region.outer.flatMap((side) =>
        [0, 4].map((s) => {
          const at = side.kind === "line" ? side.from : ([0, 0] as const);
          return Math.abs(dot(sub(pointToParent(frame, [at[0], at[1], s]), corner), normal));
        }),
      );
      expect(Math.min(...away)).toBeCloseTo(15, 6);
    }
  });

  it("have a hole in each corner, so far from both edges square to them", () => {
    const guard = soundGuard(filled({ ...PANEL, holes: { diameter: "1/4", edge: "3/4" } }));
    const [rake] = panels(guard);
    expect(rake!.section.region.holes).toHaveLength(4);
    const sides = rake!.section.region.outer;
    for (const hole of rake!.section.region.holes) {
      const [arc] = hole;
      if (arc?.kind !== "arc") throw new Error("a hole is round");
      const away = sides.map((side) => {
        if (side.kind !== "line") throw new Error("a panel has straight sides");
        const [dx, dy] = [side.to[0] - side.from[0], side.to[1] - side.from[1]];
        const [px, py] = [arc.centre[0] - side.from[0], arc.centre[1] - side.from[1]];
        return Math.abs(dx * py - dy * px) / Math.hypot(dx, dy);
      });
      expect(away.filter((x) => Math.abs(x - 0.75 * INCH) < 1e-6)).toHaveLength(2);
    }
  });

  const without = (more: Loose) => filled({ ...PANEL, ...more });
  it.each([
    ["infill-no-room", without({ clear: "15" }), without({ clear: "14" })],
    ["infill-without-rail", filled(PANEL, (d) => delete d.legs[1].undersides), filled(PANEL)],
    ["out-of-range", without({ thickness: 0 }), filled(PANEL)],
    [
      "bad-plate",
      without({ holes: { diameter: "1/2", edge: "1/4" } }),
      without({ holes: { diameter: "1/2", edge: "1/2" } }),
    ],
  ])("say %s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });

  it("say no room between the rails where two of them are too near", () => {
    const near = (mid: string) =>
      filled(PANEL, (d) => {
        d.rails.push({ id: "mid", role: "lower", section: "low" });
        d.legs[0].undersides.mid = mid;
        d.legs[1].undersides.mid = mid;
      });
    const messages = laidOut(near("3 3/4")).diagnostics.filter((own) => own.code === "infill-no-room");
    expect(messages[0]?.message).toContain("between the rails");
    expect(infillOf(laidOut(near("8")))).toHaveLength(7);
  });
});
