/**
 * Expected failure is a value: a `Diagnostic`. A programming error throws one `RakewrightError` with the same codes.
 *
 * A message names the thing, what was expected, what was got; the hint says what to do.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "./vec.js";

/** How bad: an `error` blocks the piece, a `warning` wants a decision, a `note` informs. */
export type Severity = "error" | "warning" | "note";

/** One finding about the input or the result. */
export interface Diagnostic {
  /** Stable code in kebab case, e.g. `branch-hangs-off`. */
  readonly code: string;
  readonly severity: Severity;
  /** Where in the input, e.g. `legs[1].posts.at[2]`; empty when no document is involved. */
  readonly path: string;
  /** Ids of the members concerned, in the order the message names them. */
  readonly members: readonly string[];
  readonly joint?: string;
  /** Which end of the first member, 0 at `from`, 1 at `to`. */
  readonly end?: 0 | 1;
  readonly bore?: string;
  /** Where in the layout, millimetres. */
  readonly point?: Vec3;
  readonly message: string;
  readonly hint: string;
  /** The numbers behind the message, millimetres and degrees unless the key says otherwise. */
  readonly values: Readonly<Record<string, number | string>>;
}

/** The fields that have a sensible default. */
export type DiagnosticInput = Pick<Diagnostic, "code" | "message" | "hint"> & Partial<Diagnostic>;

/** A diagnostic with its defaults filled in: severity `error`, no path, no members, no values. */
export function diagnostic(input: DiagnosticInput): Diagnostic {
  return { severity: "error", path: "", members: [], values: {}, ...input };
}

/** True when any of the diagnostics is an error. */
export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((d) => d.severity === "error");
}

/** Thrown for misuse of the library by a program: a wrong argument, never a wrong stair. */
export class RakewrightError extends Error {
  readonly code: string;
  readonly diagnostic: Diagnostic;

  constructor(input: DiagnosticInput) {
    super(`${input.code}: ${input.message} ${input.hint}`.trim());
    this.name = "RakewrightError";
    this.code = input.code;
    this.diagnostic = diagnostic(input);
  }
}

/** A value, or the reasons why there is none. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly diagnostics: readonly Diagnostic[] }
  | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] };
