// Bundles each entry for the browser and holds its minified, gzipped size against a budget.
//
// The bundle also proves that no entry reaches for a module of Node. Needs a build. Run: npm run check:size
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { ROOT } from "./lib.mjs";

/**
 * Budgets in kB (1000 bytes) of minified, gzipped code with all dependencies but those marked external: what is there,
 * with a tenth to spare. No module of ours is above 4 kB minified; diagnostics' sentences are a third of it. Importing a
 * single function costs that function alone. The tables of standard sections with their sources are 5 kB of members, and of
 * what reads section names; bores across sides, contact fits, plates and parted branches are 17 kB more of the first. The whole guard
 * (flights, corners, ends, feet, infill, handrails, splices) and the shop file are 45 kB of layout, zod another 25, surveys and
 * their adjustment 13, what is made, how it fits and the file of solved pieces 7.
 */
const BUDGETS = [
  { name: "kernel + members + joints", entries: ["kernel", "members", "joints"], limit: 89 },
  { name: "layout with zod", entries: ["layout"], limit: 178 },
  { name: "export without JSCAD", entries: ["export"], limit: 30 },
];

/** Every entry is bundled once to prove that it can be, budget or not. */
const BUNDLED = Object.values(JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")).exports)
  .map((entry) => entry.import?.default)
  .filter((path) => path !== undefined);

/** kB minified, not gzipped, of one function with all it needs: the STEP writer is to be small where it is all one wants. */
const ALONE = [{ entry: "export", name: "toStep", limit: 30 }];

async function minified(contents) {
  const result = await build({
    stdin: { contents, resolveDir: ROOT, loader: "js" },
    bundle: true,
    write: false,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    logLevel: "error",
  });
  return result.outputFiles[0].contents;
}

const bundle = async (contents) => gzipSync(await minified(contents), { level: 9 }).length / 1000;

let failed = 0;
for (const entry of BUNDLED) {
  const size = await bundle(`export * from "${entry}";`);
  console.log(`ok  ${entry} bundles for the browser: ${size.toFixed(1)} kB gz`);
}
for (const { name, entries, limit } of BUDGETS) {
  const size = await bundle(entries.map((entry) => `export * from "./dist/${entry}/index.js";`).join("\n"));
  const good = size <= limit;
  if (!good) failed += 1;
  console.log(`${good ? "ok " : "BAD"} ${name}: ${size.toFixed(1)} kB gz of ${limit} kB`);
}
for (const { entry, name, limit } of ALONE) {
  const size = (await minified(`export { ${name} } from "./dist/${entry}/index.js";`)).length / 1000;
  const good = size <= limit;
  if (!good) failed += 1;
  console.log(`${good ? "ok " : "BAD"} ${name} alone: ${size.toFixed(1)} kB minified of ${limit} kB`);
}
if (failed > 0) {
  console.error(
    `${failed} bundle(s) over budget: find what grew, or raise the limit in scripts/size-check.mjs with a reason`,
  );
  process.exit(1);
}
