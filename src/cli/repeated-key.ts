/**
 * Does a JSON text give a key of one object twice? The reader would take the last and say nothing.
 *
 * @packageDocumentation
 */

/** A key that its object has already; lines and columns count from 1. */
export interface RepeatedKey {
  readonly key: string;
  readonly line: number;
  readonly column: number;
}

/** A string, a bracket, or what parts the members of an object: all that matters here, in a text that is JSON. */
const TOKENS = /"(?:[^"\\]|\\.)*"|[{}[\],]/g;

/**
 * The first key that is given twice.
 *
 * @param text - well-formed JSON
 * @returns the second of the two; undefined when every key is there once
 * @example repeatedKey('{ "top": 42, "top": 36 }')?.column; // 14
 */
export function repeatedKey(text: string): RepeatedKey | undefined {
  // Of every object that is open its keys; null for an array.
  const open: (Set<string> | null)[] = [];
  let expectsKey = false;
  for (const token of text.matchAll(TOKENS)) {
    const [word] = token;
    const keys = open.at(-1);
    if (word === "{" || word === "[") open.push(word === "{" ? new Set() : null);
    else if (word === "}" || word === "]") open.pop();
    else if (word !== "," && keys && expectsKey) {
      const key = JSON.parse(word) as string;
      if (keys.has(key)) return { key, ...placeOf(text, token.index) };
      keys.add(key);
    }
    expectsKey = word === "{" || word === ",";
  }
  return undefined;
}

/** Line and column of a place in a text, from 1. */
export function placeOf(text: string, index: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, index).split("\n");
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}
