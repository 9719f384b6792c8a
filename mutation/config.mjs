// What Stryker is told. Everything it writes stays below out/mutation, which git ignores.
import { fileURLToPath } from "node:url";
import { EXCLUDED, rangeOf } from "./sample.mjs";

const CORES = 2;

/** Options for a drawn sample; `root` is the repository, `keys` the file that names the sampled mutants. */
export function strykerOptions({ root, folder, keys, mutants }) {
  const beside = (name) => fileURLToPath(new URL(name, import.meta.url));
  return {
    mutate: [...new Set(mutants.map(rangeOf))],
    mutator: { excludedMutations: EXCLUDED },
    plugins: ["@stryker-mutator/vitest-runner", beside("checker.mjs")],
    testRunner: "vitest",
    vitest: { configFile: "mutation/vitest.config.ts", related: true },
    coverageAnalysis: "perTest",
    checkers: ["sample"],
    sample: { root: fileURLToPath(root).replace(/[\\/]$/, ""), file: keys },
    warnings: { unknownOptions: false },
    concurrency: CORES,
    // A busy machine must not pass for an endless loop; those are found by counting how often a mutant is reached.
    timeoutMS: 60_000,
    timeoutFactor: 5,
    dryRunTimeoutMinutes: 60,
    tempDirName: `${folder}/sandbox`,
    ignorePatterns: ["/bench", "/dist", "/out", "/coverage", "/examples/*.svg"],
    reporters: ["json", "progress-append-only"],
    jsonReporter: { fileName: `${folder}/report.json` },
    allowConsoleColors: false,
    disableTypeChecks: false,
    allowEmpty: false,
  };
}
