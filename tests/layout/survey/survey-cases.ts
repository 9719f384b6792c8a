/** The demo survey (shared/demo-survey.json, invented and computed by an independent script) as readings in millimetres. */
import demo from "../../../shared/demo-survey.json" with { type: "json" };
import { parseLength } from "../../../src/kernel/index.js";
import {
  type Adjustment,
  adjustReadings,
  type Reading,
  type SurveyUnknowns,
} from "../../../src/layout/index.js";

export { demo };

/** Millimetres of tape language. */
export function mm(text: string): number {
  const read = parseLength(text, "in");
  if (!read.ok) throw new Error(text);
  return read.value;
}

export const DEMO: readonly Reading[] = demo.readings.map((own) => ({
  id: own.id,
  kind: own.kind as "rise",
  from: own.from,
  to: own.to,
  value: mm(own.value),
  sigma: mm(own.sigma),
}));

/** The adjustment, or the reason why there is none thrown. */
export function adjusted(readings: readonly Reading[], unknowns?: SurveyUnknowns): Adjustment {
  const found = adjustReadings(readings, unknowns);
  if (!found.ok) throw new Error(found.diagnostics.map((own) => own.message).join(" "));
  return found.value;
}
