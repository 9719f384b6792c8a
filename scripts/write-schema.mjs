// Writes schema/*.schema.json from the built package; a test fails while a committed file is stale.
import { mkdirSync, writeFileSync } from "node:fs";
import { asSetJsonSchema, designJsonSchema, shopJsonSchema } from "../dist/layout/index.js";

const folder = new URL("../schema/", import.meta.url);
mkdirSync(folder, { recursive: true });
const schemas = { design: designJsonSchema(), shop: shopJsonSchema(), "as-set": asSetJsonSchema() };
for (const [name, schema] of Object.entries(schemas)) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(schema, null, 2)}\n`);
  console.log(`wrote schema/${name}.schema.json`);
}
