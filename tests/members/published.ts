/** Reads the published check values of shared/published-sections.json by family. */
import published from "../../shared/published-sections.json" with { type: "json" };

/** One published entry. */
export interface Published {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: Readonly<Record<string, number>> | number;
  readonly source: string;
}

const entries = published.entries as unknown as readonly Published[];

/** The entries whose id matches. */
export function publishedOf(pattern: RegExp): readonly Published[] {
  return entries.filter((entry) => pattern.test(entry.id));
}

/** A numeric input. */
export function input(entry: Published, key: string): number {
  return Number(entry.inputs[key]);
}

/** The keys whose value differs from the published one by more than its tolerance, with both numbers. */
export function misses(entry: Published, got: Readonly<Record<string, number>>): readonly string[] {
  return Object.entries(got).flatMap(([key, value]) => {
    const want = entry.expected[key];
    if (want === undefined) return [];
    const tolerance = typeof entry.tolerance === "number" ? {} : entry.tolerance;
    const allowed =
      tolerance.relative === undefined ? (tolerance[key] ?? 0) : tolerance.relative * Math.abs(want);
    return Math.abs(value - want) <= allowed
      ? []
      : [`${entry.id} ${key}: got ${value}, published ${want} ± ${allowed}`];
  });
}
