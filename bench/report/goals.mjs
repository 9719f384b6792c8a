// The goals, and what came of them: each a row with its target, what was reached and whether that is enough.
import { CHORD } from "../jobs.mjs";
import { digits, times, whole } from "./table.mjs";

/** Least ratios, peer over ours, medians. */
const RATIOS = [
  { job: "J1", what: "single cope, J1", least: { manifold: 50, three: 50, jscad: 200, occt: 500 } },
  { job: "J2", what: "single cope, J2", least: { manifold: 50, three: 50, jscad: 200, occt: 500 } },
  { job: "Post", what: "drilled post", least: { manifold: 25, three: 150, jscad: 400, occt: 1000 } },
];
const ROWS_LEAST = 20;
const MEMORY_MB = 250;
const STL_LEAST = { three: 3, jscad: 100 };
const STEP_LEAST = 50;
const STEP_SHARE = 0.5;
const COLD_LEAST = 5;
const GROWTH_WITHIN = 0.15;

const verdict = (good) => (good ? "yes" : "**no**");
const atLeast = (what, peer, least, reached) => [
  `${what}, against ${peer}`,
  `≥ ${least} ×`,
  times(reached),
  verdict(reached >= least),
];

export function goalRows({ names, times: jobTimes, rows, growth, stl, step, cold, memory, quality }) {
  const nameOf = (key) => names.find((n) => n.key === key).name;
  const list = [];
  for (const { job, what, least } of RATIOS) {
    for (const [key, value] of Object.entries(least)) {
      list.push(atLeast(what, nameOf(key), value, jobTimes[job][key].median / jobTimes[job].ours.median));
    }
  }
  const counts = Object.keys(rows).filter((count) => rows[count].manifold);
  const most = counts[counts.length - 1];
  const ratio = rows[most].manifold.median / rows[most].ours.median;
  list.push(atLeast(`rows of ${whole(most)} posts`, nameOf("manifold"), ROWS_LEAST, ratio));
  for (const [how, key] of [
    ["each mesh dropped once made", "drop"],
    ["all meshes kept", "keep"],
  ]) {
    const { peak } = memory[key];
    list.push([
      `peak memory of ${whole(memory.count)} posts, ${how}`,
      `≤ ${MEMORY_MB} MB`,
      `${digits(peak)} MB`,
      memory.count < 1000 ? "not asked" : verdict(peak <= MEMORY_MB),
    ]);
  }
  for (const [key, least] of Object.entries(STL_LEAST)) {
    const reached = stl.speeds.ours.median / stl.speeds[key].median;
    list.push(
      atLeast("binary STL, MB/s", key === "three" ? "three" : "@jscad/stl-serializer", least, reached),
    );
  }
  list.push(
    atLeast(
      "STEP of a drilled post",
      nameOf("occt"),
      STEP_LEAST,
      step.times.occt.median / step.times.ours.median,
    ),
  );
  const share = step.sizes.ours / step.sizes.occt;
  list.push([
    `bytes of a drilled post's STEP, of ${nameOf("occt")}'s`,
    `≤ ${STEP_SHARE}`,
    share.toFixed(2),
    verdict(share <= STEP_SHARE),
  ]);
  list.push(
    atLeast("import and first joint", nameOf("manifold"), COLD_LEAST, cold.manifold.total / cold.ours.total),
  );
  list.push(growthRow(growth));
  for (const [job, found] of Object.entries(quality)) list.push(...meshRows(job, found.ours));
  return list;
}

function growthRow(growth) {
  const target = `within ${100 * GROWTH_WITHIN} %`;
  const what = "time of a post among 10,000 against 100";
  if (!growth[10_000]) return [what, target, "not measured", "not asked"];
  const change = growth[10_000].median / 100 / growth[100].median - 1;
  const sign = change < 0 ? "−" : "+";
  return [what, target, `${sign}${(100 * Math.abs(change)).toFixed(1)} %`, verdict(change <= GROWTH_WITHIN)];
}

function meshRows(job, { open, inPhase, outOfPhase }) {
  const worst = (kind) => Math.max(inPhase[kind], outOfPhase[kind]) / CHORD;
  return [
    [`open edges, ${job}`, "0", String(open), verdict(open === 0)],
    ...[
      ["its own surfaces", "surface"],
      ["the true boundary", "boundary"],
    ].map(([from, kind]) => [
      `deviation of ${job} from ${from}, over the tolerance`,
      "≤ 1.00",
      worst(kind).toFixed(2),
      verdict(worst(kind) <= 1),
    ]),
  ];
}
