/**
 * What every command of the program is made of.
 *
 * @packageDocumentation
 */
import type { CommandShape, GivenArgs } from "./args.js";
import type { CliIo } from "./io.js";

/** One command. */
export interface Command extends CommandShape {
  /** One line for the list of commands. */
  readonly summary: string;
  /** What `--help` prints. */
  readonly help: string;
  /** Does the work and says the exit code; throws UsageError for wrong values. */
  run(args: GivenArgs, io: CliIo): Promise<number>;
}
