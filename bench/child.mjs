// What needs a process of its own, one a call; prints one line of JSON.
//
//   node child.mjs cold <contender> <clock>    import and make the first joint, J1
//   node child.mjs memory <posts> <drop|keep>  make posts, each mesh dropped as it is made or all of them kept
import { J1, posts } from "./jobs.mjs";
import { CLOCKS } from "./measure.mjs";

const [task, first, second] = process.argv.slice(2);

async function cold(key, clock) {
  const now = CLOCKS[clock];
  const start = now();
  const contender =
    key === "ours"
      ? await (await import("./built.mjs")).loadOurs()
      : await (await import("./peers/index.mjs")).loadPeer(key);
  const loaded = now();
  contender.make(J1);
  return { load: loaded - start, total: now() - start };
}

async function memory(count, keep) {
  const { loadLibrary } = await import("./built.mjs");
  const { buildRows } = await import("./ours.mjs");
  const lib = await loadLibrary();
  const before = process.resourceUsage().maxRSS;
  const kept = [];
  const triangles = buildRows(lib, posts(count), keep ? (mesh) => kept.push(mesh) : undefined);
  // maxRSS is in kibibytes.
  const megabytes = (k) => (k * 1024) / 1e6;
  return { triangles, before: megabytes(before), peak: megabytes(process.resourceUsage().maxRSS) };
}

const result = task === "cold" ? await cold(first, second) : await memory(Number(first), second === "keep");
console.log(JSON.stringify(result));
