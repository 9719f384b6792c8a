/**
 * Mass properties of pieces against closed forms, the published saddle volumes, and quadrature over the plain saddle.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Joint, massOf, type Piece, solidOf } from "../../src/joints/index.js";
import { saddle } from "../../src/joints/saddle.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { roundBar, roundTube, sectionProperties } from "../../src/members/index.js";
import { BAR20, cutPieces, FLAT, post, RAD, RECT60X30, rail, SQUARE40, TUBE42, TUBE48 } from "./models.js";
import { misses, num, referenceCase, referenceIds } from "./reference.js";

function mass(piece: Piece) {
  const made = massOf(piece);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join());
  return made.value;
}

describe("a piece with flat ends", () => {
  // Every section here is centred on its axis, so a tilted end takes away as much as it leaves: volume = area × axis length.
  it("has the area of its section times its centreline, however its ends lean (closed form)", () => {
    const lean = fc.double({ min: -0.7, max: 0.7, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(TUBE42, BAR20, SQUARE40, RECT60X30, FLAT),
        fc.tuple(lean, lean, lean, lean),
        fc.double({ min: 200, max: 4000, noNaN: true }),
        (section, [a, b, c, d], length) => {
          const cut = (end: 0 | 1, normal: Vec3): Joint => ({
            kind: "cut",
            id: `C${end}`,
            end: { member: "R", end },
            cut: { type: "plane", normal },
          });
          const [piece] = cutPieces(
            [rail("R", [0, 0, 0], [length, 0, 0], { section })],
            [cut(0, [1, a, b]), cut(1, [1, c, d])],
          );
          const { area, massPerMetre } = sectionProperties(section);
          const { volume, mass: kg, density } = mass(piece!);
          expect(Math.abs(volume / (area * length) - 1)).toBeLessThan(1e-12);
          // Steel at 7850 kg/m³: the density the section tables of EN 10219-2 weigh with.
          expect(density).toBe(7850);
          expect(Math.abs(kg / ((massPerMetre * length) / 1000) - 1)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("a coped piece", () => {
  const tee = (
    angle: number,
    section: ReturnType<typeof roundTube>,
    header: ReturnType<typeof roundTube>,
    offset = 0,
  ): Piece => {
    const t = (90 - angle) * RAD;
    const r = rail("R", [-500, 0, 1000 - 500 * Math.tan(t)], [500, 0, 1000 + 500 * Math.tan(t)], {
      section: header,
    });
    const p = post("P", [0, -offset, 0], [0, -offset, 1000], { section });
    return cutPieces([r, p], [{ kind: "cope", id: "K", end: { member: "P", end: 1 }, onto: ["R"] }])[1]!;
  };

  // Source: shared/published-joints.json, elliptic integrals at 30 digits: what a solid branch leaves inside the header.
  it.each(referenceIds("cope-volume-"))("leaves the published volume %s", (id) => {
    const c = referenceCase(id);
    const [r, R] = [num(c.inputs, "r_mm"), num(c.inputs, "R_mm")];
    const piece = tee(
      num(c.inputs, "axis_angle_deg"),
      roundBar({ od: 2 * r }),
      roundTube({ od: 2 * R, wall: 3 }),
    );
    const missing = Math.PI * r * r * 1000 - mass(piece).volume;
    expect(misses(c, { volume: [missing, c.expected as number] })).toEqual([]);
  });

  it("of tube is the integral of the plain saddle over its wall (second route: ∫∫ ρ s(φ, ρ) dρ dφ)", () => {
    // Simpson over the wall; the trapezoid rule over a whole turn converges faster than any power.
    for (const [angle, offset, header] of [
      [90, 0, 60.3],
      [55, 0, 60.3],
      [37, 4, 60.3],
      [70, -2, 48.3],
    ] as const) {
      const [ro, wall, steps, n] = [21.2, 3.2, 64, 360];
      let inside = 0;
      for (let k = 0; k <= steps; k++) {
        const rho = ro - wall + (wall * k) / steps;
        const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
        const { stations } = saddle({
          branch: { od: 2 * rho, wall: rho / 2 },
          header: { od: header },
          angle,
          offset,
          stations: n,
        });
        const ring = stations.reduce((sum, s) => sum + s.outer!, 0) * ((2 * Math.PI) / n);
        inside += (weight * rho * ring * wall) / (3 * steps);
      }
      const { area } = sectionProperties(TUBE42);
      const volume = mass(tee(angle, TUBE42, roundTube({ od: header, wall: 3.2 }), offset)).volume;
      expect(Math.abs(area * 1000 - inside - volume)).toBeLessThan(1e-4);
    }
  });
});

describe("massOf", () => {
  const [piece] = cutPieces([rail("R", [0, 0, 0], [1000, 0, 0], { section: TUBE48 })]);

  it("uses a solid that is at hand", () => {
    const solid = solidOf(piece!);
    if (!solid.ok) throw new Error("no solid");
    expect(massOf(piece!, solid.value)).toEqual(massOf(piece!));
    // A solid of twice the length: its own volume is what counts.
    const [longer] = cutPieces([rail("R", [0, 0, 0], [2000, 0, 0], { section: TUBE48 })]);
    expect(massOf(longer!, solid.value)).toEqual(massOf(piece!));
  });

  it("unknown-material: a name the table does not have", () => {
    const made = massOf({ ...piece!, material: "unobtainium" });
    expect(made).toMatchObject({ ok: false, diagnostics: [{ code: "unknown-material", members: ["R"] }] });
  });

  it("passes on why there is no solid", () => {
    const plane = {
      kind: "plane",
      point: [0, 0, -5],
      normal: [0, 0, 1],
      source: { joint: "J", onto: "" },
    } as const;
    const made = massOf({ ...piece!, ends: [piece!.ends[0], plane] });
    expect(made.ok).toBe(false);
    expect(made.diagnostics.length).toBeGreaterThan(0);
  });
});
