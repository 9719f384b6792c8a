/**
 * Finds and reads the solved pieces of an earlier build: a build's folder, or its `solved.json`.
 *
 * @packageDocumentation
 */
import { readFileSync, statSync } from "node:fs";
import { dirname, isAbsolute, join, resolve } from "node:path";
import type { Piece } from "../joints/piece.js";
import type { Diagnostic, Result } from "../kernel/diagnostic.js";
import { parseSolved, type Solved, unreadableSolved } from "../layout/index.js";

/** Name of the file in a build's folder. */
export const SOLVED_FILE = "solved.json";

/** Largest file read, bytes: some ten thousand pieces. */
const LARGEST = 128 * 1024 * 1024;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  ENOTDIR: "there is no such file or folder",
  EACCES: "permission is denied",
  EISDIR: "it is a folder",
};

/**
 * Reads the solved pieces of a build.
 *
 * @param path - absolute path of a build's folder or of its file
 * @param shown - how messages call it
 * @returns the file's data; diagnostics: `solved-unreadable` and those of `parseSolved`, their paths behind `shown`
 */
export function loadSolved(path: string, shown = path): Result<Solved> {
  let text: string;
  try {
    const folder = statSync(path).isDirectory();
    const file = folder ? join(path, SOLVED_FILE) : path;
    const size = statSync(file).size;
    if (size > LARGEST) return refused(shown, `it is larger than ${LARGEST} bytes`);
    text = readFileSync(file, "utf8");
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "";
    const inFolder = code === "ENOENT" && isFolder(path);
    return refused(shown, inFolder ? `the folder has no ${SOLVED_FILE}` : (WHY[code] ?? String(error)));
  }
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    return refused(shown, `it is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
  const read = parseSolved(json);
  return { ...read, diagnostics: read.diagnostics.map((d) => within(d, shown)) };
}

/**
 * The `load` of a document that names builds by path: paths start from the document's own folder.
 *
 * @param document - absolute path of the document; for one from standard input, any name in the folder paths start from
 * @returns reads the pieces of a build by the path the document gives; diagnostics as `loadSolved`
 */
export function piecesFrom(document: string): (from: string) => Result<readonly Piece[]> {
  const before = new Map<string, Result<readonly Piece[]>>();
  return (from) => {
    const path = isAbsolute(from) ? from : resolve(dirname(document), from);
    const known = before.get(path);
    if (known) return known;
    const read = loadSolved(path, from);
    const pieces: Result<readonly Piece[]> = read.ok
      ? { ok: true, value: read.value.pieces, diagnostics: read.diagnostics }
      : read;
    before.set(path, pieces);
    return pieces;
  };
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

function refused(shown: string, why: string): Result<never> {
  return { ok: false, diagnostics: [unreadableSolved(shown, why)] };
}

/** Says in which file a finding is. */
function within(d: Diagnostic, shown: string): Diagnostic {
  return { ...d, path: d.path === "" ? shown : `${shown}: ${d.path}`, message: `${shown}: ${d.message}` };
}
