/**
 * Says where in a document something is: `legs[1].posts.at[2]`, and the same with names beside the numbers for reading.
 *
 * @packageDocumentation
 */

/** A path into a document, as zod gives it. */
export type DocumentPath = readonly PropertyKey[];

/** The machine form: `legs[1].posts.at[2]`; empty for the document itself. */
export function pathText(path: DocumentPath): string {
  return path
    .map((key, i) => (typeof key === "number" ? `[${key}]` : `${i === 0 ? "" : "."}${String(key)}`))
    .join("");
}

/** The value at a path, or undefined where the document has none. */
export function valueAt(document: unknown, path: DocumentPath): unknown {
  let value = document;
  for (const key of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Readonly<Record<PropertyKey, unknown>>)[key];
  }
  return value;
}

/** The form for people: `legs[1] (landing).posts.at[2]`: what an item calls itself stands beside its index; `whole` for the document. */
export function pathForPeople(document: unknown, path: DocumentPath, whole = "The design"): string {
  const parts = path.map((key, i) => {
    if (typeof key !== "number") return `${i === 0 ? "" : "."}${String(key).slice(0, 60)}`;
    const item = valueAt(document, path.slice(0, i + 1));
    const name = ["id", "along", "role"]
      .map((own) => valueAt(item, [own]))
      .find((own) => typeof own === "string");
    return `[${key}]${typeof name === "string" ? ` (${name.slice(0, 40)})` : ""}`;
  });
  return parts.length === 0 ? whole : parts.join("");
}

/** What was got, short enough for a message whatever it is. */
export function got(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (typeof value === "string") return JSON.stringify(value.length > 60 ? `${value.slice(0, 57)}…` : value);
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === "object" ? "an object" : `a ${typeof value}`;
}

/** The known name nearest to a misspelt one, when it is near enough to be meant (Levenshtein distance ≤ 2). */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const near = known
    .map((word) => ({ word, away: editDistance(name.slice(0, 40).toLowerCase(), word.toLowerCase()) }))
    .sort((a, b) => a.away - b.away)[0];
  return near !== undefined && near.away <= 2 ? near.word : undefined;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
