/**
 * Feet, ends, equal spaces, splices, caps and pairs: what stands where, by hand, and all of it through the solver.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { massOf } from "../../src/joints/index.js";
import { buildGuard, DEFAULT_SHOP, spacedStations } from "../../src/layout/index.js";
import { INCH, inches } from "./cases.js";
import { laidOut, plain, whole } from "./designs.js";

const pieceOf = (guard: ReturnType<typeof whole>, id: string) => guard.pieces.find((p) => p.id === id)!;

describe("equal spaces", () => {
  const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it("are the fewest that keep to the greatest allowed, ends included", () => {
    fc.assert(
      fc.property(
        mm(0, 500),
        mm(100, 6000),
        mm(50, 1500),
        mm(0, 1.2),
        fc.boolean(),
        (from, long, space, slope, raking) => {
          const along = raking ? "rake" : "plan";
          const stations = spacedStations(
            { from, to: from + long, by: { type: "greatest", space, along } },
            slope,
          );
          const stretch = raking ? Math.hypot(1, slope) : 1;
          expect(stations[0]).toBe(from);
          expect(stations.at(-1)).toBe(from + long);
          const widths = stations.slice(1).map((x, i) => (x - stations[i]!) * stretch);
          for (const width of widths) expect(width).toBeLessThanOrEqual(space + 1e-5);
          const fewer = widths.length - 1;
          if (fewer > 0) expect((long * stretch) / fewer).toBeGreaterThan(space);
        },
      ),
    );
  });

  it("differ by how they are measured: 60 in of rake at 35.4 deg is 48.9 in of plan", () => {
    const spaces = (along: string) =>
      laidOut(
        plain((d) => (d.legs[0].posts = { spacing: { from: "3", to: "123", greatest: "60", along } })),
      ).report.posts.filter((post) => post.leg === "stair").length - 1;
    expect([spaces("plan"), spaces("rake")]).toEqual([2, 3]);
  });
});

describe("feet", () => {
  it("are plates with holes, centred under their posts, of the mass of what is left (by hand)", () => {
    const holes = { diameter: "7/16", along: "2 3/4", across: "3" };
    const guard = whole(plain((d) => (d.foot = { ...d.foot, holes })));
    const plate = pieceOf(guard, "stair-post-2-base");
    expect(plate.kind).toBe("plate");
    const mass = massOf(plate);
    const area = 16 - Math.PI * (7 / 16) ** 2;
    expect(mass.ok && mass.value.volume).toBeCloseTo(area * 0.375 * INCH ** 3, 6);
    const post = guard.members.find((m) => m.id === "stair-post-2")!;
    expect(plate.frame.origin[0]).toBe(post.from[0]);
    expect(post.from[2] - plate.frame.origin[2]).toBeCloseTo(0.375 * INCH, 9);
  });

  it("may be bare: the post then stands on the tread itself", () => {
    const guard = whole(plain((d) => (d.legs[0].foot = { type: "bare" })));
    const post = guard.members.find((m) => m.id === "stair-post-1")!;
    inches(post.from[2], -12 * 7.5625);
    expect(guard.pieces.some((p) => p.id === "stair-post-1-base")).toBe(false);
    expect(guard.pieces.some((p) => p.id === "landing-post-1-base")).toBe(true);
  });

  it("may be on the side: plate and packer between the post's inner face and the stringer, on the walking side", () => {
    const side = {
      type: "side",
      below: "8",
      plate: {
        thickness: "3/8",
        along: "4",
        height: "6",
        centre: "4",
        holes: { diameter: "9/16", along: "2 1/2", across: "4" },
      },
      packer: "1/4",
    };
    for (const [hand, y] of [
      ["left", -1],
      ["right", 1],
    ] as const) {
      const guard = whole(
        plain((d) => {
          d.side = hand;
          d.legs[0].foot = side;
        }),
      );
      const [plate, packer] = [pieceOf(guard, "stair-post-1-side"), pieceOf(guard, "stair-post-1-packer")];
      inches(plate.frame.origin[1], 0.75 * y);
      inches(packer.frame.origin[1], (0.75 + 0.375) * y);
      expect(plate.frame.z[1]).toBeCloseTo(y, 12);
      const post = guard.members.find((m) => m.id === "stair-post-1")!;
      // The nosing line at 3 in behind nosing 1, less 8 and 4 in (by hand).
      const line = (-124.5 * 7.5625) / 10.625;
      inches(post.from[2], line - 8);
      inches(plate.frame.origin[2], line - 4);
    }
  });

  it("compare what is under them with what the fastener asks for, and judge nothing", () => {
    const found = laidOut(
      plain((d) => {
        d.foot.holes = { diameter: "7/16", along: "2 3/4", across: "2 3/4" };
        d.foot.substrate = { name: "oak tread", thickness: "1", leastThickness: "1 1/2", leastEdge: "2" };
      }),
    ).diagnostics.filter((d) => d.members[0] === "stair-post-1");
    expect(found.map((d) => [d.code, d.severity])).toEqual([
      ["substrate-thin", "warning"],
      ["hole-near-edge", "warning"],
    ]);
    // Holes 3 − 1 3/8 in behind the nosing.
    inches(found[1]?.values.got as number, 1.625);
    expect(found.map((d) => d.message).join()).not.toMatch(/approved|compliant|safe/i);
  });
});

describe("the guard's ends", () => {
  it("are plated to a wall with holes", () => {
    const guard = whole(
      plain((d) => {
        d.legs[1].end.plate = {
          width: "4",
          height: "5",
          cornerRadius: "1/4",
          holes: { diameter: "7/16", along: "3 1/2", across: "2 1/2" },
        };
      }),
    );
    const plate = pieceOf(guard, "landing-top-end-plate-1");
    inches(plate.frame.origin[0], 96.375);
    const across = plate.section.region;
    expect(across.holes).toHaveLength(4);
    expect(guard.pieces.find((p) => p.id === "landing-top")?.cuts[1].kind).toBe("square");
  });

  it("are closed by a cap past the last post", () => {
    const guard = whole(
      plain((d) => {
        d.legs[1].length = "100";
        d.legs[1].end = { type: "free", overhang: "2", cap: "1/8" };
      }),
    );
    const cap = pieceOf(guard, "landing-top-cap-1");
    inches(cap.frame.origin[0], 93.75 + 0.75 + 2);
    const mass = massOf(cap);
    expect(mass.ok && mass.value.volume).toBeCloseTo(Math.PI * 0.95 ** 2 * 0.125 * INCH ** 3, 6);
  });

  it("are returned to the post: down 12 in, back level into its face", () => {
    const guard = whole(
      plain((d) => (d.legs[0].start = { type: "return", to: "post", overhang: "6", down: "12" })),
    );
    const [down, back] = ["stair-top-down-0", "stair-top-back-0"].map(
      (id) => guard.members.find((m) => m.id === id)!,
    );
    inches(down!.from[0], -124.5 - 0.75 - 6);
    inches(down!.from[2] - down!.to[2], 12);
    inches(back!.to[0], -124.5);
    expect(pieceOf(guard, "stair-top-back-0").cuts[1].onto).toEqual(["stair-post-1"]);
    expect(pieceOf(guard, "stair-top").cuts[0].kind).toBe("miter");
  });

  it("are returned to the ground on a flange", () => {
    const guard = whole(
      plain(
        (d) =>
          (d.legs[0].start = {
            type: "return",
            to: "ground",
            overhang: "6",
            endPlate: "1/4",
            plate: { width: "4", height: "4" },
          }),
      ),
    );
    const down = guard.members.find((m) => m.id === "stair-top-down-0")!;
    inches(down.to[2], -98.3125 + 0.25);
    expect(new Set(guard.pieces.map((p) => p.mark)).size).toBe(guard.pieces.length);
  });
});

describe("splices", () => {
  const spliced = plain((d) => {
    d.sections.sleeve = "round bar 1.5";
    d.splices = [
      { leg: "landing", at: "48", sleeve: "sleeve", reach: "3" },
      { leg: "stair", at: "50", sleeve: "sleeve", reach: "2" },
    ];
  });
  const guard = whole(spliced);

  it("cut the rail square in two without losing length, a sleeve reaching equally into both", () => {
    const lengths = ["stair-top", "stair-top-2"].map((id) => {
      const m = guard.members.find((own) => own.id === id)!;
      return Math.hypot(m.to[0] - m.from[0], m.to[2] - m.from[2]);
    });
    const unspliced = laidOut(plain()).members.find((m) => m.id === "stair-top")!;
    const whole = Math.hypot(unspliced.to[0] - unspliced.from[0], unspliced.to[2] - unspliced.from[2]);
    expect(lengths[0]! + lengths[1]!).toBeCloseTo(whole, 9);
    expect(pieceOf(guard, "stair-top").cuts[1].kind).toBe("square");
    const sleeve = guard.members.find((m) => m.id === "stair-top-2-sleeve")!;
    inches(Math.hypot(sleeve.to[0] - sleeve.from[0], sleeve.to[2] - sleeve.from[2]), 4);
    inches((sleeve.from[0] + sleeve.to[0]) / 2, -127.5 + 50);
  });

  it("keep to the shop's slip fit and finish: bore 1.610 in, bar 1.5 in, 0.055 in clear all round", () => {
    const codes = (slipFit: number, thickness: number) =>
      buildGuard(spliced, {
        ...DEFAULT_SHOP,
        fitGap: 0,
        slipFit,
        finish: { kind: "zinc", thickness },
      }).diagnostics.map((d) => d.code);
    expect(codes(0.108 * INCH, 0)).toEqual([]);
    expect(codes(0.112 * INCH, 0)).toEqual(["sleeve-too-wide", "sleeve-too-wide"]);
    expect(codes(0.06 * INCH, 0.012 * INCH)).toEqual([]);
    expect(codes(0.06 * INCH, 0.013 * INCH)).toEqual(["sleeve-too-wide", "sleeve-too-wide"]);
  });

  it("part the guard into assemblies; a bay over a splice is loose", () => {
    expect(guard.assemblies.map((own) => own.mark)).toEqual(["A1", "A2", "A3", "LOOSE"]);
    expect(guard.assemblies.at(-1)?.pieces).toEqual(["bay-2-low", "bay-6-low"]);
    const [first] = guard.assemblies;
    expect(first?.pieces).toContain("stair-top-2-sleeve");
    expect(first?.pieces).not.toContain("stair-top-2");
    expect(guard.assemblies.flatMap((own) => own.pieces).sort()).toEqual(
      guard.pieces.map((p) => p.id).sort(),
    );
  });
});

describe("a panel over a splice", () => {
  it("is loose, one beside it goes with its bay", () => {
    const guard = whole(
      plain((d) => {
        d.sections.sleeve = "round bar 1.5";
        d.splices = [{ leg: "stair", at: "40", sleeve: "sleeve", reach: "2" }];
        d.infill = { type: "panel", thickness: "1/8", clear: "1/2" };
      }),
    );
    const loose = guard.assemblies.find((own) => own.kind === "loose")!.pieces;
    const panels = guard.pieces.filter((p) => p.kind === "plate" && p.mark.startsWith("PN")).map((p) => p.id);
    expect(panels).toHaveLength(7);
    expect(loose).toContain("bay-2-low");
    expect(panels.filter((id) => loose.includes(id))).toHaveLength(1);
  });
});

describe("a cap rail", () => {
  it("lies on the top rail all along; heights are to the top of the cap", () => {
    const guard = whole(
      plain((d) => {
        d.sections.cap = "flat 2 x 1/2";
        d.sections.rail = "flat 1-1/2 x 3/8";
        d.sections.post = "square 1-1/2 x 0.120";
        d.rails.splice(1, 0, { role: "cap", section: "cap" });
      }),
    );
    for (const nosing of guard.report!.nosings) inches(nosing.railTop, 42);
    expect(guard.report!.breaks[0]?.topEdge).toBe(0);
    const [bar, cap] = ["landing-top", "landing-cap"].map((id) => guard.members.find((m) => m.id === id)!);
    inches(cap!.from[2] - bar!.from[2], 0.25 + 0.1875);
  });
});

describe("a cap over a break that is held", () => {
  it.each(["drop", "compromise", "riser"])(
    "%s: cap and rail break each on its own line, one upon the other",
    (type) => {
      const guard = whole(
        plain((d) => {
          d.sections.cap = "flat 2 x 1/2";
          d.sections.rail = "flat 1-1/2 x 3/8";
          d.rails.splice(1, 0, { role: "cap", section: "cap" });
          d.legs[0].top = "36";
          d.legs[1].break = type;
        }),
      );
      expect(guard.report!.breaks[0]?.type).toBe(type);
      if (type !== "drop") return;
      // The rail's leg stands behind the cap's, 1/4 and 3/16 in between their axes.
      const [bar, cap] = ["landing-top-drop", "landing-cap-drop"].map(
        (id) => guard.members.find((m) => m.id === id)!,
      );
      inches(bar!.from[0] - cap!.from[0], 0.25 + 0.1875);
    },
  );
});

describe("a guard on both sides", () => {
  const guard = whole(
    plain((d) => {
      d.side = "both";
      Object.assign(d.stair, { width: "40", inset: "3" });
    }),
  );

  it("is the left one and its mirror image across the stair's middle", () => {
    const left = guard.members.filter((m) => m.id.startsWith("left-"));
    const right = guard.members.filter((m) => m.id.startsWith("right-"));
    expect(left).toHaveLength(right.length);
    left.forEach((own, i) => {
      const other = right[i]!;
      expect(other.id).toBe(own.id.replace("left-", "right-"));
      for (const key of ["from", "to"] as const) {
        expect(other[key][0]).toBeCloseTo(own[key][0], 9);
        inches(own[key][1] + other[key][1], -34);
        expect(other[key][2]).toBeCloseTo(own[key][2], 9);
      }
    });
  });
});
