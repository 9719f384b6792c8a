/**
 * Rolled channels by name: `UPE 100`, `PFC 100 x 50 x 10` and `UPN 100` of EN 10365, `C3 x 4.1` of ASTM A6.
 *
 * They stand as the standards draw them: deep along v, web at −u. UPE and PFC have parallel flanges; the insides of UPN slope 8 %,
 * those of American Standard channels 1 in 6. The rows and how each is known are in `shared/channels.json`.
 *
 * @packageDocumentation
 */
import table from "../../../shared/channels.json" with { type: "json" };
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { type ChannelBarInput, channelBar } from "./channel.js";
import { namedSizes, type StandardTable, sameSizes, sizesIn } from "./standard-table.js";

type Row = readonly number[];

/** A family: how its names start, how many columns are the name, and what a row's columns are. */
interface Family {
  readonly name: string;
  readonly designation: RegExp;
  readonly unit: "mm" | "in";
  readonly source: string;
  readonly rows: readonly Row[];
  readonly nameOf: (row: Row) => Row;
  readonly sizes: (row: Row) => ChannelBarInput;
}

const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/** Made when asked for, so that a program without section names need not load them. */
const families = (): readonly Family[] => [
  {
    name: "UPE ",
    designation: /^upe ?/,
    unit: "mm",
    ...table.UPE,
    nameOf: ([depth = 0]) => [depth],
    sizes: ([depth = 0, width = 0, web = 0, flange = 0, rootRadius = 0]) => ({
      width,
      depth,
      web,
      flange,
      rootRadius,
    }),
  },
  {
    name: "PFC ",
    designation: /^pfc ?/,
    unit: "mm",
    ...table.PFC,
    nameOf: (row) => row.slice(0, 3),
    sizes: ([depth = 0, width = 0, , web = 0, flange = 0, rootRadius = 0]) => ({
      width,
      depth,
      web,
      flange,
      rootRadius,
    }),
  },
  {
    name: "UPN ",
    designation: /^upn ?/,
    unit: "mm",
    ...table.UPN,
    nameOf: ([depth = 0]) => [depth],
    sizes: ([depth = 0, width = 0, web = 0, flange = 0, rootRadius = 0, toeRadius = 0]) => ({
      ...{ width, depth, web, flange, rootRadius, toeRadius },
      taper: degrees(table.UPN.slope),
    }),
  },
  {
    name: "C",
    designation: /^c ?/,
    unit: "in",
    ...table.C,
    nameOf: (row) => row.slice(0, 2),
    sizes: ([depth = 0, , width = 0, web = 0, flange = 0, rootRadius = 0, toeRadius = 0]) => ({
      ...{ width, depth, web, flange, rootRadius, toeRadius },
      taper: degrees(table.C.slope),
      flangeAt: (width - web) / 2,
    }),
  },
];

function made(family: Family, row: Row): Section {
  const { taper, ...lengths } = family.sizes(row);
  const mm = Object.fromEntries(
    Object.entries(lengths).map(([key, value]) => [key, Number(value) * MM_PER[family.unit]]),
  ) as unknown as ChannelBarInput;
  const name = `${family.name}${namedSizes(family.nameOf(row), "mm")}`;
  return channelBar({ ...mm, ...(taper === undefined ? {} : { taper }), name, source: family.source });
}

/** The table of channels. */
export const CHANNELS: StandardTable = {
  find(name) {
    for (const family of families()) {
      // The numbers of a name are no lengths to put a unit behind: pounds or kilograms are among them.
      const asked = /["a-z.]$/.test(name) ? undefined : sizesIn(name, family.designation, "mm");
      const row = asked && family.rows.find((r) => sameSizes(asked, family.nameOf(r)));
      if (row !== undefined) return made(family, row);
    }
    return undefined;
  },
  all: () => families().flatMap((family) => family.rows.map((row) => made(family, row))),
};
