// npm run mutate: draws mutants, lets Stryker try the tests on them, lists the survivors.
//
//   npm run mutate -- --sample 300 --seed 7 --only src/kernel/mesh
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readOptions } from "./options.mjs";

const ROOT = new URL("../", import.meta.url);
const FOLDER = "out/mutation";
const local = (path) => fileURLToPath(new URL(path, import.meta.url));
const inRoot = (path) => fileURLToPath(new URL(path, ROOT));

function run(command, args) {
  const done = spawnSync(command, args, {
    cwd: fileURLToPath(ROOT),
    stdio: ["ignore", "inherit", "inherit"],
    shell: process.platform === "win32" && command === "npm",
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

const options = readOptions(process.argv.slice(2));
const [installed, lock] = [local("node_modules/.package-lock.json"), local("package-lock.json")];
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(lock).mtimeMs) {
  run("npm", ["ci", "--prefix", "mutation", "--no-audit", "--no-fund"]);
}

// Not before its packages are there.
const { allMutants, draw, keyOf, rangeOf } = await import("./sample.mjs");
const { strykerOptions } = await import("./config.mjs");
const { survivors } = await import("./survivors.mjs");

const all = await allMutants(ROOT, options.only);
const drawn = draw(all, options.sample, options.seed);
console.log(`${drawn.length} mutants of ${all.length} drawn with seed ${options.seed}`);
if (options.list) {
  for (const m of drawn) console.log(`${rangeOf(m)} ${m.mutatorName}: ${m.replacement.replace(/\s+/g, " ")}`);
  process.exit(0);
}
mkdirSync(inRoot(FOLDER), { recursive: true });
const keys = inRoot(`${FOLDER}/sample.json`);
writeFileSync(keys, JSON.stringify(drawn.map((m) => keyOf(ROOT, m))));
const config = `${FOLDER}/stryker.config.json`;
const settings = strykerOptions({ root: ROOT, folder: FOLDER, keys, mutants: drawn });
writeFileSync(inRoot(config), `${JSON.stringify(settings, null, 2)}\n`);
run(process.execPath, [local("node_modules/@stryker-mutator/core/bin/stryker.js"), "run", config]);

const report = JSON.parse(readFileSync(inRoot(`${FOLDER}/report.json`), "utf8"));
const { text, score, judged } = survivors(report, { ...options, sample: drawn.length, total: all.length });
writeFileSync(inRoot(`${FOLDER}/survivors.md`), text);
console.log(`score ${score.toFixed(1)} % of ${judged}; ${FOLDER}/survivors.md lists the survivors`);
if (judged !== drawn.length) {
  console.error(`${drawn.length - judged} drawn mutants were not judged: see ${FOLDER}/report.json`);
  process.exitCode = 1;
}
