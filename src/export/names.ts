/**
 * How does any text become a name that a line-based file can hold, and no two pieces share?
 *
 * Formats end a name at a space or a line break and some readers fold case or drop what is not ASCII. Letters, digits,
 * `.`, `_`, `+` and `-` stay; each run of anything else becomes one `_`; repeats get `-2`, `-3` and so on.
 *
 * @packageDocumentation
 */

/** Which letters a format's readers can be trusted with. */
export type Alphabet = "ascii" | "unicode";

/**
 * Names fit for a file, in the order given: never empty, never equal even when case is ignored, never with a space.
 *
 * @param names - any texts
 * @param fallback - stands in for a text with nothing usable in it; itself plain ASCII
 * @example
 * ```ts
 * fileNames(["Post 1", "post_1", "«»"], "ascii", "piece"); // ["Post_1", "post_1-2", "piece"]
 * ```
 */
export function fileNames(names: readonly string[], alphabet: Alphabet, fallback: string): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const base = plainName(name, alphabet) || fallback;
    let unique = base;
    for (let n = 2; taken.has(unique.toLowerCase()); n++) unique = `${base}-${n}`;
    taken.add(unique.toLowerCase());
    return unique;
  });
}

/** Built once: a pattern of Unicode classes takes longer to build than to use. */
const UNUSABLE: Readonly<Record<Alphabet, RegExp>> = {
  ascii: /[^A-Za-z0-9._+-]+/g,
  unicode: /[^\p{L}\p{M}\p{N}._+-]+/gu,
};

function plainName(name: string, alphabet: Alphabet): string {
  return name
    .normalize("NFC")
    .replace(UNUSABLE[alphabet], "_")
    .replace(/^_+|_+$/g, "");
}
