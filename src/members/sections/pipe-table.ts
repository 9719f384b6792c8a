/**
 * Sections by their standard's name: steel pipe NPS 1/2 to 4, Schedules 40 and 80, of ASME B36.10M.
 *
 * The table is `shared/pipe-b36.10.json`, with how each value is known. `NPS 1-1/2 Sch 40` gives the standard's inch sizes
 * (48.26 x 3.68 mm), `DN 40 Sch 40` its metric ones (48.3 x 3.68 mm): the standard lists both. The name is not the
 * diameter: NPS 1-1/4 is 42.2 mm outside. Sizes are nominal; the standard's tolerances are not modelled.
 *
 * @packageDocumentation
 */
import table from "../../../shared/pipe-b36.10.json" with { type: "json" };
import { RakewrightError } from "../../kernel/diagnostic.js";
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { roundTube } from "./round.js";

type PipeRow = (typeof table.rows)[number];

const SOURCE = "ASME B36.10M";
const NAME =
  /^(nps|dn)? ?(\d+(?:[ -]\d\/\d)?|\d\/\d) ?(?:in\.?|inch|")? ?(?:pipe)? ?(?:sch(?:edule|\.)? ?(40|80)|(std|xs))$/;

function inchPipe(row: PipeRow): Section {
  const sizes = { od: row.odIn * MM_PER.in, wall: row.wallIn * MM_PER.in };
  return roundTube({ ...sizes, name: `NPS ${row.nps} Sch ${row.schedule}`, source: SOURCE });
}

function metricPipe(row: PipeRow): Section {
  return roundTube({
    od: row.odMm,
    wall: row.wallMm,
    name: `DN ${row.dn} Sch ${row.schedule}`,
    source: SOURCE,
  });
}

/**
 * A standard section by name, or nothing when the table has none of that name.
 *
 * @param name - `NPS 1-1/2 Sch 40`, `1-1/2 in pipe sch 40`, `nps 2 xs` (Sch 80), `DN 40 Sch 40`; letter case is ignored
 */
export function findStandardSection(name: string): Section | undefined {
  const plain = name
    .trim()
    .toLowerCase()
    .replace(/\s+/g, " ")
    .replace(/^pipe /, "");
  const found = NAME.exec(plain);
  if (found === null) return undefined;
  const metric = found[1] === "dn";
  const size = found[2]?.replace(" ", "-");
  const schedule = found[3] ?? (found[4] === "xs" ? "80" : "40");
  const row = table.rows.find((r) => r.schedule === schedule && size === (metric ? String(r.dn) : r.nps));
  return row === undefined ? undefined : metric ? metricPipe(row) : inchPipe(row);
}

/**
 * A standard section by name.
 *
 * @throws RakewrightError `unknown-section` when the table has none of that name
 * @example
 * standardSection("NPS 1-1/2 Sch 40").shape; // { kind: "round-tube", od: 48.26, wall: 3.683 }
 */
export function standardSection(name: string): Section {
  const section = findStandardSection(name);
  if (section !== undefined) return section;
  const [first, last] = [table.rows[0], table.rows.at(-1)];
  throw new RakewrightError({
    code: "unknown-section",
    message: `Section: expected a name between NPS ${first?.nps} Sch ${first?.schedule} and NPS ${last?.nps} Sch ${last?.schedule}, got "${name}".`,
    hint: "List the names with standardSections(), or give the sizes: round 1.900 x 0.145.",
    values: { name },
  });
}

/**
 * Every section of the table, by rising size: the inch sizes first, then the metric ones.
 *
 * @example
 * standardSections().map((section) => section.name).includes("NPS 1-1/4 Sch 40"); // true
 */
export function standardSections(): readonly Section[] {
  return [...table.rows.map(inchPipe), ...table.rows.map(metricPipe)];
}
