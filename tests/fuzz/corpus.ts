/**
 * Random ends that were once wrong, kept as numbered files: tests/corpus/ends.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { FuzzCase } from "./domain.js";

/** A case with what was wrong with it. */
export interface KeptCase extends FuzzCase {
  readonly found: string;
}

/** Every kept case, by file name. */
export function keptCases(folder: string): [string, KeptCase][] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => [name, JSON.parse(readFileSync(join(folder, name), "utf8")) as KeptCase]);
}

/** Keeps a case under the next number, unless it is there already; returns the file's name. */
export function keepCase(folder: string, c: FuzzCase, found: string): string {
  mkdirSync(folder, { recursive: true });
  const kept = keptCases(folder);
  const known = kept.find(([, k]) => k.seed === c.seed && k.number === c.number);
  if (known) return known[0];
  const last = Number.parseInt(kept.at(-1)?.[0] ?? "0", 10);
  const name = `${String(last + 1).padStart(4, "0")}.json`;
  writeFileSync(join(folder, name), `${JSON.stringify({ found, ...c }, null, 2)}\n`);
  return name;
}
