/**
 * Reads the reference cases of the repo's shared folder and compares by their own tolerance rule.
 *
 * shop-cases.json: |got − expected| ≤ tolerance · max(1, |expected|); null means no contact.
 */
import published from "../../shared/published-joints.json";
import shop from "../../shared/shop-cases.json";

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Fields = { readonly [key: string]: Json };

interface Case {
  readonly id: string;
  readonly inputs: Fields;
  readonly expected: Json;
  readonly tolerance: number | { readonly absolute?: number; readonly relative?: number };
}

const SHOP = (shop as unknown as { cases: readonly Case[] }).cases;
const PUBLISHED = (published as unknown as { entries: readonly Case[] }).entries;

/** One worked case by its whole id. */
export function referenceCase(id: string): Case {
  const found = [...SHOP, ...PUBLISHED].filter((c) => c.id === id);
  if (found.length !== 1) throw new Error(`${found.length} cases have the id ${id}`);
  return found[0] as Case;
}

/** Ids that start with one of the prefixes, in the files' order. */
export function referenceIds(...prefixes: readonly string[]): string[] {
  return [...SHOP, ...PUBLISHED].map((c) => c.id).filter((id) => prefixes.some((p) => id.startsWith(p)));
}

/** A number among a case's fields; throws when it is none, so that a misspelt key cannot pass. */
export function num(fields: Json, key: string): number {
  const value = (fields as Fields)[key];
  if (typeof value !== "number") throw new Error(`${key} is no number`);
  return value;
}

/** A list of numbers or nulls among a case's fields. */
export function list(fields: Json, key: string): readonly (number | null)[] {
  const value = (fields as Fields)[key];
  if (!Array.isArray(value) || value.length === 0) throw new Error(`${key} is no list`);
  return value as readonly (number | null)[];
}

/** A record of numbers among a case's fields. */
export function record(fields: Json, key: string): Readonly<Record<string, number>> {
  const value = (fields as Fields)[key];
  if (typeof value !== "object" || value === null) throw new Error(`${key} is no record`);
  return value as unknown as Readonly<Record<string, number>>;
}

/** What is wrong with `got` beside `expected` under the case's tolerance; an empty text when nothing is. */
export function miss(
  of: Case,
  what: string,
  got: number | null | undefined,
  expected: number | null,
): string {
  if (expected === null || got === null || got === undefined) {
    return got === expected ? "" : `${of.id} ${what}: got ${got}, expected ${expected}`;
  }
  const t = of.tolerance;
  const limit =
    typeof t === "number"
      ? t * Math.max(1, Math.abs(expected))
      : Math.max(t.absolute ?? 0, (t.relative ?? 0) * Math.abs(expected));
  return Math.abs(got - expected) <= limit ? "" : `${of.id} ${what}: got ${got}, expected ${expected}`;
}

/** The misses of several numbers at once. */
export function misses(
  of: Case,
  pairs: Readonly<Record<string, readonly [number | null | undefined, number | null]>>,
): string[] {
  return Object.entries(pairs)
    .map(([what, [got, expected]]) => miss(of, what, got, expected))
    .filter((text) => text !== "");
}
