/**
 * How the package is built: every room of src is its own entry, so that importing one function costs one function.
 *
 * The library goes out as ESM and CommonJS with types, for any platform; the command line is ESM for Node only. Reading
 * and starting many small files is what an import spends most of its time on, so `oneCore` keeps the inner rooms in one.
 * zod and gl-matrix go along as far as they are used, for the same reason; THIRD-PARTY.md has their licences.
 */
import { resolve } from "node:path";
import { defineConfig, type Options } from "tsup";

type Plugin = NonNullable<Options["esbuildPlugins"]>[number];

const CORE = ["kernel", "members", "joints"] as const;
const isCore = (path: string) => CORE.some((room) => path.startsWith(resolve("src", room)));

/**
 * Has every entry reach every module of the inner rooms, so that esbuild, which makes a chunk of the modules that the same
 * entries reach, makes one chunk of them. A bundler that takes the package in still drops what it does not use of it.
 */
const oneCore: Plugin = {
  name: "one-core",
  setup(build) {
    const gathered = CORE.map((room) => `import "./src/${room}/index.ts";`).join("\n");
    build.onResolve({ filter: /^one-core$/ }, () => ({
      path: "one-core",
      namespace: "one-core",
      sideEffects: true,
    }));
    build.onLoad({ filter: /.*/, namespace: "one-core" }, () => ({ contents: gathered, resolveDir: "." }));
    build.onResolve({ filter: /^\.{1,2}\// }, ({ path, resolveDir }) => {
      const file = resolve(resolveDir, path.replace(/\.js$/, ".ts"));
      return isCore(file) ? { path: file, sideEffects: true } : undefined;
    });
  },
};

const shared: Options = {
  target: "es2022",
  sourcemap: true,
  splitting: true,
  treeshake: false,
  clean: false,
  noExternal: ["gl-matrix", "zod"],
};

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
    inject: ["one-core"],
    esbuildPlugins: [oneCore],
  },
  {
    ...shared,
    entry: { "cli/main": "src/cli/main.ts" },
    format: ["esm"],
    platform: "node",
    banner: { js: "#!/usr/bin/env node" },
  },
]);
