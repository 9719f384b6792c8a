// Packs the package, installs the tarball into an empty folder and uses it there as a stranger would.
//
// Type checkers and linters see the sources; only an installed tarball shows a missing file, a wrong `exports`
// condition or a named import that a CommonJS dependency does not have. Needs a build. Run: npm run check:package
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT, run, step, tool } from "./lib.mjs";

const manifest = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
const entries = Object.keys(manifest.exports)
  .filter((path) => path !== "./package.json")
  .map((path) => path.replace(/^\./, manifest.name));

const ALLOWED_FILES =
  /^(dist\/.+|schema\/.+\.json|(README|CHANGELOG|THIRD-PARTY)\.md|LICENSE|package\.json)$/;

const CONSUMERS = [
  { mode: "nodenext ESM", file: "esm.mts", options: { module: "NodeNext", moduleResolution: "NodeNext" } },
  {
    mode: "nodenext CommonJS",
    file: "cjs.cts",
    options: { module: "NodeNext", moduleResolution: "NodeNext" },
  },
  { mode: "bundler", file: "bundler.ts", options: { module: "ESNext", moduleResolution: "Bundler" } },
];

/** Imports every entry under a name of its own and uses each namespace, so that nothing is elided. */
function consumerSource() {
  const imports = entries.map((entry, i) => `import * as entry${i} from "${entry}";`);
  const used = entries.map((_, i) => `entry${i}`).join(", ");
  return `${imports.join("\n")}
import { miter, saddle } from "${manifest.name}/joints";

const corner: number = miter({ angle: 90, depths: [40, 40] }).first.miter;
const cope: number | null | undefined = saddle({ branch: { od: 42.4, wall: 3.2 }, header: { od: 48.3 }, angle: 90 })
  .stations[0]?.outer;
export const all = [${used}, corner, cope];
`;
}

const work = mkdtempSync(join(tmpdir(), "rakewright-pack-"));
try {
  const consumer = join(work, "consumer");
  mkdirSync(consumer);
  let tarball = "";

  await step("pack", () => {
    const [packed] = Object.values(JSON.parse(run("npm", ["pack", "--json", "--pack-destination", work])));
    const name = packed.filename ?? readdirSync(work).find((file) => file.endsWith(".tgz"));
    tarball = join(work, name);
    const stray = packed.files.map((file) => file.path).filter((path) => !ALLOWED_FILES.test(path));
    if (stray.length > 0)
      throw new Error(`the tarball holds files that nobody asked for: ${stray.join(", ")}`);
    const needed = [
      ...["LICENSE", "THIRD-PARTY.md", "README.md"],
      ...["schema/design.schema.json", "schema/shop.schema.json", "schema/as-set.schema.json"],
      manifest.bin[manifest.name],
    ];
    const missing = needed.filter((path) => !packed.files.some((file) => file.path === path));
    if (missing.length > 0) throw new Error(`the tarball lacks ${missing.join(", ")}`);
    return `${packed.files.length} files, ${(packed.size / 1024).toFixed(0)} kB packed`;
  });

  await step("install into an empty folder", () => {
    writeFileSync(
      join(consumer, "package.json"),
      '{ "name": "consumer", "version": "1.0.0", "private": true }\n',
    );
    run("npm", ["install", "--prefer-offline", "--no-audit", "--no-fund", "--no-save", tarball], consumer);
  });

  for (const file of ["smoke.mjs", "smoke.cjs"]) {
    cpSync(new URL(`smoke/${file}`, import.meta.url), join(consumer, file));
    await step(`run ${file}`, () => run(process.execPath, [file, ...entries], consumer).trim());
  }

  await step("run the command", () => {
    const command = join(consumer, "node_modules", manifest.name, manifest.bin[manifest.name]);
    const version = run(process.execPath, [command, "--version"], consumer).trim();
    if (!version.includes(manifest.version)) throw new Error(`--version printed "${version}"`);
    return version;
  });

  for (const { mode, file, options } of CONSUMERS) {
    await step(`type-check as ${mode}`, () => {
      writeFileSync(join(consumer, file), consumerSource());
      const compilerOptions = {
        ...options,
        target: "ES2022",
        // zod's types name URL and File, which either DOM or Node supplies.
        lib: ["ES2022", "DOM"],
        types: [],
        strict: true,
        exactOptionalPropertyTypes: true,
        skipLibCheck: false,
        noEmit: true,
      };
      writeFileSync(join(consumer, "tsconfig.json"), JSON.stringify({ compilerOptions, files: [file] }));
      run(process.execPath, [tool("typescript/bin/tsc"), "-p", "tsconfig.json"], consumer);
    });
  }

  await step("publint --strict", () => {
    run(process.execPath, [tool("publint/src/cli.js"), tarball, "--strict"]);
  });

  await step("are the types wrong", () => {
    run(process.execPath, [tool("@arethetypeswrong/cli/dist/index.js"), tarball, "--profile", "node16"]);
  });
} finally {
  rmSync(work, { recursive: true, force: true });
}
