/**
 * Progress for a person who waits: one line on standard error that is written over, only on a terminal, only after a second.
 *
 * @packageDocumentation
 */
import type { CliIo } from "./io.js";

/** Milliseconds of silence before the first line. */
const PATIENCE_MS = 1000;

/** Tells how far the work is. */
export interface Progress {
  step(done: number, total: number, label: string): void;
  /** Wipes the line. */
  end(): void;
}

/** A progress line; silent when nobody looks or the work is short. */
export function progress(io: CliIo, quiet: boolean): Progress {
  const start = io.now();
  let shown = false;
  return {
    step(done, total, label) {
      if (quiet || !io.stderr.isTTY || io.now() - start < PATIENCE_MS) return;
      shown = true;
      io.stderr.write(`\r\u001b[K${label} ${done} of ${total}`);
    },
    end() {
      if (shown) io.stderr.write("\r\u001b[K");
    },
  };
}
