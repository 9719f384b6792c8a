// Writes schema/design.schema.json from the built package; a test fails while the committed file is stale.
import { mkdirSync, writeFileSync } from "node:fs";
import { designJsonSchema } from "../dist/layout/index.js";

const folder = new URL("../schema/", import.meta.url);
mkdirSync(folder, { recursive: true });
writeFileSync(new URL("design.schema.json", folder), `${JSON.stringify(designJsonSchema(), null, 2)}\n`);
console.log("wrote schema/design.schema.json");
