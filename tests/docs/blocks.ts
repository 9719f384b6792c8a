/**
 * Reads a page of Markdown: its fenced blocks, tables and links, by the syntax of CommonMark and GitHub's tables.
 */
import { readFileSync } from "node:fs";

export const ROOT = new URL("../../", import.meta.url);

/** A fenced block. */
export interface Block {
  readonly language: string;
  readonly text: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
  /** What stands between this block and the one before it. */
  readonly before: string;
}

/** Text of a file of the repository. */
export const textOf = (path: string): string => readFileSync(new URL(path, ROOT), "utf8");

/** Fenced blocks of a page in order. */
export function blocksOf(page: string): Block[] {
  const out: Block[] = [];
  let end = 0;
  for (const found of page.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)) {
    const before = page.slice(end, found.index);
    const line = page.slice(0, found.index).split("\n").length;
    out.push({ language: found[1] ?? "", text: found[2] ?? "", line, before });
    end = found.index + found[0].length;
  }
  return out;
}

/** Rows of every table, as trimmed cells; heads and rules left out. */
export function rowsOf(page: string): string[][] {
  const lines = page.replace(/^```[\s\S]*?^```$/gm, "").split("\n");
  return lines
    .filter((line, i) => line.startsWith("|") && !/^\|[-| ]+$/.test(line) && !/^\|-/.test(lines[i + 1] ?? ""))
    .map((line) =>
      line
        .slice(1, -1)
        .split(" | ")
        .map((cell) => cell.replace(/^\|/, "").trim()),
    );
}

/** Words in backticks. */
export const codeWords = (text: string): string[] =>
  [...text.matchAll(/`([^`\n]+)`/g)].map((found) => found[1] as string);

/** Targets of links and images within the repository, without their anchors. */
export const linksOf = (page: string): string[] =>
  [...page.matchAll(/\]\(([^)\s]+)\)/g)]
    .map((found) => (found[1] as string).replace(/#.*$/, ""))
    .filter((target) => target !== "" && !/^https?:/.test(target));

/**
 * Is `shown` what `printed` says, where a line `…` stands for any number of lines? The rest must follow each other.
 *
 * @returns the first run of lines that is not found, or null
 */
export function missingFrom(printed: string, shown: string): string | null {
  let rest = `\n${printed.trimEnd()}\n`;
  const runs = shown.trimEnd().split(/^…$/m);
  for (const [i, run] of runs.entries()) {
    const wanted = run.replace(/^\n|\n$/g, "");
    if (wanted === "") continue;
    const at = rest.indexOf(`\n${wanted}\n`);
    if (at < 0 || (i === 0 && at !== 0)) return wanted;
    rest = rest.slice(at + wanted.length + 1);
  }
  const isOpen = runs.at(-1)?.trim() === "" && runs.length > 1;
  return isOpen || rest.trim() === "" ? null : `(more lines: ${rest.trim().slice(0, 80)})`;
}
