/** Reads the published check values of shared/published-rolled.json and compares figures by the digits they are printed with. */
import published from "../../shared/published-rolled.json" with { type: "json" };

export const ROLLED = published;

/** One table of the file. */
interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Its rows, each with its name, for it.each. */
export function named(table: Table): [string, Readonly<Record<string, number>>][] {
  return table.rows.map(([name, ...values]) => [
    String(name),
    Object.fromEntries(
      values.flatMap((value, i) => (value === null ? [] : [[table.columns[i + 1], Number(value)]])),
    ),
  ]);
}

/** Half a unit of the third figure, and a tenth of that for values rounded twice. */
const printed = (want: number): number => 0.55 * 10 ** (Math.floor(Math.log10(Math.abs(want))) - 2);

/**
 * The figures that differ from the published ones by more than their rounding and `allow`, a share of the figure that the
 * caller has a reason for.
 */
export function offFigures(
  want: Readonly<Record<string, number>>,
  got: Readonly<Record<string, number>>,
  allow: Readonly<Record<string, number>> | number = 0,
): readonly string[] {
  return Object.entries(want).flatMap(([key, value]) => {
    const share = typeof allow === "number" ? allow : (allow[key] ?? 0);
    const off = Math.abs((got[key] ?? Number.NaN) - value);
    return off <= printed(value) + share * Math.abs(value)
      ? []
      : [`${key}: got ${got[key]}, published ${value}`];
  });
}
