/**
 * What the command line sees of the outside world, so that tests can hand it another one.
 *
 * Results go to `stdout`, everything else to `stderr`. Files are read and written through `node:fs` below `cwd`.
 *
 * @packageDocumentation
 */

/** Somewhere text goes. */
export interface Sink {
  write(text: string): void;
  /** True when a person is looking at it. */
  readonly isTTY: boolean;
}

/** The outside world of one run. */
export interface CliIo {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** All of the standard input. */
  readStdin(): Promise<string>;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Milliseconds of any steadily running clock. */
  now(): number;
}

/** Exit codes. */
export const EXIT = { ok: 0, design: 1, usage: 2, bug: 70 } as const;

/** The command was called wrongly, or a file cannot be read or written: exit code 2. */
export class UsageError extends Error {
  constructor(
    message: string,
    readonly hint: string,
  ) {
    super(message);
    this.name = "UsageError";
  }
}
