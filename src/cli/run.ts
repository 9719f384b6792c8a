/**
 * Runs one command line against a given outside world and says the exit code.
 *
 * 0 ok, 1 the design has errors, 2 wrong use or unreadable input, 70 a bug in this program.
 *
 * @packageDocumentation
 */
import { readArgs } from "./args.js";
import type { Command } from "./command.js";
import { buildCommand } from "./commands/build.js";
import { changesCommand } from "./commands/changes.js";
import { checkCommand } from "./commands/check.js";
import { saddleCommand } from "./commands/saddle.js";
import { schemaCommand } from "./commands/schema.js";
import { surveyCommand } from "./commands/survey.js";
import { overview } from "./help.js";
import { type CliIo, EXIT, UsageError } from "./io.js";
import { version } from "./version.js";

const COMMANDS: readonly Command[] = [
  buildCommand,
  checkCommand,
  changesCommand,
  saddleCommand,
  schemaCommand,
  surveyCommand,
];

/**
 * Runs a command line.
 *
 * @param argv - the words after the program's name
 * @param io - the outside world
 * @param commands - for tests; default all commands
 * @returns the exit code; never throws
 * @example
 * process.exitCode = await run(process.argv.slice(2), processIo());
 */
export async function run(argv: readonly string[], io: CliIo, commands = COMMANDS): Promise<number> {
  try {
    return await dispatch(argv, io, commands);
  } catch (error) {
    if (error instanceof UsageError) {
      io.stderr.write(`rakewright: ${error.message}\n${error.hint === "" ? "" : `  ${error.hint}\n`}`);
      return EXIT.usage;
    }
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    io.stderr.write(
      `rakewright: internal error\n${detail}\nThis is a bug in rakewright ${version()}: please report it with the design and these lines.\n`,
    );
    return EXIT.bug;
  }
}

async function dispatch(argv: readonly string[], io: CliIo, commands: readonly Command[]): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined) throw new UsageError("No command given.", "Run `rakewright --help`.");
  if (name === "--version" || name === "-V") return print(io, `${version()}\n`);
  if (name === "--help" || name === "-h" || (name === "help" && rest.length === 0))
    return print(io, overview(commands));
  const wanted = name === "help" ? rest[0] : name;
  const command = commands.find((c) => c.name === wanted);
  if (!command) {
    const names = commands.map((c) => c.name).join(", ");
    throw new UsageError(
      `Unknown command \`${wanted}\`.`,
      `Expected one of ${names}. Run \`rakewright --help\`.`,
    );
  }
  if (name === "help" || asksForHelp(rest)) return print(io, command.help);
  return command.run(readArgs(rest, command), io);
}

function asksForHelp(argv: readonly string[]): boolean {
  const end = argv.indexOf("--");
  return (end < 0 ? argv : argv.slice(0, end)).some((word) => word === "--help" || word === "-h");
}

function print(io: CliIo, text: string): number {
  io.stdout.write(text);
  return EXIT.ok;
}
