/**
 * Reads the words of a command line; a word that does not fit is a usage error that says what would.
 *
 * @packageDocumentation
 */
import { type ParseArgsConfig, parseArgs } from "node:util";
import { UsageError } from "./io.js";

/** What a command accepts. */
export interface CommandShape {
  /** Name of the command. */
  readonly name: string;
  /** Names of the words it takes, for messages; all are required. */
  readonly words: readonly string[];
  /** Names of words that may follow them. */
  readonly optionalWords?: readonly string[];
  readonly options: NonNullable<ParseArgsConfig["options"]>;
}

/** Options and words as given. */
export interface GivenArgs {
  readonly words: readonly string[];
  /** Value of a text option. */
  text(name: string): string | undefined;
  /** Value of a text option that must be there. */
  required(name: string, example: string): string;
  /** A finite number within bounds, or the fallback. */
  number(name: string, bounds: { least: number; most: number; whole?: boolean }, fallback: number): number;
  flag(name: string): boolean;
}

/**
 * Parses the words after the command's name.
 *
 * @throws UsageError for unknown options, missing values, missing or extra words
 */
export function readArgs(argv: readonly string[], shape: CommandShape): GivenArgs {
  const see = `Run \`rakewright ${shape.name} --help\` for what it takes.`;
  const { values, positionals } = parse(argv, shape, see);
  const missing = shape.words[positionals.length];
  if (missing !== undefined) throw new UsageError(`${shape.name}: ${missing} is missing.`, see);
  const extra = positionals[shape.words.length + (shape.optionalWords?.length ?? 0)];
  if (extra !== undefined) throw new UsageError(`${shape.name}: did not expect \`${extra}\`.`, see);

  const text = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === "string" ? value : undefined;
  };
  return {
    words: positionals,
    text,
    required: (name, example) => {
      const value = text(name);
      if (value === undefined)
        throw new UsageError(`${shape.name}: --${name} is missing.`, `Give it, e.g. ${example}. ${see}`);
      return value;
    },
    number: (name, bounds, fallback) => {
      const value = text(name);
      return value === undefined ? fallback : boundedNumber(name, value, bounds);
    },
    flag: (name) => values[name] === true,
  };
}

function parse(argv: readonly string[], shape: CommandShape, see: string) {
  try {
    return parseArgs({ args: [...argv], options: shape.options, allowPositionals: true, strict: true });
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("ERR_PARSE_ARGS")) throw error;
    const [first = ""] = (error as Error).message.split("\n");
    throw new UsageError(
      `${shape.name}: ${first.split(". ")[0]?.replace(/\.$/, "")}.`,
      `${see} A value that starts with - is given as --name=-1.`,
    );
  }
}

/**
 * A number given as text.
 *
 * @throws UsageError when it is no finite number or out of bounds
 */
export function boundedNumber(
  name: string,
  value: string,
  { least, most, whole = false }: { least: number; most: number; whole?: boolean },
): number {
  const number = value.trim() === "" ? Number.NaN : Number(value);
  if (!(number >= least && number <= most) || (whole && !Number.isInteger(number))) {
    throw new UsageError(
      `--${name}: expected a ${whole ? "whole " : ""}number from ${least} to ${most}, got \`${value}\`.`,
      "Use a point for decimals and no unit.",
    );
  }
  return number;
}
