/**
 * The manners of the whole program: help, version, wrong use, and what it says when it is itself at fault.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Command } from "../../src/cli/command.js";
import { run } from "../../src/cli/run.js";
import { cli, world } from "./world.js";

const manifest = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as {
  version: string;
};
const COMMANDS = ["build", "check", "saddle", "schema"];

describe("help and version", () => {
  it.each([["--help"], ["-h"], ["help"]])("%s lists every command on standard output", async (word) => {
    const { code, out, err } = await cli([word]);
    expect([code, err]).toEqual([0, ""]);
    expect(COMMANDS.filter((name) => !new RegExp(`^  ${name} +\\S`, "m").test(out))).toEqual([]);
  });

  it.each(COMMANDS)("%s --help shows its usage, whatever else is on the line", async (name) => {
    const { code, out, err } = await cli([name, "--wrong", "--help"]);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(new RegExp(`^Usage: rakewright ${name}`));
    expect(out.split("\n").filter((line) => line.length > 120)).toEqual([]);
    expect((await cli(["help", name])).out).toBe(out);
  });

  it("prints the version of the package", async () => {
    expect(await cli(["--version"])).toEqual({ code: 0, out: `${manifest.version}\n`, err: "" });
  });
});

describe("wrong use", () => {
  it.each([
    [[], /No command given/],
    [["bulid"], /Unknown command `bulid`/],
    [["help", "bulid"], /Unknown command `bulid`/],
    [["--wrong"], /Unknown command `--wrong`/],
    [["check"], /DESIGN is missing/],
    [["check", "a", "b"], /did not expect `b`/],
    [["check", "a", "--wrong"], /--wrong/],
    [["schema", "--json"], /--json/],
  ])("%j is exit code 2 with nothing on standard output", async (argv, message) => {
    const { code, out, err } = await cli(argv);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(message);
  });
});

describe("a bug in the program", () => {
  it("is exit code 70 and asks for a report", async () => {
    const broken: Command = {
      name: "broken",
      summary: "",
      help: "",
      words: [],
      options: {},
      run: async () => {
        throw new TypeError("what was never meant to be");
      },
    };
    const { io, out, err } = world();
    expect(await run(["broken"], io, [broken])).toBe(70);
    expect(out).toEqual([]);
    expect(err.join("")).toMatch(/what was never meant to be[\s\S]*please report/);
  });
});

describe("rakewright schema", () => {
  it("prints a JSON Schema of draft 2020-12", async () => {
    const { code, out, err } = await cli(["schema"]);
    expect([code, err]).toEqual([0, ""]);
    expect((JSON.parse(out) as { $schema: string }).$schema).toBe(
      "https://json-schema.org/draft/2020-12/schema",
    );
  });
});
