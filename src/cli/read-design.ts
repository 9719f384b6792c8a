/**
 * Reads a design file, or standard input for `-`, as JSON; and a shop file or an as-set file the same way.
 *
 * What cannot be read is a usage error with the file's name and, for broken JSON and for a key that is there twice, its
 * line and column. Whether the JSON is a design or a shop is for the layout room to say.
 *
 * @packageDocumentation
 */
import { readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { type CliIo, UsageError } from "./io.js";
import { placeOf, repeatedKey } from "./repeated-key.js";

/** Largest document read, bytes: a hundred times the longest one written by hand. */
const LARGEST = 4 * 1024 * 1024;

/** What a document is called in messages. */
type Kind = "design" | "shop" | "as-set";

/**
 * The parsed JSON of a design.
 *
 * @param name - path, or `-` for standard input
 * @param kind - what the document is, for messages; default a design
 * @throws UsageError when it cannot be read or is no JSON
 */
export async function readDesign(name: string, io: CliIo, kind: Kind = "design"): Promise<unknown> {
  const label = name === "-" ? "standard input" : name;
  const text = name === "-" ? await io.readStdin() : readText(resolve(io.cwd, name), label, kind);
  if (text.length > LARGEST) throw tooLarge(label, kind);
  const document = parsed(text.replace(/^\uFEFF/, ""), label);
  const twice = repeatedKey(text);
  if (twice === undefined) return document;
  throw new UsageError(
    `${label} has the key \`${twice.key}\` a second time at line ${twice.line}, column ${twice.column}.`,
    "Keep one of the two: only the last would count.",
  );
}

function parsed(text: string, label: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    throw new UsageError(
      `${label} is not JSON: ${place(message, text)}.`,
      "Check commas, quotes and brackets there.",
    );
  }
}

function readText(path: string, label: string, kind: Kind): string {
  try {
    if (statSync(path).size > LARGEST) throw tooLarge(label, kind);
    return readFileSync(path, "utf8");
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? "";
    const why: Readonly<Record<string, string>> = {
      ENOENT: "there is no such file",
      EISDIR: "it is a folder",
      EACCES: "permission is denied",
    };
    throw new UsageError(
      `Cannot read ${label}: ${why[code] ?? String(error)}.`,
      `Give ${article(kind)} ${kind} file, or - for standard input.`,
    );
  }
}

const article = (kind: Kind): string => (kind === "as-set" ? "an" : "a");

function tooLarge(label: string, kind: Kind): UsageError {
  return new UsageError(
    `${label} is larger than ${LARGEST} bytes.`,
    `${article(kind) === "a" ? "A" : "An"} ${kind} file is a few kilobytes: check its name.`,
  );
}

/** The reader's message with line and column where it tells a position. */
function place(message: string, text: string): string {
  const at = /position (\d+)/.exec(message)?.[1];
  if (at === undefined) return message.replace(/\.$/, "");
  const { line, column } = placeOf(text, Number(at));
  const plain = message.replace(/ (in JSON )?at position.*$/, "");
  return `${plain} at line ${line}, column ${column}`;
}
