// Random ends over the documented domain, as many as wanted: npm run fuzz -- --count 20000 --seed 1 --from 0.
// `--keep 12,34` only writes those numbers of the seed to the corpus. Exits 1 when a case is bad or a quota is missed.
import { mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import { ROOT } from "./lib.mjs";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "20000" },
    seed: { type: "string", default: "1" },
    from: { type: "string", default: "0" },
    keep: { type: "string" },
  },
});
const number = (name) => {
  const n = Number(values[name]);
  if (!Number.isSafeInteger(n) || n < 0)
    throw new Error(`--${name}: expected a whole number, got ${values[name]}`);
  return n;
};

const folder = join(ROOT, "tests/corpus/ends");
// Inside the package, so that the bundle finds what it does not bring along.
const work = mkdtempSync(join(ROOT, "fuzz-"));
try {
  const outfile = join(work, "run.mjs");
  await build({
    entryPoints: [join(ROOT, "tests/fuzz/run.ts")],
    bundle: true,
    platform: "node",
    format: "esm",
    external: ["replicad-opencascadejs"],
    outfile,
    logLevel: "warning",
  });
  const { keep, run } = await import(pathToFileURL(outfile).href);
  const options = {
    seed: number("seed"),
    from: number("from"),
    count: number("count"),
    folder,
    say: console.log,
  };
  const good =
    values.keep === undefined ? await run(options) : keep(values.keep.split(",").map(Number), options);
  if (!good) process.exitCode = 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
