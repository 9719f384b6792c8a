/**
 * Compiles and runs the TypeScript blocks of a page against the source, as a stranger would run them against the package.
 */
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import ts from "typescript";
import { ROOT } from "./blocks.js";

const FOLDER = fileURLToPath(ROOT);

/** The sources behind the package's entries. */
const ENTRIES: Readonly<Record<string, string>> = {
  rakewright: "src/index.ts",
  "rakewright/jscad": "src/export/adapters/jscad/index.ts",
  ...Object.fromEntries(
    ["kernel", "members", "joints", "layout", "shop", "checks", "export"].map((room) => [
      `rakewright/${room}`,
      `src/${room}/index.ts`,
    ]),
  ),
};

/** Type errors of the blocks, in the project's own strictness; each begins with the block's number. */
export function typeErrors(blocks: readonly string[]): string[] {
  const config = ts.readConfigFile(join(FOLDER, "tsconfig.json"), ts.sys.readFile).config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, FOLDER);
  const paths = Object.fromEntries(
    Object.entries(ENTRIES).map(([name, path]) => [name, [join(FOLDER, path)]]),
  );
  const files = new Map(blocks.map((text, i) => [join(FOLDER, "tests/docs", `block-${i}.ts`), text]));
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => files.has(name) || fileExists(name);
  host.getSourceFile = (name, version) => {
    const text = files.get(name);
    return text === undefined ? getSourceFile(name, version) : ts.createSourceFile(name, text, version);
  };
  const program = ts.createProgram([...files.keys()], { ...options, paths }, host);
  return [...files.keys()].flatMap((name, i) => {
    const file = program.getSourceFile(name);
    const found = [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)];
    return found.map((d) => `${i}: ${ts.flattenDiagnosticMessageText(d.messageText, " ")}`);
  });
}

/** What a block prints when Node runs it in an empty folder. */
export async function printedBy(block: string, folder: string): Promise<string> {
  const made = await build({
    stdin: { contents: block, resolveDir: FOLDER, loader: "ts" },
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    alias: Object.fromEntries(Object.entries(ENTRIES).map(([name, path]) => [name, join(FOLDER, path)])),
    // A bundled CommonJS package asks for `require`, which a module does not have.
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    logLevel: "silent",
  });
  const program = join(folder, "block.mjs");
  writeFileSync(program, made.outputFiles[0]?.text ?? "");
  const done = spawnSync(process.execPath, [program], { cwd: folder, encoding: "utf8", timeout: 20_000 });
  return `${done.stdout}${done.stderr}`;
}
