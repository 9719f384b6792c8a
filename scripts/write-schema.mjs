// Writes schema/*.schema.json from the built package; a test fails while a committed file is stale.
import { mkdirSync, writeFileSync } from "node:fs";
import { designJsonSchema, shopJsonSchema } from "../dist/layout/index.js";

const folder = new URL("../schema/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, schema] of Object.entries({ design: designJsonSchema(), shop: shopJsonSchema() })) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(schema, null, 2)}\n`);
  console.log(`wrote schema/${name}.schema.json`);
}
