/**
 * A made-up outside world for one run of the command line: text in, text out, a folder of its own.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import type { CliIo } from "../../src/cli/io.js";
import { run } from "../../src/cli/run.js";

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface WorldOptions {
  readonly cwd?: string;
  readonly stdin?: string;
  readonly tty?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  /** What the clock says at each look; the last one stays. */
  readonly clock?: readonly number[];
}

const folders: string[] = [];

/** A new empty folder, removed when the test file is through. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "cli-test-"));
  folders.push(folder);
  return folder;
}

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** An outside world that keeps what is written to it. */
export function world(options: WorldOptions = {}): {
  readonly io: CliIo;
  readonly out: string[];
  readonly err: string[];
} {
  const [out, err]: [string[], string[]] = [[], []];
  const clock = [...(options.clock ?? [0])];
  const sink = (to: string[]) => ({
    write: (text: string) => void to.push(text),
    isTTY: options.tty ?? false,
  });
  const io: CliIo = {
    stdout: sink(out),
    stderr: sink(err),
    readStdin: async () => options.stdin ?? "",
    env: options.env ?? {},
    cwd: options.cwd ?? freshFolder(),
    now: () => (clock.length > 1 ? (clock.shift() as number) : (clock[0] as number)),
  };
  return { io, out, err };
}

/** Runs a command line in a made-up world. */
export async function cli(argv: readonly string[], options: WorldOptions = {}): Promise<Outcome> {
  const { io, out, err } = world(options);
  const code = await run(argv, io);
  return { code, out: out.join(""), err: err.join("") };
}
