/**
 * How the package is built: every room of src is its own entry, so that importing one function costs one function.
 *
 * The library goes out as ESM and CommonJS with types, for any platform; the command line is ESM for Node only.
 */
import { defineConfig } from "tsup";

const shared = {
  target: "es2022",
  sourcemap: true,
  splitting: true,
  treeshake: false,
  clean: false,
} as const;

export default defineConfig([
  {
    ...shared,
    entry: {
      index: "src/index.ts",
      "kernel/index": "src/kernel/index.ts",
      "members/index": "src/members/index.ts",
      "joints/index": "src/joints/index.ts",
      "layout/index": "src/layout/index.ts",
      "shop/index": "src/shop/index.ts",
      "checks/index": "src/checks/index.ts",
      "export/index": "src/export/index.ts",
      "jscad/index": "src/export/adapters/jscad/index.ts",
    },
    format: ["esm", "cjs"],
    dts: true,
    platform: "neutral",
  },
  {
    ...shared,
    entry: { "cli/main": "src/cli/main.ts" },
    format: ["esm"],
    platform: "node",
    banner: { js: "#!/usr/bin/env node" },
  },
]);
