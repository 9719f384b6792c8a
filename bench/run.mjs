// npm run bench: installs the peers when they are not there, builds the package, measures. Flags: see README.md.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readOptions } from "./options.mjs";
import { QUIET } from "./processes.mjs";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const LOCK = fileURLToPath(new URL("package-lock.json", import.meta.url));
const INSTALLED = fileURLToPath(new URL("node_modules/.package-lock.json", import.meta.url));

function run(command, args, output = "inherit") {
  const done = spawnSync(command, args, {
    cwd: ROOT,
    stdio: ["ignore", output, "inherit"],
    shell: process.platform === "win32" && command === "npm",
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

const args = process.argv.slice(2);
const { build } = readOptions(args);
if (!existsSync(INSTALLED) || statSync(INSTALLED).mtimeMs < statSync(LOCK).mtimeMs) {
  run("npm", ["ci", "--prefix", "bench", "--no-audit", "--no-fund"]);
}
if (build) run("npm", ["run", "build", "--silent"], "ignore");
run(process.execPath, [QUIET, fileURLToPath(new URL("main.mjs", import.meta.url)), ...args]);
