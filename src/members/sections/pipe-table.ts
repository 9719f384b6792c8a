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
import { MM_PER } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { roundTube } from "./round.js";
import type { StandardTable } from "./standard-table.js";

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

/** The table of pipe: inch sizes first, then metric ones, by rising size. */
export const PIPES: StandardTable = {
  find(name) {
    const found = NAME.exec(name.replace(/^pipe /, ""));
    if (found === null) return undefined;
    const metric = found[1] === "dn";
    const size = found[2]?.replace(" ", "-");
    const schedule = found[3] ?? (found[4] === "xs" ? "80" : "40");
    const row = table.rows.find((r) => r.schedule === schedule && size === (metric ? String(r.dn) : r.nps));
    return row === undefined ? undefined : metric ? metricPipe(row) : inchPipe(row);
  },
  all: () => [...table.rows.map(inchPipe), ...table.rows.map(metricPipe)],
};
