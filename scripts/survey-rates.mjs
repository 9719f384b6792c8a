// Random stairs with tape errors, as many as wanted: npm run survey:rates -- --count 2000 --seed 1.
// Exits 1 when the survey's uncertainties or suspects do not keep their rates.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import { ROOT } from "./lib.mjs";

const { values } = parseArgs({
  options: { count: { type: "string", default: "2000" }, seed: { type: "string", default: "1" } },
});
const number = (name, least) => {
  const n = Number(values[name]);
  if (!Number.isSafeInteger(n) || n < least)
    throw new Error(`--${name}: expected a whole number from ${least}, got ${values[name]}`);
  return n;
};
const options = { count: number("count", 10), seed: number("seed", 0), say: console.log };

const work = mkdtempSync(join(tmpdir(), "rates-"));
try {
  const outfile = join(work, "run.mjs");
  await build({
    entryPoints: [join(ROOT, "tests/survey-rates/run.ts")],
    bundle: true,
    platform: "node",
    format: "esm",
    outfile,
    logLevel: "warning",
  });
  const { run } = await import(pathToFileURL(outfile).href);
  if (!run(options)) process.exitCode = 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
