/**
 * Writes a set of files into a folder: all of them or none.
 *
 * Everything is written to a temporary folder beside the targets first and renamed when all is well; files that are
 * replaced are kept until the last rename and put back if one fails. Without `force` nothing that exists is touched.
 *
 * @packageDocumentation
 */
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { UsageError } from "./io.js";

/** A file to write, its path relative to the folder, with forward slashes. */
export interface OutputFile {
  readonly path: string;
  readonly data: string | Uint8Array;
}

/**
 * Writes the files.
 *
 * @param folder - absolute path; made when it is not there
 * @param files - what to write
 * @param force - replace files that exist
 * @throws UsageError when a file exists and `force` is off, or the folder cannot be written; nothing is left behind then
 */
export function writeAll(folder: string, files: readonly OutputFile[], force: boolean): void {
  refuseExisting(folder, files, force);
  const undo: (() => void)[] = [];
  try {
    makeFolders(folder, undo);
    const stage = mkdtempSync(join(folder, ".rakewright-"));
    undo.push(() => rmSync(stage, { recursive: true, force: true }));
    stageFiles(stage, files);
    for (const { path } of files) moveIntoPlace(stage, folder, path, undo);
    rmSync(stage, { recursive: true, force: true });
  } catch (error) {
    for (const step of undo.reverse()) quietly(step);
    const reason = error instanceof Error ? error.message : String(error);
    throw new UsageError(
      `Cannot write to ${folder}: ${reason}.`,
      "Nothing was changed. Choose another folder with -o.",
    );
  }
}

function refuseExisting(folder: string, files: readonly OutputFile[], force: boolean): void {
  if (existsSync(folder) && !statSync(folder).isDirectory()) {
    throw new UsageError(`${folder} is a file, not a folder.`, "Choose another folder with -o.");
  }
  for (const { path } of files) {
    const target = join(folder, path);
    const found = entryAt(target);
    if (found && !found.isFile()) {
      throw new UsageError(
        `${target} is in the way: it is not a plain file.`,
        "Move it, or choose another folder with -o.",
      );
    }
    if (found && !force) {
      throw new UsageError(
        `${target} exists already.`,
        "Use --force to replace it, or choose another folder with -o.",
      );
    }
  }
}

/** What is at a path, a link counting as itself; a path that cannot be is nothing. */
function entryAt(path: string): Stats | undefined {
  try {
    return lstatSync(path, { throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}

/** Makes a folder and those above it; each one made is removed again on failure, if it is empty then. */
function makeFolders(folder: string, undo: (() => void)[]): void {
  if (existsSync(folder)) return;
  makeFolders(dirname(folder), undo);
  mkdirSync(folder);
  undo.push(() => rmdirSync(folder));
}

function stageFiles(stage: string, files: readonly OutputFile[]): void {
  for (const { path, data } of files) {
    const staged = join(stage, "new", path);
    mkdirSync(dirname(staged), { recursive: true });
    writeFileSync(staged, data, { flag: "wx" });
  }
}

function moveIntoPlace(stage: string, folder: string, path: string, undo: (() => void)[]): void {
  const target = join(folder, path);
  makeFolders(dirname(target), undo);
  if (existsSync(target)) {
    const kept = join(stage, "old", path);
    mkdirSync(dirname(kept), { recursive: true });
    renameSync(target, kept);
    undo.push(() => renameSync(kept, target));
  }
  renameSync(join(stage, "new", path), target);
  undo.push(() => rmSync(target));
}

/** Undoing goes on whatever one step says. */
function quietly(step: () => void): void {
  try {
    step();
  } catch {
    // What cannot be undone is left as it is; the first error is the one to report.
  }
}
