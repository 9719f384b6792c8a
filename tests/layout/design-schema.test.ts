/** The committed JSON Schema is the one the code makes, is draft 2020-12, and leaves nothing open. */
import { readFileSync } from "node:fs";
import { describe, expect, expectTypeOf, it } from "vitest";
import type * as z from "zod";
import type { DesignInput } from "../../src/layout/document/design-input.js";
import { designJsonSchema, designSchema } from "../../src/layout/document/schema/design-schema.js";
import { example } from "./designs.js";

const committed = readFileSync(new URL("../../schema/design.schema.json", import.meta.url), "utf8");

/** Every object schema with properties, wherever it stands. */
function objects(schema: unknown): Record<string, unknown>[] {
  if (typeof schema !== "object" || schema === null) return [];
  const own = schema as Record<string, unknown>;
  const below = Object.values(own).flatMap(objects);
  return own.type === "object" && "properties" in own ? [own, ...below] : below;
}

describe("the design schema", () => {
  it("is committed as the code makes it (npm run schema writes it)", () => {
    expect(committed).toBe(`${JSON.stringify(designJsonSchema(), null, 2)}\n`);
  });

  it("says which draft it is, and closes every object", () => {
    const schema = designJsonSchema();
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    const found = objects(schema);
    expect(found.length).toBeGreaterThan(10);
    expect(found.filter((own) => own.additionalProperties !== false)).toEqual([]);
  });

  it("describes every property", () => {
    const silent = objects(designJsonSchema()).flatMap((own) =>
      Object.entries(own.properties as Record<string, Record<string, unknown>>)
        .filter(
          ([, value]) =>
            !(
              "description" in value ||
              "$ref" in value ||
              "const" in value ||
              "items" in value ||
              "anyOf" in value
            ),
        )
        .map(([key]) => key),
    );
    expect(silent).toEqual([]);
  });

  it("takes the example, whose $schema points to it", () => {
    const document = example();
    expect(designSchema.safeParse(document).success).toBe(true);
    expect(new URL(document.$schema, new URL("../../examples/x.json", import.meta.url)).href).toBe(
      new URL("../../schema/design.schema.json", import.meta.url).href,
    );
  });

  it("shows callers plain types", () => {
    expectTypeOf(designSchema).toEqualTypeOf<z.ZodType<DesignInput, DesignInput>>();
  });
});
