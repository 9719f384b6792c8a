/**
 * Reading shop files: all JSON is answered, each mistake has its own code and path, the example reads right, what is left
 * out has the stated default. Lengths are checked against their own arithmetic (1 in = 25.4 mm exactly).
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import type * as z from "zod";
import { designInShop } from "../../src/layout/document/design-in-shop.js";
import { parseDesign } from "../../src/layout/document/parse-design.js";
import { parseShop } from "../../src/layout/document/parse-shop.js";
import { shopJsonSchema, shopSchema } from "../../src/layout/document/schema/shop-schema.js";
import { DEFAULT_SHOP, FINISH_MM, type Shop, type ShopInput } from "../../src/layout/document/shop.js";
import { example, type Loose } from "./designs.js";

const INCH = 25.4;
const ROOT = new URL("../../", import.meta.url);
const TEXT = readFileSync(new URL("examples/shop.json", ROOT), "utf8");

function shopOf(json: unknown): Shop {
  const read = parseShop(json);
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  return read.value;
}

function changed(change: (document: Loose) => void): Loose {
  const document: Loose = JSON.parse(TEXT);
  change(document);
  return document;
}

describe("the example shop", () => {
  const shop = shopOf(JSON.parse(TEXT));

  it("reads in millimetres: kerf 1/8, gap 1/16, drills by 1/64, stock 20 ft", () => {
    expect(shop.kerf).toBeCloseTo(INCH / 8, 12);
    expect(shop.fitGap).toBeCloseTo(INCH / 16, 12);
    expect(shop.drillStep).toBeCloseTo(INCH / 64, 12);
    expect(shop.stockLengths).toEqual([20 * 12 * INCH]);
    expect(shop.saw).toEqual({ miter: 45, bevel: 45 });
    expect(shop.access.door).toEqual({ width: 34 * INCH, height: 79 * INCH });
    expect(shop.access.corridor?.height).toBeCloseTo(96 * INCH, 9);
    expect(shop.seam).toEqual({ rails: "bottom", posts: "downhill" });
  });

  it("reads its remnant's section as a design would: square 1-1/2 in, wall 0.120 in", () => {
    const [remnant] = shop.remnants;
    const shape = remnant?.section.shape;
    if (shape?.kind !== "rect-tube") throw new Error("no square tube");
    expect(shape.width).toBeCloseTo(38.1, 9);
    expect(shape.depth).toBeCloseTo(38.1, 9);
    expect(shape.wall).toBeCloseTo(3.048, 9);
    expect(remnant?.length).toBeCloseTo(61.5 * INCH, 9);
  });

  it("names its schema", () => {
    const { $schema } = JSON.parse(TEXT) as { $schema: string };
    expect(new URL($schema, new URL("examples/x.json", ROOT)).href).toBe(
      new URL("schema/shop.schema.json", ROOT).href,
    );
  });
});

describe("what is left out", () => {
  it("has its default", () => {
    expect(shopOf({})).toEqual(DEFAULT_SHOP);
    expect(shopOf({ unit: "in" })).toEqual({ ...DEFAULT_SHOP, unit: "in" });
    expect(shopOf({ saw: { bevel: 0 } }).saw).toEqual({ miter: DEFAULT_SHOP.saw.miter, bevel: 0 });
    expect(shopOf({ unit: "in", stop: { width: "1 1/2" }, mostSag: "1/16" })).toMatchObject({
      stop: { width: 1.5 * INCH },
      mostSag: INCH / 16,
    });
    expect(shopOf({ stop: {} })).toMatchObject({ stop: {}, mostSag: DEFAULT_SHOP.mostSag });
    expect(shopOf({ drillChuck: { clearance: 3 } }).drillChuck).toEqual({
      diameter: DEFAULT_SHOP.drillChuck.diameter,
      clearance: 3,
    });
  });

  it("has the finish's own thickness: EN ISO 1461 asks for a mean of 0.085 mm of zinc on steel over 6 mm", () => {
    expect(shopOf({ finish: { kind: "zinc" } }).finish).toEqual({ kind: "zinc", thickness: 0.085 });
    expect(shopOf({ finish: { kind: "powder" } }).finish.thickness).toBe(FINISH_MM.powder);
    expect(shopOf({ finish: { kind: "paint", thickness: 0.06 } }).finish.thickness).toBe(0.06);
  });

  it("is what the schema's descriptions say", () => {
    const { properties } = shopJsonSchema() as { properties: Record<string, { description?: string }> };
    const says = (key: string) => properties[key]?.description ?? "";
    for (const key of ["kerf", "drillStep", "slipFit"] as const)
      expect(says(key)).toContain(`Default ${DEFAULT_SHOP[key]} mm.`);
    for (const key of ["unit", "tape", "paper", "fitGap"] as const)
      expect(says(key)).toContain(`Default ${DEFAULT_SHOP[key]}.`);
    expect(says("stockLengths")).toContain("6000 mm");
  });
});

/** Change to the example, expected code, expected path, words the message must have. */
const BAD: readonly (readonly [string, (d: Loose) => void, string, string, RegExp])[] = [
  ["a misspelt key", (d) => (d.kerff = 1), "unknown-key", "kerff", /^The shop file: .*got "kerff"/],
  ["a misspelt key below", (d) => (d.saw.mitre = 45), "unknown-key", "saw.mitre", /saw: expected only known/],
  ["another unit", (d) => (d.unit = "cm"), "bad-value", "unit", /"in" or "mm", got "cm"/],
  ["another version", (d) => (d.version = 2), "bad-value", "version", /expected 1, got 2/],
  ["a length that is none", (d) => (d.kerf = "thin"), "bad-length", "kerf", /thin/],
  ["a kerf below zero", (d) => (d.kerf = "-1/8"), "out-of-range", "kerf", /from 0 mm/],
  ["drills by nothing", (d) => (d.drillStep = 0), "out-of-range", "drillStep", /from 0\.01 mm/],
  [
    "a saw that tilts past sense",
    (d) => (d.saw.bevel = 90),
    "out-of-range",
    "saw.bevel",
    /at most 85, got 90/,
  ],
  ["no stock", (d) => (d.stockLengths = []), "out-of-range", "stockLengths", /at least 1 items/],
  ["stock of no length", (d) => (d.stockLengths = [0]), "out-of-range", "stockLengths[0]", /from 0\.01 mm/],
  [
    "a remnant of no section",
    (d) => (d.remnants[0].section = "odd"),
    "bad-section",
    "remnants[0].section",
    /odd/,
  ],
  [
    "a remnant without length",
    (d) => delete d.remnants[0].length,
    "missing",
    "remnants[0].length",
    /nothing/,
  ],
  ["a tape of class IV", (d) => (d.tape = "IV"), "bad-value", "tape", /"I" or "II" or "III", got "IV"/],
  ["a finish that is none", (d) => (d.finish.kind = "wax"), "bad-value", "finish.kind", /got "wax"/],
  ["bare steel with a coat", (d) => (d.finish.kind = "bare"), "bad-value", "finish.thickness", /0 on bare/],
  [
    "a post's seam on top",
    (d) => (d.seam.posts = "top"),
    "bad-value",
    "seam.posts",
    /"uphill" or .*got "top"/,
  ],
  ["a stop of no width", (d) => (d.stop = { width: 0 }), "out-of-range", "stop.width", /0\.01/],
  ["a sag below nothing", (d) => (d.mostSag = -1), "out-of-range", "mostSag", /-1/],
  ["half a door", (d) => delete d.access.door.height, "missing", "access.door.height", /got nothing/],
  ["a corner of no width", (d) => (d.access.corridor.to = 0), "out-of-range", "access.corridor.to", /0\.01/],
];

describe("a mistake in a shop file", () => {
  it.each(BAD)("%s", (_, change, code, path, words) => {
    const read = parseShop(changed(change));
    expect(read.ok).toBe(false);
    expect(read.diagnostics.map((d) => [d.code, d.path])).toEqual([[code, path]]);
    expect(read.diagnostics[0]?.message).toMatch(words);
    expect(read.diagnostics[0]?.hint).not.toBe("");
  });

  it("suggests the key that was meant", () => {
    const read = parseShop({ drilStep: 1 });
    expect(read.diagnostics[0]?.hint).toMatch(/`drillStep`/);
  });

  it("does not hide another", () => {
    const read = parseShop({ kerf: "x", slipFit: "y" });
    expect(read.diagnostics.map((d) => d.path)).toEqual(["kerf", "slipFit"]);
  });

  it("is counted, not listed, past fifty", () => {
    const read = parseShop({ stockLengths: Array(20).fill(true), remnants: Array(60).fill({}) });
    expect(read.diagnostics).toHaveLength(51);
    expect(read.diagnostics.at(-1)?.code).toBe("more-findings");
    expect(read.diagnostics.at(-1)?.message).toMatch(/^The shop file/);
  });
});

describe("any JSON", () => {
  it("is answered with a shop or with reasons, never by throwing", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        const read = parseShop(json);
        expect(read.ok || read.diagnostics.some((d) => d.severity === "error")).toBe(true);
      }),
    );
    for (const whole of [null, [], "shop", 3]) {
      const [first] = parseShop(whole).diagnostics;
      expect(first?.message).toMatch(/^The shop file: expected an object/);
    }
  });

  it("changed anywhere in the example is answered", () => {
    const keys = Object.keys(JSON.parse(TEXT) as object);
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.jsonValue(), (key, value) => {
        const read = parseShop(changed((d) => (d[key] = value)));
        if (read.ok) expect(() => structuredClone(read.value)).not.toThrow();
        else expect(read.diagnostics.length).toBeGreaterThan(0);
      }),
    );
  });
});

describe("the shop schema", () => {
  it("is committed as the code makes it (npm run schema writes it)", () => {
    const committed = readFileSync(new URL("schema/shop.schema.json", ROOT), "utf8");
    expect(committed).toBe(`${JSON.stringify(shopJsonSchema(), null, 2)}\n`);
  });

  it("says which draft it is, closes every object and describes every property", () => {
    const schema = shopJsonSchema();
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    const objects: Loose[] = [];
    const walk = (node: Loose) => {
      if (typeof node !== "object" || node === null) return;
      if (node.type === "object" && "properties" in node) objects.push(node);
      Object.values(node).forEach(walk);
    };
    walk(schema);
    expect(objects.length).toBeGreaterThan(7);
    expect(objects.filter((own) => own.additionalProperties !== false)).toEqual([]);
    const silent = objects.flatMap((own) =>
      Object.entries<Loose>(own.properties).filter(
        ([, value]) => !["description", "$ref", "const", "items"].some((key) => key in value),
      ),
    );
    expect(silent.map(([key]) => key)).toEqual([]);
  });

  it("shows callers plain types, and needs nothing", () => {
    expectTypeOf(shopSchema).toEqualTypeOf<z.ZodType<ShopInput, ShopInput>>();
    expect(shopJsonSchema().required).toBe(undefined);
  });
});

describe("a design in a shop", () => {
  const gapOf = (document: unknown) => {
    const read = parseDesign(document);
    return read.ok ? read.value.gap : Number.NaN;
  };

  it("takes the shop's fit gap where it states none: 1/16 in is 1.5875 mm", () => {
    const design = example((d) => delete d.gap);
    expect(gapOf(designInShop(design, { fitGap: INCH / 16 }))).toBe(1.5875);
    expect(gapOf(designInShop(design, { fitGap: 0 }))).toBe(0);
    expect(design.gap).toBe(undefined);
  });

  it("keeps its own", () => {
    const design = example((d) => (d.gap = "1/32"));
    expect(designInShop(design, { fitGap: 2 })).toBe(design);
    expect(gapOf(design)).toBeCloseTo(INCH / 32, 12);
  });

  it("reads the gap of any shop, and leaves what is no object alone", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 5, noNaN: true }), (fitGap) => {
        const read = gapOf(designInShop(example(), { fitGap }));
        expect(Math.abs(read - fitGap)).toBeLessThanOrEqual(5.1e-7);
      }),
    );
    for (const whole of [null, [1], "x"]) expect(designInShop(whole, { fitGap: 1 })).toBe(whole);
  });
});
