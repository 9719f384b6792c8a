// results.md out of the measurements.
import { cpus } from "node:os";
import { CHORD } from "../jobs.mjs";
import { goalRows } from "./goals.mjs";
import { times as asTimes, digits, table, whole } from "./table.mjs";

export function report(found) {
  const goals = goalRows(found);
  const missed = goals.filter((row) => row[3] === "**no**");
  return `${[
    "# What the bench found",
    "Written by `npm run bench`; README.md says what is measured, and why it is fair.",
    setting(found),
    "## Goals",
    table(["goal", "target", "reached", "enough"], goals),
    `${missed.length === 0 ? "Every goal that was asked for was reached" : `${missed.length} of ${goals.length} were not reached`} ` +
      "in this run. Exact volumes and the soundness of STEP files are not measured here: the tests hold them.",
    "## Times",
    "Milliseconds, median (least) over the rounds; below it the peer's over ours, of the medians (of the least).",
    jobTable(found),
    "## Rows of posts",
    "Milliseconds a post, median. Peers make one post after the other; ours solves all rows as one model.",
    rowTable(found),
    growthText(found),
    "## Where our time goes, and what is timed apart",
    "Milliseconds, median. The rules of topology run inside `solidOf`; the last four rows are not part of the times above.",
    stageTable(found),
    "## Meshes",
    `Chord ${CHORD} mm. In phase: the header's polygon has corners where the tube's has; out of phase: turned by parts of a side. ` +
      "Millimetres, from the triangles' own surfaces / from the true boundary; the most open edges of any phase.",
    meshTable(found),
    "## Binary STL",
    `${whole(found.stl.triangles)} triangles, ${digits(found.stl.megabytes)} MB.`,
    stlTable(found),
    "## STEP",
    stepText(found),
    "## Cold start and memory",
    "Milliseconds in a fresh process, median: to import the library, and until J1 is made.",
    coldTable(found),
    memoryText(found),
  ].join("\n\n")}\n`;
}

function setting({ names, options, load }) {
  const mode = options.quick
    ? "Quick run: few rounds, figures are rough."
    : options.full
      ? "Full run."
      : "Default run.";
  const clock = options.clock === "cpu" ? " Processor time, all threads." : " Wall time.";
  const when = options.date ? ` ${options.date}.` : "";
  const peers = names.map(({ name, version }) => `${name} ${version}`).join(", ");
  return (
    `${mode}${clock}${when} Node ${process.versions.node}, ${cpus().length} cores, load average ${load.toFixed(1)} at the start ` +
    `(0 is an idle machine). ${peers}.`
  );
}

const cell = (t) => (t ? `${digits(t.median)} (${digits(t.min)})` : "–");

const ratios = (peer, ours) => `${asTimes(peer.median / ours.median)} (${asTimes(peer.min / ours.min)})`;

function jobTable({ names, times }) {
  const rows = [];
  for (const [job, by] of Object.entries(times)) {
    rows.push([job, ...names.map(({ key }) => cell(by[key]))]);
    rows.push(["ratio", ...names.map(({ key }) => ratios(by[key], by.ours))]);
  }
  return table(["", ...names.map((n) => n.name)], rows);
}

function rowTable({ names, rows }) {
  const list = [];
  for (const [count, by] of Object.entries(rows)) {
    const a = (t) => (t ? digits(t.median / count) : "–");
    list.push([whole(count), ...names.map(({ key }) => a(by[key]))]);
    list.push([
      "ratio",
      ...names.map(({ key }) => (by[key] ? asTimes(by[key].median / by.ours.median) : "–")),
    ]);
  }
  return table(["posts", ...names.map((n) => n.name)], list);
}

function growthText({ growth }) {
  const parts = Object.entries(growth).map(
    ([count, t]) =>
      `${digits(t.median / count)} ms a post for ${whole(count)} (${digits(t.median)} ms in all)`,
  );
  return `Ours alone, in turns: ${parts.join("; ")}.`;
}

function stageTable({ stages }) {
  const jobs = Object.keys(stages);
  const keys = Object.keys(stages[jobs[0]]);
  return table(
    ["stage", ...jobs],
    keys.map((key) => [key, ...jobs.map((job) => digits(stages[job][key].median))]),
  );
}

function meshTable({ names, quality }) {
  const both = (d) => `${d.surface.toFixed(3)} / ${d.boundary.toFixed(3)}`;
  const rows = Object.entries(quality).flatMap(([job, by]) =>
    names.map(({ key, name }) => {
      const { triangles, open, inPhase, outOfPhase } = by[key];
      return [job, name, whole(triangles), whole(open), both(inPhase), both(outOfPhase)];
    }),
  );
  return table(["job", "by", "triangles", "open edges", "in phase", "out of phase"], rows);
}

function stlTable({ stl }) {
  const labels = {
    ours: "rakewright, encodeStlBinary",
    "ours-gate": "rakewright, toStlBinary (gate and 32-bit check first)",
    three: "three, STLExporter",
    jscad: "@jscad/stl-serializer",
  };
  return table(
    ["writer", "MB/s, median", "MB/s, best"],
    Object.entries(stl.speeds).map(([key, s]) => [labels[key], digits(s.median), digits(s.best)]),
  );
}

function stepText({ step: { times, sizes, many } }) {
  const kilobytes = (bytes) => `${digits(bytes / 1000)} kB`;
  return (
    `The drilled post: ours ${cell(times.ours)} ms and ${kilobytes(sizes.ours)}, OCCT (wasm) ${cell(times.occt)} ms and ` +
    `${kilobytes(sizes.occt)}. ${whole(many.count)} posts in chunks, solids made as they are asked for: ` +
    `${digits(many.time / many.count)} ms a post, ${digits(many.bytes / 1e6)} MB, ${digits(many.bytes / 1000 / many.time)} MB/s.`
  );
}

function coldTable({ names, cold }) {
  return table(
    ["", "import", "import and first joint"],
    names.map(({ key, name }) => [name, digits(cold[key].load), digits(cold[key].total)]),
  );
}

function memoryText({ memory: { count, drop, keep } }) {
  return (
    `Peak resident memory of ${whole(count)} posts (${whole(drop.triangles)} triangles): ${digits(drop.peak)} MB when each mesh is ` +
    `dropped once made, ${digits(keep.peak)} MB when all are kept; ${digits(drop.before)} MB once the package is loaded.`
  );
}
