// Cold start and memory: each measured in fresh processes, contenders taking turns.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { median } from "./measure.mjs";

/** One of three's builds warns that it is deprecated when Node loads it; that is no part of a measurement. */
export const QUIET = "--disable-warning=THREE_CJS_DEPRECATED";

function child(...args) {
  const script = fileURLToPath(new URL("child.mjs", import.meta.url));
  const done = spawnSync(process.execPath, [QUIET, script, ...args.map(String)], { encoding: "utf8" });
  if (done.status !== 0) throw new Error(`child ${args.join(" ")} failed:\n${done.stderr}`);
  return JSON.parse(done.stdout);
}

/** Milliseconds from before the import to the first J1 by a clock, as `{ [key]: { load, total } }`, medians. */
export function measureCold(keys, rounds, clock) {
  const runs = new Map(keys.map((key) => [key, []]));
  for (let round = 0; round < rounds; round++) {
    for (const key of keys) runs.get(key).push(child("cold", key, clock));
  }
  return Object.fromEntries(
    [...runs].map(([key, list]) => [
      key,
      { load: median(list.map((r) => r.load)), total: median(list.map((r) => r.total)) },
    ]),
  );
}

/** Peak resident memory, megabytes, with every mesh dropped once made and with all kept. */
export function measureMemory(count) {
  return { count, drop: child("memory", count, "drop"), keep: child("memory", count, "keep") };
}
