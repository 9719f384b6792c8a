/**
 * Sections by their standard's name, from every table there is.
 *
 * Pipe: `NPS 1-1/2 Sch 40`, `DN 40 Sch 40`. Hollow sections: `EN 10219 40 x 40 x 3`, `EN 10210 48.3 x 3.2`, `HSS 2 x 2 x 1/8`. Angles:
 * `L 50 x 50 x 5`, `L 2 x 2 x 1/4`. Channels: `UPE 100`, `PFC 100 x 50 x 10`, `UPN 100`, `C3 x 4.1`. Bars: `EN 10058 50 x 10`, `EN 10059 12`,
 * `EN 10060 16`, `inch flat 2 x 3/8`. Sizes are nominal; tolerances of rolling are not modelled.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { Section } from "../section.js";
import { ANGLES } from "./angle-table.js";
import { BARS } from "./bar-table.js";
import { CHANNELS } from "./channel-table.js";
import { HOLLOW } from "./hollow-table.js";
import { PIPES } from "./pipe-table.js";
import { plainName } from "./standard-table.js";

const TABLES = [PIPES, HOLLOW, ANGLES, CHANNELS, BARS];

/** One name of each kind, for messages and hints. */
export const STANDARD_NAMES =
  "NPS 1-1/2 Sch 40, DN 40 Sch 40, EN 10219 40 x 40 x 3, EN 10210 48.3 x 3.2, HSS 2 x 2 x 1/8, L 50 x 50 x 5, L 2 x 2 x 1/4, UPE 100, PFC 100 x 50 x 10, UPN 100, C3 x 4.1, EN 10058 50 x 10, inch flat 2 x 3/8";

/**
 * A standard section by name, or nothing when no table has one of that name.
 *
 * @param name - as {@link standardSection} takes it; letter case and spaces round crosses do not matter
 */
export function findStandardSection(name: string): Section | undefined {
  const plain = plainName(name);
  for (const table of TABLES) {
    const section = table.find(plain);
    if (section !== undefined) return section;
  }
  return undefined;
}

/**
 * A standard section by name. Where a name tells width and depth, the first stands across the member: `EN 10219 60 x 40 x 3` lies
 * flat, `EN 10219 40 x 60 x 3` stands.
 *
 * @throws RakewrightError `unknown-section` when no table has one of that name
 * @example
 * standardSection("NPS 1-1/2 Sch 40").shape; // { kind: "round-tube", od: 48.26, wall: 3.683 }
 */
export function standardSection(name: string): Section {
  const section = findStandardSection(name);
  if (section !== undefined) return section;
  throw new RakewrightError({
    code: "unknown-section",
    message: `Section: expected a name of the tables, got "${name}".`,
    hint: `List the names with standardSections(); they are like ${STANDARD_NAMES}. Other sizes: round 1.900 x 0.145.`,
    values: { name },
  });
}

/**
 * Every section of every table: pipe, hollow sections, angles, channels, bars.
 *
 * @example
 * standardSections().map((section) => section.name).includes("NPS 1-1/4 Sch 40"); // true
 */
export function standardSections(): readonly Section[] {
  return TABLES.flatMap((table) => table.all());
}
