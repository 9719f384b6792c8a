import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { saddle } from "../../src/joints/saddle.js";
import { list, misses, num, record, referenceCase, referenceIds } from "./reference.js";

const RAD = Math.PI / 180;

describe("saddle against references", () => {
  // Source: shared/shop-cases.json, independent script from the cited formulas.
  it.each(referenceIds("c10-", "c11-", "c13-", "c14-", "c19-", "c20-"))("meets the worked cope %s", (id) => {
    const c = referenceCase(id);
    const cut = saddle({
      branch: { od: num(c.inputs, "branch_OD"), wall: num(c.inputs, "branch_wall") },
      header: { od: num(c.inputs, "header_OD") },
      angle: num(c.inputs, "axis_angle_deg"),
      offset: num(c.inputs, "offset"),
      gap: num(c.inputs, "weld_gap"),
      stations: num(c.inputs, "stations"),
    });
    const columns = { outer: "s_outer", effective: "s_effective", dihedral: "dihedral_deg" } as const;
    for (const [field, key] of Object.entries(columns)) {
      const expected = list(c.expected, key);
      expect(cut.stations).toHaveLength(expected.length);
      const got = cut.stations.map((s) => s[field as keyof typeof columns]);
      const rows = expected.map((e, i) => [`${field} ${i}`, [got[i], e] as const]);
      expect(misses(c, Object.fromEntries(rows))).toEqual([]);
    }
    const landings = cut.stations.map((s) => s.effective ?? Number.NaN);
    const found = misses(c, {
      depth: [Math.max(...landings) - Math.min(...landings), num(c.expected, "saddle_depth")],
      least: [cut.leastDihedral, num(c.expected, "min_dihedral_deg")],
      at: [cut.leastDihedralAt, num(c.expected, "min_dihedral_at_phi_deg")],
      miss: [cut.missBy, 0],
    });
    expect(found).toEqual([]);
    const edges = (c.expected as { governing_edge: readonly string[] }).governing_edge;
    edges.forEach((edge, i) => {
      const s = cut.stations[i]!;
      // `mid-wall`: the landing is past both edges; `tie`: it is on both.
      expect([s.effective === s.outer, s.effective === s.inner]).toEqual(
        { inner: [false, true], outer: [true, false], "mid-wall": [false, false], tie: [true, true] }[edge],
      );
    });
  });

  // Source: shared/published-joints.json, two right cylinders at 30 digits, each ordinate substituted in the header.
  it.each(referenceIds("cope-").filter((id) => !id.startsWith("cope-volume")))(
    "meets published ordinates %s",
    (id) => {
      const c = referenceCase(id);
      const od = 2 * num(c.inputs, "branch_radius");
      const cut = saddle({
        branch: { od, wall: od / 8 },
        header: { od: 2 * num(c.inputs, "header_radius") },
        angle: num(c.inputs, "axis_angle_deg"),
        offset: num(c.inputs, "offset"),
        stations: 16,
      });
      const expected = list(c.expected, "s");
      const rows = expected.map((e, i) => [`s ${i}`, [cut.stations[i]?.outer, e] as const]);
      expect(misses(c, { ...Object.fromEntries(rows), miss: [cut.missBy, 0] })).toEqual([]);
      expect(cut.stations.map((s) => s.phi)).toEqual(list(c.inputs, "phi_deg"));
    },
  );

  // Source: as above. The inside edge is the outside edge of a tube as big as the bore.
  it("meets the published inside edge of a 48.3 × 3.2 branch", () => {
    const c = referenceCase("cope-bore-eq-90");
    const cut = saddle({ branch: { od: 48.3, wall: 3.2 }, header: { od: 48.3 }, angle: 90, stations: 16 });
    const rows = list(c.expected, "s").map((e, i) => [`s ${i}`, [cut.stations[i]?.inner, e] as const]);
    expect(misses(c, Object.fromEntries(rows))).toEqual([]);
  });

  // Source: shared/published-joints.json, arc length at 30 digits. Chords of 1800 and 3600 stations, extrapolated.
  it("has the published edge length", () => {
    const c = referenceCase("saddle-length-21p2-24p15-90");
    const edge = (stations: number): number => {
      const input = { branch: { od: 42.4, wall: 3.2 }, header: { od: 48.3 }, angle: 90, stations };
      const s = saddle(input).stations.map(({ outer }) => outer ?? Number.NaN);
      const chord = 42.4 * Math.sin(Math.PI / stations);
      return s.reduce((sum, at, i) => sum + Math.hypot(chord, at - s[(i + 1) % stations]!), 0);
    };
    const length = (4 * edge(3600) - edge(1800)) / 3;
    expect(misses(c, { length: [length, c.expected as number] })).toEqual([]);
  });

  // Source: shared/shop-cases.json c22. The post's length is to where the square-cut wall lands under the rail.
  it("sets the worked lengths of a post under a round rail", () => {
    const c = referenceCase("c22-post-under-round-rail-lengths");
    const rake = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run")) / RAD;
    const cut = saddle({
      branch: { od: num(c.inputs, "post_OD"), wall: num(c.inputs, "wall") },
      header: { od: num(c.inputs, "rail_OD") },
      angle: 90 - rake,
      stations: 360,
    });
    const axis =
      num(c.inputs, "rail_top_above_base_at_post_centre") -
      num(c.inputs, "rail_OD") / 2 / Math.cos(rake * RAD);
    const foot = axis - num(c.inputs, "base_plate");
    const at = (phi: number): number => foot - (cut.stations[phi]?.effective ?? Number.NaN);
    const found = misses(c, {
      axis: [axis, num(c.expected, "rail_axis_height")],
      uphill: [at(0), num(c.expected, "uphill_crown")],
      downhill: [at(180), num(c.expected, "downhill_crown")],
      short: [Math.min(...cut.stations.map((s) => at(s.phi))), num(c.expected, "short_point_length")],
      long: [at(60), num(c.expected, "long_point_length")],
    });
    expect(found).toEqual([]);
  });

  // Source: shared/shop-cases.json k01, k05: cos ψ = −N_header · N_branch. Their angle of the least is read off a scan of
  // 0.05 degrees, so it stands to ±0.1, their fractions to ±0.001.
  it.each(referenceIds("k01-", "k05-"))("meets the worked angles between the skins %s", (id) => {
    const c = referenceCase(id);
    const od = num(c.inputs, "branch_OD");
    const cut = saddle({
      branch: { od, wall: od / 10 },
      header: { od: num(c.inputs, "header_OD") },
      angle: num(c.inputs, "axis_angle_deg"),
      offset: num(c.inputs, "offset"),
      stations: 3600,
    });
    const expected = record(c.expected, "dihedral_at_phi");
    const rows = Object.entries(expected).map(([phi, e]) => [
      phi,
      [cut.stations[10 * Number(phi)]?.dihedral, e] as const,
    ]);
    expect(rows).toHaveLength(8);
    expect(misses(c, Object.fromEntries(rows))).toEqual([]);
    expect(misses(c, { least: [cut.leastDihedral, num(c.expected, "min_deg")] })).toEqual([]);
    expect(Math.abs(cut.leastDihedralAt! - num(c.expected, "min_at_phi"))).toBeLessThanOrEqual(0.1);
    for (const limit of [60, 30]) {
      const under = cut.stations.filter((s) => s.dihedral! < limit).length / 3600;
      expect(Math.abs(under - num(c.expected, `fraction_below_${limit}`))).toBeLessThanOrEqual(0.001);
    }
  });
});

describe("saddle at its limits", () => {
  const branch = { od: 48.3, wall: 3.2 };

  it("answers null on each edge for itself where a branch hangs off its header, and says by how much", () => {
    // Outside 24.15 wide of a header of 21.2: the outside misses at φ = 90, the bore (20.95) does not.
    const cut = saddle({ branch, header: { od: 42.4 }, angle: 90, stations: 4 });
    const side = cut.stations[1]!;
    expect([side.outer, side.dihedral]).toEqual([null, null]);
    // By hand: √(21.2² − 20.95²) at the inner edge; further out the header falls away.
    expect(side.inner).toBeCloseTo(Math.sqrt(21.2 ** 2 - 20.95 ** 2), 12);
    expect(side.effective).toBe(side.inner);
    expect(cut.missBy).toBeCloseTo(2.95, 12);
    expect(cut.stations[0]?.outer).toBeCloseTo(21.2, 12);
  });

  it("answers null throughout where nothing touches", () => {
    const cut = saddle({ branch, header: { od: 48.3 }, angle: 60, offset: 50 });
    expect(
      cut.stations.every((s) => [s.outer, s.inner, s.effective, s.dihedral].every((v) => v === null)),
    ).toBe(true);
    expect([cut.leastDihedral, cut.leastDihedralAt]).toEqual([null, null]);
    expect(cut.missBy).toBeCloseTo(50, 12);
  });

  it("counts a gap as a thicker header, but not in the angle between the skins (definition)", () => {
    const input = { branch, angle: 55, offset: 1.5 };
    const [gapped, thick] = [
      saddle({ ...input, header: { od: 60.3 }, gap: 2 }),
      saddle({ ...input, header: { od: 64.3 } }),
    ];
    gapped.stations.forEach((s, i) => {
      expect(s.effective).toBeCloseTo(thick.stations[i]!.effective!, 12);
    });
    const tight = saddle({ ...input, header: { od: 60.3 } });
    expect(gapped.stations.map((s) => s.dihedral)).toEqual(tight.stations.map((s) => s.dihedral));
  });

  it("closes the ears of equal tubes exactly and opens flat there (closed form)", () => {
    const cut = saddle({ branch, header: { od: 48.3 }, angle: 55 });
    expect([cut.stations[6]?.outer, cut.stations[18]?.outer]).toEqual([0, 0]);
    expect([cut.stations[6]?.dihedral, cut.stations[18]?.dihedral]).toEqual([180, 180]);
    expect(cut.leastDihedral).toBeCloseTo(55, 12);
    expect(cut.leastDihedralAt).toBe(180);
  });

  it("takes solid bar: its inner line is the axis (closed form √(R² − e²)/sin β)", () => {
    const cut = saddle({ branch: { od: 12, wall: 6 }, header: { od: 60.3 }, angle: 40, offset: 5 });
    for (const s of cut.stations) {
      expect(s.inner).toBeCloseTo(Math.sqrt(30.15 ** 2 - 25) / Math.sin(40 * RAD), 12);
    }
  });

  it.each([
    ["branch.od", { branch: { od: 0, wall: 1 } }],
    ["branch.wall", { branch: { od: 48.3, wall: 24.2 } }],
    ["branch.wall", { branch: { od: 48.3, wall: 0 } }],
    ["header.od", { header: { od: Number.NaN } }],
    ["angle", { angle: 0 }],
    ["angle", { angle: 90.5 }],
    ["angle", { angle: Number.NaN }],
    ["offset", { offset: Number.POSITIVE_INFINITY }],
    ["gap", { gap: -1 }],
    ["stations", { stations: 2 }],
    ["stations", { stations: 3601 }],
    ["stations", { stations: 24.5 }],
    ["leastAngle", { leastAngle: 0 }],
  ])("names a wrong %s: %j", (field, change) => {
    const input = { branch, header: { od: 60.3 }, angle: 60, ...change };
    expect(() => saddle(input)).toThrow(`bad-saddle: \`${field}\` must be`);
  });

  it("refuses a branch flatter than the stated limit, which is an input", () => {
    const input = { branch, header: { od: 60.3 }, angle: 14 };
    expect(() => saddle(input)).toThrow(/^angle-too-flat: .*at least 15 deg.*got 14/);
    expect(saddle({ ...input, leastAngle: 10 }).leastDihedral).toBeCloseTo(14, 10);
  });
});

describe("saddle properties", () => {
  const size = fc.double({ min: 20, max: 80, noNaN: true });
  const input = fc
    .record({
      header: size,
      share: fc.double({ min: 0.1, max: 1, noNaN: true }),
      wall: fc.double({ min: 0.05, max: 1, noNaN: true }),
      angle: fc.double({ min: 15, max: 90, noNaN: true }),
      side: fc.double({ min: -1, max: 1, noNaN: true }),
    })
    .map(({ header, share, wall, angle, side }) => {
      const od = header * share;
      return {
        branch: { od, wall: (od / 2) * wall },
        header: { od: header },
        angle,
        offset: (side * (header - od)) / 2,
      };
    });

  it("lands no earlier than either edge, and all of it lands where it is inside the header", () => {
    fc.assert(
      fc.property(input, (of) => {
        const cut = saddle(of);
        expect(cut.missBy).toBe(0);
        for (const s of cut.stations) {
          expect(s.effective).toBeGreaterThanOrEqual(s.outer!);
          expect(s.effective).toBeGreaterThanOrEqual(s.inner!);
        }
      }),
    );
  });

  it("is the same on both sides if and only if it is not offset", () => {
    fc.assert(
      fc.property(input, (of) => {
        const apart = (offset: number): number => {
          const s = saddle({ ...of, offset }).stations;
          return Math.max(...s.map((at, i) => Math.abs(at.outer! - s[(24 - i) % 24]!.outer!)));
        };
        expect(apart(0)).toBeLessThan(1e-5);
        if (Math.abs(of.offset) > 0.01) expect(apart(of.offset)).toBeGreaterThan(1e-5);
      }),
    );
  });

  it("mirrors with the offset's sign", () => {
    fc.assert(
      fc.property(input, (of) => {
        const [a, b] = [saddle(of), saddle({ ...of, offset: -of.offset })];
        a.stations.forEach((s, i) => {
          const m = b.stations[(24 - i) % 24]!;
          expect(m.effective).toBeCloseTo(s.effective!, 5);
          expect(m.dihedral).toBeCloseTo(s.dihedral!, 4);
        });
        expect(b.leastDihedral).toBeCloseTo(a.leastDihedral!, 8);
      }),
    );
  });

  it("scales: distances by the factor, angles not at all", () => {
    fc.assert(
      fc.property(input, fc.double({ min: 0.1, max: 30, noNaN: true }), (of, k) => {
        fc.pre(of.branch.od / 2 + Math.abs(of.offset) < of.header.od / 2 - 1e-3);
        const [a, b] = [
          saddle(of),
          saddle({
            branch: { od: k * of.branch.od, wall: Math.min(k * of.branch.wall, (k * of.branch.od) / 2) },
            header: { od: k * of.header.od },
            angle: of.angle,
            offset: k * of.offset,
          }),
        ];
        a.stations.forEach((s, i) => {
          expect(b.stations[i]!.effective! / k).toBeCloseTo(s.effective!, 8);
          expect(b.stations[i]!.dihedral).toBeCloseTo(s.dihedral!, 6);
        });
        expect(b.leastDihedral).toBeCloseTo(a.leastDihedral!, 8);
      }),
    );
  });
});
