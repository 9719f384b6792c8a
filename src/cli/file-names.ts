/**
 * File names out of piece marks, whatever characters a mark has.
 *
 * Letters, digits, `-`, `_` and inner points stay; everything else becomes `_`. Names that would be the same on a file
 * system without upper and lower case get a number.
 *
 * @packageDocumentation
 */

/** Longest name, characters. */
const LONGEST = 80;
/** Names some systems keep for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * One name per mark, in order, without extension.
 *
 * @example fileNames(["P1", "p1", "../x"]); // ["P1", "p1-2", "___x"]
 */
export function fileNames(marks: readonly string[]): string[] {
  const taken = new Set<string>();
  return marks.map((mark) => {
    const base = plainName(mark);
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base}-${n}`;
    taken.add(name.toLowerCase());
    return name;
  });
}

function plainName(mark: string): string {
  const name = mark
    .slice(0, LONGEST)
    .replace(/[^A-Za-z0-9._-]/g, "_")
    .replace(/^[.-]+|\.+$/g, (dots) => "_".repeat(dots.length));
  return name === "" || RESERVED.test(name) ? `piece_${name}` : name;
}
