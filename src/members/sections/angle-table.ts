/**
 * Rolled angles by name: `L 50 x 50 x 5` of EN 10056-1, `L 2 x 2 x 1/4` of ASTM A6.
 *
 * No leg is both a number of millimetres and of inches of the tables, so the sizes tell the standard. The longer leg comes first
 * in the standards; here the first leg lies across the member, the second stands up. The rows and how each is known are in
 * `shared/angles.json`.
 *
 * @packageDocumentation
 */
import table from "../../../shared/angles.json" with { type: "json" };
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { angleBar } from "./angle.js";
import { namedSizes, type StandardTable, sameSizes, sizesIn } from "./standard-table.js";

interface Group {
  readonly unit: "mm" | "in";
  readonly source: string;
  readonly rows: readonly (readonly number[])[];
  /** Root and toe radius of a row. */
  readonly radii: (row: readonly number[]) => readonly [root: number, toe: number];
}

const fitted: Group["radii"] = ([a = 0, b = 0, t = 0]) => {
  const { rootPerLeg, toePerLeg } = table.inch.radii;
  const shorter = Math.min(a, b);
  return [rootPerLeg * shorter, Math.min(toePerLeg * shorter, t)];
};

/** Made when asked for, so that a program without section names need not load them. */
const groups = (): readonly Group[] => [
  { unit: "mm", ...table.metric, radii: ([, , , root = 0]) => [root, root * table.metric.toePerRoot] },
  { unit: "in", source: table.bar.source, rows: table.bar.rows, radii: fitted },
  { unit: "in", source: table.inch.source, rows: table.inch.rows, radii: fitted },
];

/** A row with its legs as they are to lie. */
function made({ unit, source, radii }: Group, row: readonly number[], turned: boolean): Section {
  const [a = 0, b = 0, t = 0] = row;
  const sizes = turned ? [b, a, t] : [a, b, t];
  const mm = (x: number | undefined): number => (x ?? 0) * MM_PER[unit];
  const [rootRadius, toeRadius] = [mm(radii(row)[0]), mm(radii(row)[1])];
  const [width, depth, thickness] = [mm(sizes[0]), mm(sizes[1]), mm(t)];
  const name = `L ${namedSizes(sizes, unit)}`;
  return angleBar({ width, depth, thickness, rootRadius, toeRadius, name, source });
}

/** The table of angles. */
export const ANGLES: StandardTable = {
  find(name) {
    for (const group of groups()) {
      const asked = sizesIn(name, /^l ?/, group.unit);
      if (asked === undefined) continue;
      const [width, depth = 0, thickness = 0] = asked;
      for (const row of group.rows) {
        if (sameSizes(asked, row.slice(0, 3))) return made(group, row, false);
        if (sameSizes([depth, width, thickness], row.slice(0, 3))) return made(group, row, true);
      }
    }
    return undefined;
  },
  all: () => groups().flatMap((group) => group.rows.map((row) => made(group, row, false))),
};
