/**
 * The program as a process of its own: exit codes, standard input, and a reader that closes the pipe early.
 *
 * The entry is bundled by esbuild into a temporary folder first, so no earlier build is needed or trusted.
 */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { freshFolder } from "./world.js";

const PROGRAM = join(freshFolder(), "main.mjs");
const SADDLE = ["saddle", "--branch", "42.4x3.2", "--header", "48.3", "--angle", "55", "--unit", "mm"];

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program; `closeEarly` closes its output after the first bytes, as `head` does. */
function program(argv: readonly string[], stdin = "", closeEarly = false): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [PROGRAM, ...argv], { stdio: ["pipe", "pipe", "pipe"] });
    let [out, err] = ["", ""];
    child.stdout.on("data", (chunk: Buffer) => {
      out += chunk.toString("utf8");
      if (closeEarly) child.stdout.destroy();
    });
    child.stderr.on("data", (chunk: Buffer) => {
      err += chunk.toString("utf8");
    });
    child.stdin.on("error", () => undefined);
    child.stdin.end(stdin);
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
  });
}

describe("the program", () => {
  beforeAll(() => {
    buildSync({
      entryPoints: [fileURLToPath(new URL("../../src/cli/main.ts", import.meta.url))],
      bundle: true,
      platform: "node",
      format: "esm",
      outfile: PROGRAM,
      logLevel: "error",
    });
  });

  it("leaves with 0 and its result on standard output", async () => {
    const { code, out, err } = await program(SADDLE);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/^SADDLE of a tube/);
  });

  it("leaves with 2 and its complaint on standard error", async () => {
    const { code, out, err } = await program(["bulid"]);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/Unknown command/);
  });

  it("reads standard input for -, and leaves with 1 for a design with errors", async () => {
    const { code, out, err } = await program(["check", "-"], "{}");
    expect([code, err]).toEqual([1, ""]);
    expect(out).toMatch(/^error /m);
  });

  it("does not mind a reader that has seen enough", async () => {
    const long = [...SADDLE, "--stations", "3600", "--json"];
    const whole = await program(long);
    expect(whole.out.length).toBeGreaterThan(200_000);
    const { code, out, err } = await program(long, "", true);
    expect([code, err]).toEqual([0, ""]);
    expect(out.length).toBeLessThan(whole.out.length);
  });
});
