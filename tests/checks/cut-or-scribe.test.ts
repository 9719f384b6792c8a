/**
 * Cut or scribe on whole guards: counted, taped, surveyed, with posts dry-set and set. The rule table of `cutOrScribe` and
 * handbook practice are the measure (common practice, no source); the block rule is shop case c30.
 */
import { describe, expect, it } from "vitest";
import { cutOrScribe, type FitOptions } from "../../src/checks/index.js";
import type { AsSet, AsSetPost, EndDecision, LaidCase } from "../../src/layout/index.js";
import { shopCase } from "../layout/cases.js";
import { example } from "../layout/designs.js";
import { DEMO } from "../layout/survey/survey-cases.js";
import {
  type BuiltCase,
  built,
  designOf,
  document,
  guardOf,
  nosingsOf,
  survey,
} from "../layout/uncertainty/fit-designs.js";

const GAP = 1.5;

function decided(guard: BuiltCase, more: Partial<LaidCase> = {}, options: Partial<FitOptions> = {}) {
  const found = cutOrScribe({ design: guard.design, ...more }, guard, { gap: GAP, ...options });
  if (!found.ok) throw new Error(found.diagnostics.map((own) => own.message).join(" "));
  return (mark: string, end: 0 | 1): EndDecision => {
    const own = found.value.filter((one) => one.mark === mark && one.end === end);
    expect(own, `${mark} ${end}`).toHaveLength(1);
    return own[0] as EndDecision;
  };
}

const post = (mark: string, stage: AsSetPost["stage"], more: Partial<AsSetPost> = {}): AsSetPost => ({
  ...{ post: mark, stage, lean: 0, leanAcross: 0, across: 0 },
  ...{ sigma: { x: 0.3, z: 0.3, lean: 0.02 }, path: `posts.${mark}` },
  ...more,
});
const stood = (posts: readonly AsSetPost[], more: Partial<AsSet> = {}): AsSet => ({
  ...{ posts, legs: [], made: [] },
  ...more,
});

describe("counted steps", () => {
  const guard = guardOf(example());
  const at = decided(guard);

  it("let nothing be cut that hangs on them, and say why", () => {
    for (const mark of ["R1", "R2", "B1", "B4", "P1", "P4"]) {
      for (const end of [0, 1] as const) {
        const own = at(mark, end);
        expect(own, mark).toMatchObject({
          decision: "counted",
          rule: "counted",
          leaveLong: 0,
          sigmaLength: null,
        });
        expect(own.reason).toContain("counted, not measured");
      }
    }
  });

  it("leave alone what stands on the landing", () => {
    for (const mark of ["B5", "B6", "B7"]) expect(at(mark, 0).decision, mark).toBe("cut");
    expect(at("P6", 1)).toMatchObject({ decision: "cut", rule: "bench" });
  });
});

describe("taped nosings, the guard made on the bench", () => {
  const guard = guardOf(document());
  const at = decided(guard);

  it("cut what is made to its mate, and free ends", () => {
    expect(at("R1", 0)).toMatchObject({ decision: "cut", rule: "free", meets: "" });
    expect(at("R1", 1)).toMatchObject({ decision: "cut", rule: "bench", meets: "A1" });
    expect(at("R2", 0)).toMatchObject({ decision: "cut", rule: "bench" });
    expect(at("B1", 1).rule).toBe("bench");
    expect(at("P2", 1).rule).toBe("bench");
    expect(at("P2-BP", 0).rule).toBe("plate-face");
  });

  it("scribe to the wall, whatever sigma is", () => {
    const own = at("R2", 1);
    expect(own).toMatchObject({ decision: "scribe", rule: "not-set", meets: "the wall" });
    expect(own.leaveLong).toBe(2 * own.sigmaLength!);
    expect(own.reason).toContain("not measured as it stands");
    const wide = decided(guard, {}, { gap: 1000 })("R2", 1);
    expect(wide.decision).toBe("scribe");
  });

  it("scribe feet to their treads where two sigma are over the gap, else cut them", () => {
    const own = at("P2", 0);
    expect(own).toMatchObject({ decision: "scribe", rule: "closes", meets: "tread 4" });
    expect(own.leaveLong).toBe(2 * own.sigmaLength!);
    const wide = decided(guard, {}, { gap: own.leaveLong + 1e-6 })("P2", 0);
    expect(wide).toMatchObject({ decision: "cut", rule: "within-gap", leaveLong: 0 });
    const narrow = decided(guard, {}, { gap: own.leaveLong + 1e-6, k: 2.1 })("P2", 0);
    expect(narrow.decision).toBe("scribe");
  });

  it("know the floor of a landing by a level reading from the nosing", () => {
    // A digital level to 0.1° over 80 and 1900 mm: 0.14 and 3.3 mm.
    const [near, far] = [at("P4", 0), at("P6", 0)];
    expect(near).toMatchObject({ decision: "cut", rule: "within-gap" });
    expect(far).toMatchObject({ decision: "scribe", rule: "closes", meets: "the landing" });
    expect(Math.abs(far.sigmaLength! - 1900 * Math.tan(Math.PI / 1800))).toBeLessThan(1e-3);
    expect(far.mostly).toBe("the level of the landing there");
  });

  it("never add what is left long to a length", () => {
    const before = JSON.stringify(guard.pieces);
    decided(guard);
    expect(JSON.stringify(guard.pieces)).toBe(before);
  });
});

describe("a survey", () => {
  const read = survey(DEMO);
  const loose = document((own) => {
    own.stair = { nosings: nosingsOf(read), overhang: 20 };
  });

  it("knows the steps by its covariance, and says from which reading most of a length comes", () => {
    const guard = built(designOf(loose, read));
    const own = decided(guard)("P1", 0);
    expect(own.decision).toBe("scribe");
    expect(own.mostly).toMatch(/^the (run|height) of nosing \d+$/);
    const sharp = survey(DEMO.map((one) => ({ ...one, sigma: one.sigma! / 20 })));
    const better = decided(built(designOf(loose, sharp)))("P1", 0);
    expect(better).toMatchObject({ decision: "cut", rule: "within-gap" });
    // A twentieth, and the level reading over the 80 mm from nosing to post, which is no better: 0.14 mm.
    expect(better.sigmaLength!).toBeLessThan(Math.hypot(own.sigmaLength! / 20, 0.15));
  });

  it("that knows nothing of one nosing cannot be used", () => {
    const without = { ...read, coordinates: read.coordinates.filter((own) => own.point !== 5) };
    const guard = built(designOf(loose, without));
    const found = cutOrScribe({ design: guard.design }, guard, { gap: GAP });
    expect(found.ok).toBe(false);
    expect(found.diagnostics.map((own) => [own.code, own.path])).toEqual([
      ["sigma-missing", "legs[0].stair.survey"],
    ]);
    expect(found.diagnostics[0]!.message).toContain("none of x5, z5");
  });
});

describe("posts as set", () => {
  const guard = guardOf(document());

  it("that are only dry-set are scribed to, whatever sigma is", () => {
    const asSet = stood([post("P1", "dry-set"), post("P2", "dry-set")]);
    const at = decided(guard, { asSet }, { gap: 1000 });
    expect(at("B1", 0)).toMatchObject({ decision: "scribe", rule: "not-set", meets: "P1" });
    expect(at("B1", 1)).toMatchObject({ decision: "scribe", rule: "not-set", meets: "P2" });
    expect(at("B1", 0).reason).toContain("P1 is not set yet");
    expect(at("B1", 0).leaveLong).toBeGreaterThan(0);
    expect(at("P1", 0)).toMatchObject({ decision: "made", rule: "made", meets: "tread 1" });
  });

  it("that are set take a rail cut to length where the gap allows it, else one end closes and the other is fitted first", () => {
    const asSet = stood(["P1", "P2", "P3"].map((mark) => post(mark, "set")));
    const wide = decided(guard, { asSet }, { gap: 1000 });
    for (const end of [0, 1] as const) {
      expect(wide("B1", end)).toMatchObject({ decision: "cut", rule: "within-gap" });
    }
    const at = decided(guard, { asSet }, { gap: 0.01 });
    expect(at("B1", 0)).toMatchObject({ decision: "cut", rule: "fitted-first", leaveLong: 0 });
    expect(at("B1", 1)).toMatchObject({ decision: "scribe", rule: "closes", meets: "P2" });
    // The rail is laid on posts that stand: their tops take it up. Rails still meet each other on the bench.
    expect(at("P2", 1)).toMatchObject({ decision: "scribe", rule: "closes", meets: "R1" });
    expect(at("R1", 1).rule).toBe("bench");
  });

  it("leave a post that nobody has set yet to be scribed to", () => {
    const at = decided(guard, { asSet: stood([post("P1", "set")]) }, { gap: 1000 });
    expect(at("B1", 0).decision).toBe("cut");
    expect(at("B1", 1)).toMatchObject({ decision: "scribe", rule: "not-set", meets: "P2" });
    expect(at("P2", 0).rule).toBe("within-gap");
  });

  it("can be set first without a reading of them", () => {
    const at = decided(guard, {}, { postsFirst: true });
    expect(at("B1", 0)).toMatchObject({ rule: "not-set", meets: "P1" });
  });

  it("and a wall that was measured as found is cut to where the gap allows it", () => {
    const legs = [{ leg: "landing", length: 2000, sigma: 0.2, path: "legs[0]" }];
    const wide = decided(guard, { asSet: stood([], { legs }) }, { gap: 1000 });
    expect(wide("R2", 1)).toMatchObject({ decision: "cut", rule: "within-gap", meets: "the wall" });
    const at = decided(guard, { asSet: stood([], { legs }) }, { gap: 0.01 });
    expect(at("R2", 1)).toMatchObject({ decision: "scribe", rule: "closes" });
  });

  it("leave what is made as it is", () => {
    const piece = guard.pieces.find((own) => own.mark === "B2")!;
    const made = (features: readonly ("start" | "end")[], set: boolean) =>
      decided(guard, { asSet: stood([], { made: [{ piece, features, set, path: "made[0]" }] }) });
    expect(made(["end"], false)("B2", 1)).toMatchObject({ decision: "made", leaveLong: 0 });
    expect(made(["end"], false)("B2", 0).decision).toBe("cut");
    expect(made([], true)("B2", 0).decision).toBe("made");
  });

  it("need to say how well they were measured", () => {
    const sigma = { x: Number.NaN, z: 0.3, lean: 0 };
    const asSet = stood([post("P1", "set", { x: -1800, sigma }), post("P2", "set", { baseZ: -900 })]);
    const found = cutOrScribe({ design: guard.design, asSet }, guard, { gap: GAP });
    expect(found.ok).toBe(false);
    expect(found.diagnostics.map((own) => [own.code, own.path])).toEqual([["sigma-missing", "posts.P1"]]);
  });
});

describe("assemblies that join on site", () => {
  const guard = guardOf(
    document((own) => {
      own.fieldJoints = ["breaks"];
    }),
  );
  const at = decided(guard);

  it("are cut on the side that is set first and scribed on the other", () => {
    expect(at("R1", 1)).toMatchObject({ decision: "cut", rule: "set-first", meets: "R2" });
    expect(at("R2", 0)).toMatchObject({ decision: "scribe", rule: "set-later", meets: "R1" });
    expect(at("R2", 0).leaveLong).toBeGreaterThan(0);
  });

  it("are scribed at a splice of the upper piece", () => {
    const spliced = guardOf(
      document((own) => {
        own.sections.sleeve = "round 40 x 3";
        own.splices = [{ leg: "stair", at: 500, sleeve: "sleeve", reach: 60 }];
      }),
    );
    const rails = spliced.pieces.filter((own) => own.cuts.some((cut) => cut.onto.includes("splice")));
    expect(rails).toHaveLength(2);
    const [lower, upper] = rails as [(typeof rails)[0], (typeof rails)[0]];
    const each = decided(spliced);
    expect(each(lower.mark, 1)).toMatchObject({ rule: "set-first", meets: upper.mark });
    expect(each(upper.mark, 0)).toMatchObject({ rule: "set-later", meets: lower.mark });
  });
});

describe("feet", () => {
  it("of a pair stand alike on both sides", () => {
    const guard = guardOf(
      document((own) => {
        own.side = "both";
        own.stair = { ...own.stair, width: 1100, inset: 60 };
      }),
    );
    const at = decided(guard);
    for (const n of [1, 2, 3, 4, 5, 6]) {
      const [left, right] = [at(`P${n}-L`, 0), at(`P${n}-R`, 0)];
      expect([right.rule, right.meets]).toEqual([left.rule, left.meets]);
      expect(Math.abs(right.leaveLong - left.leaveLong)).toBeLessThan(1e-9);
    }
    expect(at("P2-R", 0).meets).toBe("tread 4");
  });

  it("of posts on the side of a stringer hang free", () => {
    const guard = guardOf(
      document((own) => {
        own.foot = { type: "side", below: 120, plate: { thickness: 10, along: 90, height: 120, centre: 60 } };
      }),
    );
    expect(decided(guard)("P2", 0)).toMatchObject({ decision: "cut", rule: "free" });
  });
});

describe("a raking rail scribed to a plumb face", () => {
  it("moves its cut by the block over cos θ (shop case c30)", () => {
    const { inputs, expected } = shopCase("c30");
    const { rise, run } = inputs as Record<string, number>;
    const guard = guardOf(
      document((own) => {
        own.stair = {
          nosings: [0, 1, 2, 3].map((i) => ({ run: run! * 25.4 * i, height: rise! * 25.4 * (i + 1) })),
        };
        own.legs[0].posts.onTreads = [1, 3];
      }),
    );
    const asSet = stood([post("P1", "dry-set"), post("P2", "dry-set")]);
    const own = decided(guard, { asSet })("B1", 1);
    expect(
      Math.abs(own.alongPerBlock! - (expected as Record<string, number>).scribe_shift_per_block!),
    ).toBeLessThan(1e-9);
    expect(decided(guard)("R2", 1).alongPerBlock).toBe(1);
    expect(decided(guard)("P1", 0).alongPerBlock).toBeUndefined();
  });
});

describe("what cannot be decided", () => {
  const guard = guardOf(document());
  it.each([
    [{ gap: undefined as unknown as number }, "fit-gap-missing"],
    [{ gap: -1 }, "fit-gap-missing"],
    [{ gap: 1, k: 0 }, "bad-coverage"],
    [{ gap: 1, k: -2 }, "bad-coverage"],
  ])("is said: %o", (options, code) => {
    const found = cutOrScribe({ design: guard.design }, guard, options);
    expect(found.ok).toBe(false);
    expect(found.diagnostics.map((own) => own.code)).toEqual([code]);
  });

  it("is nothing where a gap of 0 is meant: everything unknown is scribed", () => {
    const at = decided(guard, {}, { gap: 0 });
    expect(at("P4", 0)).toMatchObject({ decision: "scribe", rule: "closes" });
  });
});
