// Small helpers of the package checks: run a command, and time and report a step.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../", import.meta.url));

/** Runs a command without a shell and without stdin; throws with its output when it fails. */
export function run(command, args, cwd = ROOT) {
  const done = spawnSync(command, args, { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
  if (done.error) throw done.error;
  if (done.status !== 0) {
    throw new Error(`${command} ${args.join(" ")} ended with ${done.status}\n${done.stdout}\n${done.stderr}`);
  }
  return done.stdout;
}

/** The JavaScript file behind a development tool, so that it runs without a shell on every platform. */
export const tool = (path) => fileURLToPath(new URL(`../node_modules/${path}`, import.meta.url));

/** Runs one named step and says how long it took. */
export async function step(name, action) {
  const start = performance.now();
  const note = await action();
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`ok  ${name} (${seconds} s)${note ? `: ${note}` : ""}`);
}
