/**
 * Reading as-set documents: each mistake has its own code and path, beside it the nearest document without it; places are read in
 * the design's own words; ends of made pieces are called as on the papers. Lengths by their own arithmetic (1 in = 25.4 mm).
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import type * as z from "zod";
import { buildGuard } from "../../../src/layout/build-guard.js";
import {
  type AsSetInput,
  asSetJsonSchema,
  type asSetSchema,
  parseAsSet,
  tapeError,
} from "../../../src/layout/index.js";
import { example, type Loose } from "../designs.js";
import { asSetExample, designOf, INCH, standingOn } from "./documents.js";

const ROOT = new URL("../../../", import.meta.url);
const design = designOf(example());
const read = (document: Loose, load?: Parameters<typeof parseAsSet>[2]) =>
  parseAsSet({ version: 1, unit: "in", ...document }, design, load);
const found = (document: Loose, load?: Parameters<typeof parseAsSet>[2]) =>
  read(document, load).diagnostics.map((d) => `${d.severity} ${d.code} ${d.path}`);

describe("the example", () => {
  it("reads without a finding; what was not measured is left out", () => {
    const result = parseAsSet(asSetExample(), design);
    expect(result.diagnostics).toEqual([]);
    if (!result.ok) return;
    const [p1, , , p4] = result.value.posts;
    expect(p1?.x).toBeCloseTo(-124.4375 * INCH, 9);
    expect(p1?.baseZ).toBeCloseTo(-90.8125 * INCH, 9);
    expect([p1?.lean, p1?.leanAcross, p1?.across, p1?.stage]).toEqual([0.2, 0, 0, "dry-set"]);
    expect(p4 && "x" in p4).toBe(false);
    expect(result.value.made).toEqual([]);
  });

  it("names its schema, which is committed as the code makes it (npm run schema writes it)", () => {
    const { $schema } = asSetExample() as { $schema: string };
    const file = new URL("schema/as-set.schema.json", ROOT);
    expect(new URL($schema, new URL("examples/x.json", ROOT)).href).toBe(file.href);
    expect(readFileSync(file, "utf8")).toBe(`${JSON.stringify(asSetJsonSchema(), null, 2)}\n`);
    expectTypeOf<z.input<typeof asSetSchema>>().toEqualTypeOf<AsSetInput>();
  });
});

describe("where a post stands", () => {
  const x = (post: Loose): number =>
    (standingOn(example(), { posts: [post] }).posts[0]?.x ?? Number.NaN) / INCH;

  it("is read from the top nosing, from its tread's nosing or from the start of its leg", () => {
    expect(x({ post: "P2", x: "-92 3/4" })).toBeCloseTo(-92.75, 9);
    // Tread 4 of 13 goings of 10 5/8 in: 9 goings before the top nosing.
    expect(x({ post: "P2", behindNosing: "2 7/8" })).toBeCloseTo(-9 * 10.625 + 2.875, 9);
    expect(x({ post: "P6", at: "33 3/8" })).toBeCloseTo(33.375, 9);
    expect(x({ post: "P6", x: 847.725 / INCH })).toBeCloseTo(33.375, 9);
  });

  it("may be uncertain: by the tape's own error over √3 with 1 mm for hook and eye (JCGM 100:2008, 4.3.7), or as stated", () => {
    const one = (document: Loose) => standingOn(example(), document).posts[0]?.sigma;
    const usual = (inches: number) => Math.hypot(1, tapeError(inches * INCH, "I") / Math.sqrt(3));
    expect(one({ tape: "I", posts: [{ post: "P2", x: "-92 3/4", base: "-68 1/16" }] })).toEqual({
      x: usual(92.75),
      z: usual(68.0625),
      lean: 0.1,
    });
    const stated = one({ posts: [{ post: "P2", x: "-92 3/4", sigma: "1/16", sigmaLean: 0.05 }] });
    expect(stated).toEqual({ x: INCH / 16, z: INCH / 16, lean: 0.05 });
  });
});

/** A document with a finding, the finding, and the nearest document without one. */
const FINDINGS: readonly (readonly [string, Loose, Loose, Loose])[] = [
  ["error unknown-post posts[0].post", { posts: [{ post: "P9" }] }, { posts: [{ post: "P8" }] }, {}],
  [
    "error unknown-leg legs[0].leg",
    { legs: [{ leg: "stair", length: 90 }] },
    { legs: [{ leg: "landing", length: 96 }] },
    {},
  ],
  [
    "error measured-twice posts[1].post",
    { posts: [{ post: "P1" }, { post: "P1" }] },
    { posts: [{ post: "P1" }, { post: "P2" }] },
    {},
  ],
  [
    "error measured-twice legs[1].leg",
    {
      legs: [
        { leg: "landing", length: 96 },
        { leg: "landing", length: 97 },
      ],
    },
    { legs: [{ leg: "landing", length: 96 }] },
    {},
  ],
  [
    "error two-places posts[0]",
    { posts: [{ post: "P1", x: "-124 7/16", behindNosing: "3" }] },
    { posts: [{ post: "P1", x: "-124 7/16" }] },
    {},
  ],
  [
    "error no-such-place posts[0].behindNosing",
    { posts: [{ post: "P6", behindNosing: "3" }] },
    { posts: [{ post: "P6", at: "33" }] },
    {},
  ],
  [
    "error lean-too-far posts[0].lean",
    { posts: [{ post: "P1", lean: 5.01 }] },
    { posts: [{ post: "P1", lean: 5 }] },
    {},
  ],
  [
    "error lean-too-far posts[0].leanAcross",
    { posts: [{ post: "P1", leanAcross: -6 }] },
    { posts: [{ post: "P1", leanAcross: -4 }] },
    {},
  ],
  [
    "error set-past-leg posts[0]",
    { posts: [{ post: "P8", at: "96 7/8" }] },
    { posts: [{ post: "P8", at: "96 3/4" }] },
    {},
  ],
  [
    "error set-past-leg posts[0]",
    { posts: [{ post: "P8", at: "93 3/4" }], legs: [{ leg: "landing", length: "93 1/2" }] },
    { posts: [{ post: "P8", at: "93 3/4" }], legs: [{ leg: "landing", length: "94" }] },
    {},
  ],
  // Half a going is 5 5/16 in, half a riser 3 25/32.
  [
    "warning set-far-off posts[0]",
    { posts: [{ post: "P6", at: "38 5/8" }] },
    { posts: [{ post: "P6", at: "38 1/2" }] },
    {},
  ],
  [
    "warning set-far-off posts[0]",
    { posts: [{ post: "P6", base: "3 7/8" }] },
    { posts: [{ post: "P6", base: "3 3/4" }] },
    {},
  ],
  ["warning other-job job", { job: "Kiln loft" }, { job: "Pottery studio, mezzanine stair (invented)" }, {}],
  ["error missing unit", { unit: undefined }, { unit: "mm" }, {}],
  [
    "error unknown-key posts[0].leen",
    { posts: [{ post: "P1", leen: 1 }] },
    { posts: [{ post: "P1", lean: 1 }] },
    {},
  ],
  [
    "error bad-length posts[0].x",
    { posts: [{ post: "P1", x: "far" }] },
    { posts: [{ post: "P1", x: "-124" }] },
    {},
  ],
];

describe("findings", () => {
  it.each(FINDINGS)("%s", (code, bad, good) => {
    expect(found(bad)).toContain(code);
    expect(found(good).filter((own) => own.startsWith(code.split(" ", 2).join(" ")))).toEqual([]);
  });

  it("set-out-of-order: two readings that have changed places are told with the distance", () => {
    const swapped = {
      posts: [
        { post: "P6", at: "63 1/2" },
        { post: "P7", at: "33 1/4" },
      ],
    };
    const { diagnostics } = read(swapped);
    const order = diagnostics.find((d) => d.code === "set-out-of-order");
    expect(order?.message).toMatch(
      /^posts\[0\]: expected post P6 as set before post P7.*768\.4 mm.*past it\.$/,
    );
    expect(found({ posts: [{ post: "P6", at: "63 1/4" }] })).not.toContain("error set-out-of-order posts[0]");
    // Against a post that nobody measured, too.
    expect(found({ posts: [{ post: "P6", at: "64" }] })).toContain("error set-out-of-order posts[0]");
  });

  it("say what is near: a post of a pair, a misspelt one", () => {
    const hint = (document: Loose, of = design) =>
      parseAsSet({ version: 1, unit: "in", ...document }, of).diagnostics[0]?.hint;
    const pair = designOf(
      example((own) =>
        Object.assign(own, { side: "both" }, { stair: { ...own.stair, width: "44", inset: "2" } }),
      ),
    );
    expect(hint({ posts: [{ post: "P1" }] }, pair)).toMatch(/P1-[LR]/);
    expect(hint({ legs: [{ leg: "landin", length: 96 }] })).toBe("Did you mean landing?");
    expect(hint({ legs: [{ leg: "stair", length: 96 }] })).toContain("nosings");
    expect(parseAsSet({ version: 1, unit: "in", legs: [{ leg: "landing-R", length: 96 }] }, pair).ok).toBe(
      true,
    );
    const clash = {
      legs: [
        { leg: "landing", length: 96 },
        { leg: "landing-R", length: 97 },
      ],
    };
    expect(parseAsSet({ version: 1, unit: "in", ...clash }, pair).diagnostics[0]?.code).toBe(
      "measured-twice",
    );
  });

  it("answer any JSON", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        const result = parseAsSet(json, design);
        if (!result.ok) expect(result.diagnostics.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
    const many = Array.from({ length: 80 }, () => ({ posst: "P1" }));
    expect(found({ posts: many })).toContain("note more-findings ");
  });
});

describe("made pieces", () => {
  const { pieces } = buildGuard(example());
  const load = () => ({ ok: true as const, value: pieces, diagnostics: [] });
  const made = (list: Loose, pieceList = pieces) =>
    read({ made: list }, () => ({ ok: true, value: pieceList, diagnostics: [] }));

  it("have their ends called as on the papers", () => {
    const result = made([
      { piece: "P1", from: "first", features: ["top", "holes"] },
      { piece: "B2", from: "first", features: ["uphill"], set: true },
      { piece: "stair-top", from: "first", features: "all" },
    ]);
    if (!result.ok) throw new Error(result.diagnostics[0]?.message);
    const [post, rail, top] = result.value.made;
    expect([post?.features, post?.set, post?.path]).toEqual([["end", "holes"], false, "made[0]"]);
    expect([rail?.features, rail?.set]).toEqual([["end"], true]);
    expect([top?.piece.mark, top?.features]).toEqual(["R1", ["start", "end", "holes"]]);
    expect(post?.piece).toBe(pieces.find((own) => own.mark === "P1"));
  });

  it("are refused with a reason", () => {
    const codes = (list: Loose) => found({ made: list }, load);
    const one = { piece: "P1", from: "first", features: ["foot"] };
    expect(codes([one])).toEqual([]);
    expect(codes([{ ...one, piece: "P99" }])).toEqual(["error unknown-piece made[0].piece"]);
    expect(codes([one, { ...one, piece: "stair-post-1" }])).toEqual(["error measured-twice made[1].piece"]);
    expect(codes([{ ...one, features: ["foot", "uphill"] }])).toEqual([
      "error no-such-end made[0].features[1]",
    ]);
    const blocked = pieces.map((own) => ({ ...own, status: "blocked" as const }));
    expect(made([one], blocked).diagnostics.map((d) => d.code)).toEqual(["piece-not-sound"]);
    expect(found({ made: [one] })).toEqual(["error made-without-pieces made"]);
    const refused = read({ made: [one, one] }, () => ({ ok: false, diagnostics: [] }));
    expect(refused.diagnostics.map((d) => d.code)).toEqual(["made-without-pieces"]);
  });
});
