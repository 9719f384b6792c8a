// The long proof of STEP files with a native Open CASCADE 7.6: npm run step:native -- --count 5000 --seed 1 [--mesh].
//
// Needs on the path: g++ with the headers and libraries of Open CASCADE (Debian: libocct-data-exchange-dev, libocct-ocaf-dev and what they
// bring), and gmsh for --mesh. Every file is read twice, once with no repair at all. Exits 1 when any piece is not one closed valid
// solid of its volume, a curve is missing, or a curve in space leaves the one on a surface; or when a file that is wrong on purpose passes.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import { ROOT, run } from "./lib.mjs";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "5000" },
    seed: { type: "string", default: "1" },
    each: { type: "string", default: "100" },
    mesh: { type: "boolean", default: false },
  },
});
const whole = (name) => {
  const n = Number(values[name]);
  if (!Number.isSafeInteger(n) || n < 0)
    throw new Error(`--${name}: expected a whole number, got ${values[name]}`);
  return n;
};

const VOLUME = 1e-7;
const GAP_MM = 2e-6;
const LIBRARIES =
  "XDESTEP STEP STEPBase STEPAttr STEP209 XCAF VCAF LCAF CAF CDF XSBase BO Bool Prim ShHealing TopAlgo GeomAlgo BRep GeomBase G3d G2d Math";

const work = mkdtempSync(join(tmpdir(), "step-"));
const inPackage = mkdtempSync(join(ROOT, "step-"));
let bad = 0;
const say = (line) => {
  bad++;
  if (bad <= 40) console.log(line);
};

/** What the native program finds in a text: a line a piece. */
function found(text, healing) {
  const path = join(work, "in.step");
  writeFileSync(path, text);
  const env = healing ? process.env : { ...process.env, CSF_STEPDefaults: join(work, "defaults") };
  const done = spawnSync(join(work, "check"), healing ? [path] : [path, "--no-healing"], {
    encoding: "utf8",
    env,
    maxBuffer: 1 << 28,
  });
  return done.stdout
    .split("\n")
    .filter((l) => l.startsWith("{"))
    .map((l) => JSON.parse(l));
}

const most = { gap: 0, volume: 0, tolerance: 0 };
let lost = 0;
function look({ name, text, expected }, healing) {
  // Beside a tangency a general kernel's own intersections may fail: counted there, a fault in guards.
  const beside = name.startsWith("random");
  const how = healing ? "" : " without repair";
  const all = found(text, healing);
  if (all.length !== expected.length)
    say(`${name}${how}: ${all.length} solids for ${expected.length} pieces`);
  for (const [i, want] of expected.entries()) {
    const got = all[i];
    if (!got || got.error) {
      say(`${name}${how}: ${want.name}: ${got?.error ?? "not there"}`);
      continue;
    }
    const off = Math.abs(got.volume / want.volume - 1);
    const faults = [
      got.name !== want.name && `named ${got.name}`,
      !got.valid && "not valid",
      !got.closed && "not closed",
      got.missing > 0 && `${got.missing} curves missing`,
      !(got.gap <= GAP_MM) && `curves ${got.gap} mm apart`,
      !(off <= VOLUME) && `volume off by ${off}`,
      !got.cut && !beside && "not valid after a cut",
      got.colour.some((c, k) => Math.abs(c - want.colour[k]) > 1e-3) && `colour ${got.colour}`,
    ].filter(Boolean);
    if (faults.length > 0) say(`${name}${how}: ${want.name}: ${faults.join(", ")}`);
    if (!got.cut && beside) lost++;
    most.gap = Math.max(most.gap, got.gap);
    most.volume = Math.max(most.volume, off);
    most.tolerance = Math.max(most.tolerance, got.tolerance);
  }
  return all.length;
}

try {
  mkdirSync(join(work, "defaults"));
  writeFileSync(join(work, "defaults/STEP"), "NoHealing.exec.op: DirectFaces\n");
  const links = [...LIBRARIES.split(" ").map((l) => `-lTK${l}`), "-lTKernel"];
  run("g++", [
    "-O2",
    "-w",
    "-I/usr/include/opencascade",
    join(ROOT, "scripts/step-native/check.cpp"),
    "-o",
    join(work, "check"),
    ...links,
  ]);
  const outfile = join(inPackage, "pieces.mjs");
  await build({
    entryPoints: [join(ROOT, "scripts/step-native/pieces.ts")],
    bundle: true,
    platform: "node",
    format: "esm",
    outfile,
    logLevel: "warning",
  });
  const { guardFiles, randomFiles } = await import(pathToFileURL(outfile).href);

  let [pieces, without, bytes, first] = [0, 0, 0, null];
  const all = function* () {
    yield* guardFiles();
    yield* randomFiles(whole("seed"), whole("count"), whole("each"));
  };
  for (const file of all()) {
    first ??= file;
    bytes += file.text.length;
    without += file.without;
    pieces += look(file, true);
    look(file, false);
    if (values.mesh && !file.name.startsWith("random")) {
      const path = join(work, "mesh.step");
      writeFileSync(path, file.text);
      const done = spawnSync("gmsh", ["-2", "-v", "2", "-clmax", "30", path, "-o", join(work, "mesh.stl")], {
        encoding: "utf8",
      });
      if (done.status !== 0 || /error/i.test(done.stdout + done.stderr))
        say(`${file.name}: gmsh: ${done.stdout}${done.stderr}`);
    }
    console.log(`${file.name}: ${file.expected.length} pieces, ${bad} faults so far`);
  }

  // Files that are wrong on purpose: no repair must find the missing curve, the gate the shifted one.
  const wrong = {
    "a pcurve missing": (t) =>
      t.replace(/=SURFACE_CURVE\('',(#\d+),\((#\d+),#\d+\)/g, "=SURFACE_CURVE('',$1,($2)"),
    "pcurves 1e-4 off": (t) => shift(t, /#(\d+)=CARTESIAN_POINT\('',\(([^,()]+),([^,()]+)\)\);/g),
    "a face missing": (t) => t.replace(/CLOSED_SHELL\('',\(#\d+,/g, "CLOSED_SHELL('',("),
  };
  const summary =
    `\n${pieces} pieces read, ${without} of the domain without a solid, ${(bytes / 1e6).toFixed(1)} MB; ` +
    `most: curves ${most.gap} mm apart, volume off by ${most.volume.toExponential(2)}, tolerance ${most.tolerance} mm; ` +
    `${lost} random solids beside a tangency are not valid after a boolean cut.`;
  for (const [what, change] of Object.entries(wrong)) {
    const before = bad;
    const text = change(first.text);
    if (text === first.text) throw new Error(`${what}: nothing was changed`);
    const log = console.log;
    console.log = () => {};
    look({ ...first, name: what, text }, false);
    console.log = log;
    const caught = bad > before;
    bad = before;
    if (!caught) say(`${what}: passed, and should not`);
    else console.log(`${what}: found`);
  }
  console.log(`${summary} ${bad} faults.`);
  if (bad > 0) process.exitCode = 1;
} finally {
  rmSync(work, { recursive: true, force: true });
  rmSync(inPackage, { recursive: true, force: true });
}

/** Every two-coordinate point's second coordinate, a ten-thousandth on. */
function shift(text, pattern) {
  return text.replace(
    pattern,
    (_, id, u, v) => `#${id}=CARTESIAN_POINT('',(${u},${point(Number(v) + 1e-4)}));`,
  );
}

function point(x) {
  const text = `${x}`.toUpperCase();
  return text.includes(".") ? text : text.includes("E") ? text.replace("E", ".E") : `${text}.`;
}
