/**
 * The text of `rakewright --help`.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../kernel/caution.js";
import type { Command } from "./command.js";

/** The overview, with one line per command. */
export function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((c) => c.name.length));
  const list = commands.map((c) => `  ${c.name.padEnd(width)}  ${c.summary}`).join("\n");
  return `Usage: rakewright COMMAND ...

Geometry of steel stair guards: from a design document to pieces, models and shop papers.

${list}

  rakewright COMMAND --help   what a command takes
  rakewright --version        the version

Results go to standard output or to -o, everything else to standard error.
Exit code 0 ok, 1 the design has errors, 2 wrong use or unreadable input, 70 a bug in this program.

${CAUTION}
`;
}
