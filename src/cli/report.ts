/**
 * Diagnostics for a person and for a program.
 *
 * Text: one block per finding, worst first, with where it is and what to do. JSON: the diagnostics as they are.
 *
 * @packageDocumentation
 */
import type { Diagnostic, Severity } from "../kernel/diagnostic.js";
import type { CliIo } from "./io.js";

const ORDER: readonly Severity[] = ["error", "warning", "note"];
const COLOUR: Readonly<Record<Severity, string>> = { error: "31", warning: "33", note: "36" };

/** True when a person looks at standard error and has not asked for plain text (NO_COLOR, any value but empty). */
export function wantsColour(io: CliIo): boolean {
  return io.stderr.isTTY && (io.env.NO_COLOR ?? "") === "";
}

/** The findings as text, worst first, each severity in the order found. */
export function diagnosticsText(diagnostics: readonly Diagnostic[], colour: boolean): string {
  const sorted = ORDER.flatMap((severity) => diagnostics.filter((d) => d.severity === severity));
  return sorted.map((d) => diagnosticText(d, colour)).join("");
}

function diagnosticText(d: Diagnostic, colour: boolean): string {
  const label = colour ? `\u001b[${COLOUR[d.severity]}m${d.severity}\u001b[0m` : d.severity;
  const where = d.path === "" || d.message.startsWith(d.path) ? "" : ` at ${d.path}`;
  const hint = d.hint === "" ? "" : `  ${d.hint}\n`;
  return `${label} ${d.code}${where}: ${d.message}\n${hint}`;
}

/** How many of each, e.g. `1 error, 2 warnings`; `nothing to report` when there is none. */
export function tally(diagnostics: readonly Diagnostic[]): string {
  const parts = ORDER.flatMap((severity) => {
    const n = diagnostics.filter((d) => d.severity === severity).length;
    return n === 0 ? [] : [`${n} ${severity}${n === 1 ? "" : "s"}`];
  });
  return parts.length === 0 ? "nothing to report" : parts.join(", ");
}
