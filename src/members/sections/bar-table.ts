/**
 * Stock bars by name: `EN 10058 50 x 10` (flat), `EN 10059 12` (square), `EN 10060 16` (round), and common inch sizes as
 * `inch flat 2 x 3/8`, `inch square 1/2`, `inch round 5/8`.
 *
 * Edges are drawn sharp. The first size of a flat lies across the member. The rows and how each is known are in
 * `shared/bars.json`.
 *
 * @packageDocumentation
 */
import table from "../../../shared/bars.json" with { type: "json" };
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { rectBar } from "./rect.js";
import { roundBar, type SectionNaming } from "./round.js";
import { namedSizes, type StandardTable, sameSizes, sizesIn } from "./standard-table.js";

interface Family {
  readonly name: string;
  readonly designation: RegExp;
  readonly unit: "mm" | "in";
  readonly source: string;
  readonly sizes: readonly (readonly number[])[];
  readonly build: (mm: readonly number[], naming: SectionNaming) => Section;
}

const flats = (rows: readonly (readonly (number | readonly number[])[])[]): readonly (readonly number[])[] =>
  (rows as unknown as readonly [number, readonly number[]][]).flatMap(([width, list]) =>
    list.map((t) => [width, t]),
  );
const singles = (sizes: readonly number[]): readonly (readonly number[])[] => sizes.map((size) => [size]);

const flat: Family["build"] = ([width = 0, depth = 0], naming) => rectBar({ width, depth, ...naming });
const square: Family["build"] = ([side = 0], naming) => rectBar({ width: side, depth: side, ...naming });
const round: Family["build"] = ([od = 0], naming) => roundBar({ od, ...naming });

const family = (
  name: string,
  unit: "mm" | "in",
  source: string,
  sizes: Family["sizes"],
  build: Family["build"],
): Family => ({
  name,
  unit,
  source,
  sizes,
  build,
  designation: new RegExp(`^${name.toLowerCase().replace(" ", " ?")} `),
});

/** Made when asked for, so that a program without section names need not load them. */
const families = (): readonly Family[] => [
  family("EN 10058", "mm", table["EN 10058"].source, flats(table["EN 10058"].rows), flat),
  family("EN 10059", "mm", table["EN 10059"].source, singles(table["EN 10059"].sizes), square),
  family("EN 10060", "mm", table["EN 10060"].source, singles(table["EN 10060"].sizes), round),
  family("inch flat", "in", table.inch.source, flats(table.inch.flat), flat),
  family("inch square", "in", table.inch.source, singles(table.inch.square), square),
  family("inch round", "in", table.inch.source, singles(table.inch.round), round),
];

function made({ name, unit, source, build }: Family, sizes: readonly number[]): Section {
  const naming = { name: `${name} ${namedSizes(sizes, unit)}`, source };
  return build(
    sizes.map((x) => x * MM_PER[unit]),
    naming,
  );
}

/** The table of bars. */
export const BARS: StandardTable = {
  find(name) {
    for (const one of families()) {
      const asked = sizesIn(name, one.designation, one.unit);
      if (asked === undefined) continue;
      for (const sizes of one.sizes) {
        if (sameSizes(asked, sizes)) return made(one, sizes);
        if (sameSizes([...asked].reverse(), sizes)) return made(one, [...sizes].reverse());
      }
    }
    return undefined;
  },
  all: () => families().flatMap((one) => one.sizes.map((sizes) => made(one, sizes))),
};
