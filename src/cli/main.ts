/**
 * The program `rakewright`: runs one command on this process and leaves with its exit code.
 *
 * @packageDocumentation
 */
import { processIo } from "./process-io.js";
import { run } from "./run.js";

process.exitCode = await run(process.argv.slice(2), processIo());
