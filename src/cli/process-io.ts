/**
 * The real outside world: this process's streams, environment and clock.
 *
 * A reader that closes the pipe early (`| head`) has what it wanted: that ends the run and is no error.
 *
 * @packageDocumentation
 */
import type { CliIo, Sink } from "./io.js";

function sink(stream: NodeJS.WriteStream): Sink {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
  return { write: (text) => void stream.write(text), isTTY: stream.isTTY === true };
}

/** Streams, environment and clock of this process. */
export function processIo(): CliIo {
  return {
    stdout: sink(process.stdout),
    stderr: sink(process.stderr),
    readStdin: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk as Uint8Array));
      return Buffer.concat(chunks).toString("utf8");
    },
    env: process.env,
    cwd: process.cwd(),
    now: () => performance.now(),
  };
}
