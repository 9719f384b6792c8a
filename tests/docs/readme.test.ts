/**
 * The documentation is true: its code runs and prints what is printed there, its commands exist, its tables list what the
 * source has. The judges are Node, the TypeScript compiler, package.json and the source tree itself.
 */
import { cpSync, existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { solidOf } from "../../src/joints/index.js";
import { tolerance } from "../../src/kernel/index.js";
import { buildGuard, designJsonSchema, shopJsonSchema } from "../../src/layout/index.js";
import { parseModule } from "../architecture/sources.js";
import { cli, freshFolder } from "../cli/world.js";
import { blocksOf, codeWords, linksOf, missingFrom, ROOT, rowsOf, textOf } from "./blocks.js";
import { codesOf } from "./codes.js";
import { printedBy, typeErrors } from "./programs.js";

const README = textOf("README.md");
const DEVELOPERS = textOf("DEVELOPERS.md");
const PAGES = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "SECURITY.md"];
const manifest = JSON.parse(textOf("package.json")) as {
  name: string;
  version: string;
  exports: Record<string, unknown>;
  scripts: Record<string, string>;
  engines: { node: string };
};
const blocks = blocksOf(README);
const programs = [README, DEVELOPERS].flatMap(blocksOf).filter(({ language }) => language === "ts");

/** A folder that looks like a checkout to the command line. */
function checkout(): string {
  const folder = freshFolder();
  cpSync(fileURLToPath(new URL("examples", ROOT)), join(folder, "examples"), { recursive: true });
  return folder;
}

const MINUS = "\u207b";
const RAISED = "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079";

/** What `0.05 mm`, `10\u207b\u2076 mm` or `2\u00b710\u207b\u2076 mm` says, millimetres. */
function millimetres(text: string): number {
  const plain = text.replace(/ mm$/, "");
  const [, factor = "1", power = ""] =
    new RegExp(`^(?:([\\d.]+)\u00b7)?10${MINUS}([${RAISED}]+)$`).exec(plain) ?? [];
  return power === ""
    ? Number(plain)
    : Number(`${factor}e-${[...power].map((c) => RAISED.indexOf(c)).join("")}`);
}

describe("blocks of code", () => {
  it("type-check, in the project's strictness", () => {
    expect(programs.length).toBeGreaterThanOrEqual(3);
    expect(typeErrors(programs.map(({ text }) => text))).toEqual([]);
    expect(typeErrors(['import { solidOf } from "rakewright";\nsolidOf(1);'])).toHaveLength(1);
  }, 120_000);

  it.each(programs.map((p) => [p.line, p] as const))(
    "run and print what stands below line %i",
    async (_, own) => {
      const shown = blocks[blocks.indexOf(blocks.find(({ line }) => line === own.line) ?? own) + 1];
      expect(shown?.language).toBe("text");
      const folder = freshFolder();
      expect(await printedBy(own.text, folder)).toBe(shown?.text);
      for (const name of readdirSync(folder).filter((file) => file.endsWith(".stl"))) {
        // Layout of binary STL: 84 bytes and 50 a triangle, the count at byte 80.
        const bytes = readFileSync(join(folder, name));
        expect(statSync(join(folder, name)).size).toBe(84 + 50 * bytes.readUInt32LE(80));
      }
    },
  );

  it("that are designs build without a finding", () => {
    const designs = blocks.filter(({ language }) => language === "json");
    expect(designs.length).toBeGreaterThan(0);
    for (const { text } of designs) {
      expect(text.trimEnd().split("\n").length).toBeLessThanOrEqual(20);
      const guard = buildGuard(JSON.parse(text));
      expect(guard.diagnostics).toEqual([]);
      expect(guard.pieces.length).toBeGreaterThan(0);
      expect(guard.pieces.map((piece) => solidOf(piece).ok)).not.toContain(false);
    }
  });
});

describe("the command line on the page", () => {
  let folder = "";
  beforeAll(() => {
    folder = checkout();
  });

  const sessions = blocks
    .filter(({ language }) => language === "console")
    .flatMap(({ text }) => text.split(/^\$ /m).slice(1))
    .map((session) => session.split("\n"));

  it.each(sessions.map((lines) => [lines[0] ?? "", lines.slice(1).join("\n")] as const))(
    "%s",
    async (command, shown) => {
      const [npx, name, ...words] = command.split(" ");
      expect([npx, name]).toEqual(["npx", manifest.name]);
      const { code, out, err } = await cli(words, { cwd: folder });
      expect(code).toBe(0);
      expect(missingFrom(`${err}${out}`, shown)).toBe(null);
    },
  );

  it("names every command", async () => {
    const { out } = await cli(["--help"]);
    const commands = [...out.matchAll(/^ {2}(\w+) {2,}\w/gm)].map((found) => found[1]);
    expect(commands.length).toBeGreaterThan(3);
    const shown = (command = "") => sessions.some(([line = ""]) => line.split(" ")[2] === command);
    expect(commands.filter((command) => command !== manifest.name && !shown(command))).toEqual([]);
    expect(shown("bend")).toBe(false);
  });

  it("writes the files of the table, and the paper that is quoted", async () => {
    await cli(["build", "examples/pottery-studio.json", "-o", "out/demo"], { cwd: folder });
    const named = rowsOf(README)
      .flatMap(([cell = ""]) => codeWords(cell))
      .filter((word) => /^[\w/]+\.(stl|obj|mtl|json|txt)$/.test(word));
    expect(named).toHaveLength(7);
    expect(named.filter((file) => !existsSync(join(folder, "out/demo", file)))).toEqual([]);
    const quote = blocks.find(({ before }) => before.includes("<!-- from cutlist.txt -->"));
    const paper = readFileSync(join(folder, "out/demo/cutlist.txt"), "utf8");
    expect(quote?.text.split("\n").length).toBeGreaterThan(10);
    expect(missingFrom(paper, `…\n${quote?.text ?? ""}…`)).toBe(null);
  });

  it("is judged by a comparison that can fail", () => {
    expect(missingFrom("a\nb\nc", "a\nb\nc")).toBe(null);
    expect(missingFrom("a\nb\nc", "a\n…")).toBe(null);
    expect(missingFrom("a\nb\nc", "…\nb\nc")).toBe(null);
    expect(missingFrom("a\nb\nc", "a\n…\nd")).toBe("d");
    expect(missingFrom("a\nb\nc", "b\n…")).toBe("b");
    expect(missingFrom("a\nb\nc", "a\nb")).toMatch("more lines");
    expect(missingFrom("a\nb", "")).toMatch("more lines");
  });
});

describe("shell commands on the pages", () => {
  const lines = PAGES.flatMap((page) => blocksOf(textOf(page)))
    .filter(({ language }) => language === "sh")
    .flatMap(({ text }) => text.trim().split(/\n| && /));
  const inline = PAGES.flatMap((page) => codeWords(textOf(page))).filter((word) => word.startsWith("npm "));

  it("exist in package.json", () => {
    expect(lines.length).toBeGreaterThan(6);
    const known = new Set([
      "npm ci",
      "npm pack",
      `npm install ./${manifest.name}-${manifest.version}.tgz`,
      ...Object.keys(manifest.scripts).map((name) => (name === "test" ? "npm test" : `npm run ${name}`)),
    ]);
    // What stands after `--` goes to the script.
    const script = (line: string): string => line.split(" -- ")[0] as string;
    expect([...lines, ...inline].filter((line) => !known.has(script(line)))).toEqual([]);
  });

  it("ask for the Node that package.json asks for", () => {
    expect(README).toContain(`Node ${manifest.engines.node.replace(">=", "")} or later`);
  });
});

describe("tables", () => {
  it("list every entry of the package", () => {
    const named = rowsOf(README)
      .map(([cell = ""]) => codeWords(cell)[0] ?? "")
      .filter((word) => /^rakewright(\/|$)/.test(word));
    const entries = Object.keys(manifest.exports).filter((path) => path !== "./package.json");
    expect(named.sort()).toEqual(entries.map((path) => path.replace(/^\./, manifest.name)).sort());
  });

  it("name every field of a design", () => {
    const words = new Set(rowsOf(README).flatMap((row) => row.flatMap(codeWords)));
    const fields = Object.keys(designJsonSchema().properties as object);
    expect(fields.length).toBeGreaterThan(8);
    expect(fields.filter((field) => !["$schema", "version"].includes(field) && !words.has(field))).toEqual(
      [],
    );
  });

  it("name every field of a shop file", () => {
    const section = README.slice(README.indexOf("## The shop file"), README.indexOf("## Command line"));
    const words = new Set(rowsOf(section).flatMap(([cell = ""]) => codeWords(cell)));
    const fields = Object.keys(shopJsonSchema().properties as object);
    expect(fields.length).toBeGreaterThan(12);
    expect(fields.filter((field) => !["$schema", "version"].includes(field) && !words.has(field))).toEqual(
      [],
    );
  });

  it("give the tolerances their true values", () => {
    const values = new Map(rowsOf(README).map(([name = "", value = ""]) => [name, millimetres(value)]));
    const { CHORD_MM, NODE_MM, ON_SURFACE_MM, SAME_PIECE_MM, STATION_MM } = tolerance;
    expect(["chord", "node", "same piece", "on surface", "station"].map((name) => values.get(name))).toEqual([
      CHORD_MM,
      NODE_MM,
      SAME_PIECE_MM,
      ON_SURFACE_MM,
      STATION_MM,
    ]);
  });

  it("list every diagnostic code, and no other", () => {
    const section = DEVELOPERS.slice(DEVELOPERS.indexOf("## Diagnostic codes"));
    const listed = rowsOf(section).flatMap(([cell = ""]) => codeWords(cell));
    expect(new Set(listed).size).toBe(listed.length);
    expect(listed.length).toBeGreaterThan(60);
    expect([...listed].sort()).toEqual([...codesOf().keys()]);
  });

  it("are compared with codes found in every form they are written in", () => {
    const text = `
      const CODE = "from-const";
      const CODES = { a: "from-table" };
      const say = (n: number, code: string) => diagnostic({ code: \`\${prefix}-\${code}\` });
      function tell(code: string) {}
      interface R { report(code: string): void }
      function f(prefix: "one" | "two", r: R) {
        say(1, "made");
        tell("told");
        r.report("reported");
        return diagnostic({ code: x === "not-this" ? "either" : "or" });
      }`;
    const found = [...codesOf([parseModule("kernel/a.ts", text)]).keys()];
    const wanted = ["either", "from-const", "from-table", "one-made", "or", "reported", "told", "two-made"];
    expect(found).toEqual(wanted);
  });
});

describe("links and file names", () => {
  it("lead somewhere", () => {
    const links = PAGES.flatMap((page) => linksOf(textOf(page)));
    expect(links.length).toBeGreaterThan(6);
    expect(links.filter((target) => !existsSync(new URL(target, ROOT)))).toEqual([]);
  });

  it("in the developers' page are files of the source tree", () => {
    const rooms = readdirSync(new URL("src", ROOT), { recursive: true, encoding: "utf8" }).map((path) =>
      path.replaceAll("\\", "/"),
    );
    const named = codeWords(DEVELOPERS).filter((word) => /^[\w/-]+\.ts$/.test(word));
    expect(named.length).toBeGreaterThan(50);
    const isThere = (name: string): boolean =>
      existsSync(new URL(name, ROOT)) || rooms.some((path) => path === name || path.endsWith(`/${name}`));
    expect(named.filter((name) => !isThere(name))).toEqual([]);
  });

  it("in anchors are headings", () => {
    const headings = [...DEVELOPERS.matchAll(/^#+ (.+)$/gm)].map((found) =>
      (found[1] as string).toLowerCase().replaceAll(" ", "-"),
    );
    const anchors = [...README.matchAll(/DEVELOPERS\.md#([\w-]+)/g)].map((found) => found[1]);
    expect(anchors.length).toBeGreaterThan(0);
    expect(anchors.filter((anchor) => !headings.includes(anchor ?? ""))).toEqual([]);
  });
});
