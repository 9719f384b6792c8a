/**
 * Breaks a line of a plain-text paper at spaces so that it stays readable at a width, with a hanging indent.
 *
 * Characters are counted as one column each; a word longer than the width keeps a line to itself.
 *
 * @packageDocumentation
 */

/** Width of every plain-text paper, columns. */
export const PAPER_WIDTH = 100;

/**
 * The text in lines of at most `width` columns.
 *
 * @param first - what the first line starts with
 * @param text - words separated by spaces
 * @param hang - how many columns later lines are indented, default the length of `first`
 * @example wrap("  end: ", "one two", 8, 10); // ["  end: one", "        two"]
 */
export function wrap(first: string, text: string, hang = first.length, width = PAPER_WIDTH): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ").filter((w) => w !== "")) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = " ".repeat(hang);
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line.trimEnd()];
}
