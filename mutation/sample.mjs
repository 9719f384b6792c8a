// All mutants there are, and a seeded sample of them.
//
// Stryker's own instrumenter lists the mutants, so a sampled one is exactly one of Stryker's; it is told apart from others
// at the same place by its replacement. The order is by file and place; the draw is a shuffle that the seed alone decides.
import { readdirSync, readFileSync } from "node:fs";
import { Instrumenter } from "@stryker-mutator/instrumenter";

/** Sentences of diagnostics are no behaviour that tests ought to pin word by word. */
export const EXCLUDED = ["StringLiteral"];

const QUIET = {
  ...Object.fromEntries(
    ["trace", "debug", "info", "warn", "error", "fatal"].map((level) => [level, () => {}]),
  ),
  ...Object.fromEntries(
    ["Trace", "Debug", "Info", "Warn", "Error", "Fatal"].map((level) => [`is${level}Enabled`, () => false]),
  ),
};

/** Source files below some folders, in alphabetical order; re-exporting index files hold nothing to change. */
export function sourceFiles(root, folders) {
  return folders
    .flatMap((folder) =>
      readdirSync(new URL(`${folder}/`, root), { recursive: true })
        .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
        .filter((name) => /\.ts$/.test(name) && !/(\.d|\/index)\.ts$/.test(name)),
    )
    .sort();
}

/** What names one mutant: its file below the root, its place and what stands there instead. */
export function keyOf(root, { fileName, location: { start, end }, mutatorName, replacement }) {
  const base = root.pathname;
  const at = fileName.startsWith(base) ? fileName.slice(base.length) : fileName;
  return JSON.stringify([at, start.line, start.column, end.line, end.column, mutatorName, replacement]);
}

export async function allMutants(root, folders) {
  const files = sourceFiles(root, folders).map((name) => ({
    name,
    content: readFileSync(new URL(name, root), "utf8"),
    mutate: true,
  }));
  const options = { plugins: null, excludedMutations: EXCLUDED, ignorers: [] };
  const { mutants } = await new Instrumenter(QUIET).instrument(files, options);
  return mutants.filter((m) => m.status !== "Ignored");
}

/** Marsaglia's xorshift of 32 bits (Journal of Statistical Software 8, 2003); numbers in [0, 1). */
function xorshift(seed) {
  let x = (seed * 2654435761 + 1) >>> 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    x >>>= 0;
    return x / 2 ** 32;
  };
}

/** The first `count` of a shuffle (Fisher and Yates), so that a larger sample with the same seed holds the smaller one. */
export function draw(list, count, seed) {
  const random = xorshift(seed);
  const left = [...list];
  const drawn = Math.min(count, left.length);
  for (let k = 0; k < drawn; k++) {
    const other = k + Math.floor(random() * (left.length - k));
    [left[k], left[other]] = [left[other], left[k]];
  }
  return left.slice(0, drawn);
}

/** Stryker's way to name a place: lines from 1, columns from 0. */
export function rangeOf({ fileName, location: { start, end } }) {
  return `${fileName}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;
}
