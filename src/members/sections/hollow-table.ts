/**
 * Structural hollow sections by their standard's name: EN 10219-2, EN 10210-2 and the ASTM A500 sizes of the AISC tables.
 *
 * `EN 10219 48.3 x 3` is round, `EN 10219 40 x 40 x 3` square; `HSS 1.9 x 0.145` and `HSS 2 x 2 x 1/8` likewise, in inches. Walls
 * are nominal: what is ordered and weighed. Corners are those of each standard's property tables; the sizes, the rules of the
 * corners and how each is known are in `shared/hollow-en.json` and `shared/hss-a500.json`.
 *
 * @packageDocumentation
 */
import european from "../../../shared/hollow-en.json" with { type: "json" };
import american from "../../../shared/hss-a500.json" with { type: "json" };
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { rectTube } from "./rect.js";
import { roundTube } from "./round.js";
import { namedSizes, type StandardTable, sameSizes, sizesIn } from "./standard-table.js";

/** Outside sizes, one or two, and the walls they come in. */
type Row = readonly [number, readonly number[]] | readonly [number, number, readonly number[]];

/** A standard's sizes with what its names start with and its corner radii in walls. */
interface Standard {
  readonly name: string;
  readonly designation: RegExp;
  readonly unit: "mm" | "in";
  readonly source: string;
  readonly rows: readonly Row[];
  readonly radii: (wallMm: number) => readonly [outer: number, inner: number];
}

const rowsOf = (name: string): readonly Row[] =>
  european.groups
    .filter((group) => group.standard === name)
    .flatMap((group) => group.rows) as unknown as Row[];

const coldOuter = (wall: number): number => (wall <= 6 ? 2 : wall <= 10 ? 2.5 : 3);

/** Made when asked for, so that a program without section names need not load them. */
const standards = (): readonly Standard[] => [
  {
    name: "EN 10219",
    designation: /^en ?10219(?:-2)? (?:[crs]hs )?/,
    unit: "mm",
    source: "EN 10219-2",
    rows: rowsOf("EN 10219"),
    radii: (wall) => [coldOuter(wall), coldOuter(wall) - 1],
  },
  {
    name: "EN 10210",
    designation: /^en ?10210(?:-2)? (?:[crs]hs )?/,
    unit: "mm",
    source: "EN 10210-2",
    rows: rowsOf("EN 10210"),
    radii: () => [1.5, 1],
  },
  {
    name: "HSS",
    designation: /^hss ?/,
    unit: "in",
    source: "ASTM A500, nominal wall",
    rows: american.groups.flatMap((group) => group.rows) as unknown as Row[],
    radii: () => [2, 1],
  },
];

/** Every size of a row: outside and wall. */
function sizesOfRow(row: Row): readonly (readonly number[])[] {
  const [first, second, walls] = row.length === 2 ? [row[0], undefined, row[1]] : row;
  return walls.map((wall) => (second === undefined ? [first, wall] : [first, second, wall]));
}

function made(standard: Standard, sizes: readonly number[]): Section {
  const name = `${standard.name} ${namedSizes(sizes, standard.unit)}`;
  const { source } = standard;
  const [first = 0, second = 0, third] = sizes.map((x) => x * MM_PER[standard.unit]);
  if (third === undefined) return roundTube({ od: first, wall: second, name, source });
  const [outer, inner] = standard.radii(third);
  const radii = { outerRadius: outer * third, innerRadius: inner * third };
  return rectTube({ width: first, depth: second, wall: third, ...radii, name, source });
}

/** The table of hollow sections. */
export const HOLLOW: StandardTable = {
  find(name) {
    for (const standard of standards()) {
      const asked = sizesIn(name, standard.designation, standard.unit);
      if (asked === undefined) continue;
      const [width, depth, wall] = asked;
      const turned = wall === undefined || depth === undefined ? asked : [depth, width, wall];
      for (const sizes of standard.rows.flatMap(sizesOfRow)) {
        if (sameSizes(asked, sizes)) return made(standard, sizes);
        if (sameSizes(turned, sizes))
          return made(standard, [sizes[1] ?? 0, sizes[0] ?? 0, ...sizes.slice(2)]);
      }
    }
    return undefined;
  },
  all: () =>
    standards().flatMap((standard) =>
      standard.rows.flatMap((row) => sizesOfRow(row).map((sizes) => made(standard, sizes))),
    ),
};
