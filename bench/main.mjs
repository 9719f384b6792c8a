// Runs every measurement and writes results.md: cold start and memory in processes of their own, all else in this one.
import { writeFileSync } from "node:fs";
import { loadavg } from "node:os";
import { fileURLToPath } from "node:url";
import { loadLibrary, loadOurs } from "./built.mjs";
import { deviation } from "./deviation.mjs";
import { J1, J2, POST, posts, segmentsOf, turned } from "./jobs.mjs";
import { interleave } from "./measure.mjs";
import { openEdges, weld } from "./open-edges.mjs";
import { readOptions } from "./options.mjs";
import { loadPeer, PEERS } from "./peers/index.mjs";
import { measureCold, measureMemory } from "./processes.mjs";
import { report } from "./report/report.mjs";
import { measureStages } from "./stages.mjs";

const options = readOptions(process.argv.slice(2));
const load = loadavg()[0];
const say = (text) => console.error(`${(performance.now() / 1000).toFixed(0).padStart(4)} s  ${text}`);

// First of all, while this process is small: a child's peak memory counts from its parent's.
say("cold start, memory");
const cold = measureCold(["ours", ...PEERS], options.coldRounds, options.clock);
const memory = measureMemory(options.memoryPosts);

const { measureStl } = await import("./stl.mjs");
const { measureStep } = await import("./step.mjs");
const lib = await loadLibrary();
const ours = await loadOurs();
const contenders = [ours];
for (const key of PEERS) contenders.push(await loadPeer(key));
const byKey = (key) => contenders.find((c) => c.key === key);

const JOBS = [J1, J2, POST];
const ONCE = { rounds: 1, budget: 0, warm: 0, lead: 0, clock: options.clock };

function timeJob(job) {
  say(`times of ${job.name}`);
  const tasks = contenders.map((c) => ({ key: c.key, run: () => c.free(c.make(job)) }));
  return interleave(tasks, options.single);
}

function timeRows(count, keys, limits) {
  say(`${count} posts: ${keys.join(", ")}`);
  const jobs = posts(count);
  const tasks = keys.map((key) => ({ key, run: () => byKey(key).makeAll(jobs) }));
  return interleave(tasks, limits);
}

function qualityOf(contender, job) {
  say(`mesh of ${job.name} by ${contender.name}`);
  const read = (j) => {
    const raw = contender.make(j);
    const mesh = contender.read(raw);
    contender.free(raw);
    return mesh;
  };
  const step = 360 / segmentsOf(job.header.od / 2);
  const mesh = read(job);
  const phases = job === POST ? [0.5] : options.phases;
  const out = phases.map((part) => read(turned(job, part * step)));
  const worst = (list) => ({
    surface: Math.max(...list.map((d) => d.surface)),
    boundary: Math.max(...list.map((d) => d.boundary)),
  });
  return {
    triangles: weld(mesh).length / 3,
    open: Math.max(...[mesh, ...out].map(openEdges)),
    inPhase: deviation(job, mesh),
    outOfPhase: worst(out.map((m, k) => deviation(turned(job, phases[k] * step), m))),
  };
}

/** 100, 1,000 and 10,000 posts in turns; the last only where it will not take too long. */
function timeGrowth() {
  const counts = options.quick ? [100] : [100, 1000];
  const trial = timeRows(100, ["ours"], ONCE).ours.median;
  if (100 * trial <= options.longest) counts.push(10_000);
  say(`growth: ${counts.join(", ")} posts`);
  const tasks = counts.map((count) => {
    const jobs = posts(count);
    return { key: count, run: () => ours.makeAll(jobs) };
  });
  return interleave(tasks, options.many);
}

const everyone = contenders.map((c) => c.key);
const times = Object.fromEntries(JOBS.map((job) => [job.name, timeJob(job)]));
const rows = {
  10: timeRows(10, everyone, options.few),
  100: timeRows(100, ["ours", "manifold"], options.few),
  ...(options.full && { 1000: timeRows(1000, ["ours", "manifold"], ONCE) }),
};
const growth = timeGrowth();
say("stages, STL");
const stages = Object.fromEntries(JOBS.map((job) => [job.name, measureStages(lib, job, options.stages)]));
const stl = measureStl(lib, options.stlPosts, options.stl);
say("STEP");
const step = measureStep(lib, byKey("occt"), options.stepPosts, options.stages);
const quality = Object.fromEntries(
  JOBS.map((job) => [job.name, Object.fromEntries(contenders.map((c) => [c.key, qualityOf(c, job)]))]),
);

const names = contenders.map(({ key, name, version }) => ({ key, name, version }));
const text = report({ names, times, rows, growth, stages, stl, step, cold, memory, quality, options, load });
const path = options.out ?? fileURLToPath(new URL("results.md", import.meta.url));
writeFileSync(path, text);
say(`wrote ${options.out ?? "bench/results.md"}`);
