// Builds the examples into out/: npm run demo. The mezzanine stair as drawn, the kiln loft, then the same mezzanine as it
// goes in a shop: its stair surveyed, its posts stood up and measured, and what that moves.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { ROOT } from "./lib.mjs";

function rakewright(...args) {
  console.error(`\nrakewright ${args.join(" ")}`);
  const { status } = spawnSync(process.execPath, [join(ROOT, "dist/cli/main.js"), ...args], {
    cwd: ROOT,
    stdio: "inherit",
  });
  if (status !== 0) process.exit(status ?? 1);
}

const surveyed = "examples/pottery-studio-surveyed.json";
rakewright("build", "examples/pottery-studio.json", "-o", "out/pottery-studio", "--force");
rakewright("build", "examples/kiln-loft.json", "-o", "out/kiln-loft", "--force");
rakewright("build", surveyed, "-o", "out/surveyed", "--force", "--quiet");
rakewright(
  ...["build", surveyed, "--as-set", "examples/pottery-studio-as-set.json"],
  ...["-o", "out/as-set", "--force", "--quiet"],
);
rakewright("changes", "out/surveyed", "out/as-set");
