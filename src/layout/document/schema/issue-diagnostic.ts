/**
 * Turns what zod found into diagnostics that name the place, what was expected, what was got and what to do.
 *
 * @packageDocumentation
 */
import type * as z from "zod";
import { type Diagnostic, diagnostic } from "../../../kernel/diagnostic.js";
import { type DocumentPath, got, nearestName, pathForPeople, pathText, valueAt } from "./path-text.js";

type Issue = z.core.$ZodIssue;

/** Keys a document may have anywhere: what a misspelt key is compared with. */
const KEYS = `
$schema version job unit side material gap stair sections rails posts endPosts foot legs splices risers floorToFloor going
overhang width inset nosings run height id role section marks type thickness along across cornerRadius holes diameter
substrate name leastThickness leastEdge below plate centre packer top undersides length slope start end endPlate cap to
down break turn angle corner past before above onTreads behindNosing at spacing from greatest spaces tread leg sleeve reach
handrails toeBoard inward bottom brackets graspable perimeterFrom perimeterTo source extend return distance towards drop wall gap
face ends flange
fieldJoints infill clear count through clearance rows edge
survey readings without fit limit tape date kind value sigma heights least most plan
`
  .trim()
  .split(/\s+/);

/** Which document it is. */
export interface DocumentWords {
  /** What messages call it. */
  readonly name: string;
  /** Every key it may have anywhere. */
  readonly keys: readonly string[];
}

/** A design. */
export const DESIGN: DocumentWords = { name: "The design", keys: KEYS };

const KIND: Readonly<Record<string, string>> = {
  object: "an object { … }",
  array: "a list [ … ]",
  int: "a whole number",
};

/** The issues of the alternative the writer most likely meant: of those that accept the value's own kind, the one least amiss. */
function alternative(issue: Issue): readonly Issue[] | undefined {
  if (issue.code !== "invalid_union") return undefined;
  const amiss = (branch: readonly Issue[]) =>
    branch.reduce((sum, own) => sum + (own.code === "unrecognized_keys" ? own.keys.length : 1), 0);
  const kin = issue.errors.filter((branch) => !branch.some(ofAnotherKind));
  // A word is what an object is not: beside an alternative with fields it is the farther one.
  const forms = kin.filter(
    (branch) => !branch.some((own) => own.path.length === 0 && own.code === "invalid_value"),
  );
  return [...(forms.length > 0 ? forms : kin)].sort((a, b) => amiss(a) - amiss(b))[0];
}

/** True where the value as a whole is not even of the kind this alternative takes. */
function ofAnotherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  return (
    issue.code === "invalid_type" ||
    // An object of which only the word that tells the forms apart is wrong is of this kind.
    (issue.code === "invalid_union" && issue.discriminator === undefined && alternative(issue) === undefined)
  );
}

/** Every issue that is not a choice between alternatives, at its full path. */
function flatten(issue: Issue, base: DocumentPath): { readonly issue: Issue; readonly path: DocumentPath }[] {
  const path = [...base, ...issue.path];
  const meant = alternative(issue);
  return meant === undefined || meant.length === 0
    ? [{ issue, path }]
    : meant.flatMap((inner) => flatten(inner, path));
}

/** What was expected, in words. */
function expected(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return `expected ${KIND[issue.expected] ?? `a ${issue.expected}`}`;
    case "invalid_value":
      return `expected ${issue.values.map((value) => got(value)).join(" or ")}`;
    case "too_small":
      return `expected at least ${String(issue.minimum)}${counted(issue.origin)}`;
    case "too_big":
      return `expected at most ${String(issue.maximum)}${counted(issue.origin)}`;
    case "invalid_union":
      if (issue.discriminator !== undefined)
        return `expected one of the known values of \`${issue.discriminator}\``;
      return issue.message.startsWith("expected")
        ? issue.message
        : "expected one of the forms the schema names";
    case "invalid_key":
      return `expected a name: ${issue.issues[0]?.message ?? issue.message}`;
    default:
      return issue.message.startsWith("expected")
        ? issue.message
        : `expected something else (${issue.message})`;
  }
}

const counted = (origin: string) =>
  origin === "array" ? " items" : origin === "string" ? " characters" : "";

const CODES: Readonly<Record<string, string>> = {
  invalid_type: "wrong-type",
  invalid_union: "wrong-type",
  invalid_value: "bad-value",
  too_small: "out-of-range",
  too_big: "out-of-range",
  invalid_format: "bad-name",
  invalid_key: "bad-name",
};

function unknownKeys(
  keys: readonly string[],
  document: unknown,
  path: DocumentPath,
  of: DocumentWords,
): Diagnostic[] {
  return keys.slice(0, 20).map((key) => {
    const near = nearestName(key, of.keys);
    return diagnostic({
      code: "unknown-key",
      path: pathText([...path, key]),
      message: `${pathForPeople(document, path, of.name)}: expected only known keys, got ${got(key)}.`,
      hint:
        near === undefined
          ? "Remove it; the schema lists the keys."
          : `Did you mean \`${near}\`? Otherwise remove it.`,
      values: { key: key.slice(0, 60) },
    });
  });
}

/**
 * Diagnostics of one zod issue.
 *
 * @param issue - from `safeParse`
 * @param document - what was parsed, to say what was got
 * @param of - which document it is; default a design
 */
export function issueDiagnostics(issue: Issue, document: unknown, of: DocumentWords = DESIGN): Diagnostic[] {
  return flatten(issue, []).flatMap(({ issue: inner, path }) => {
    if (inner.code === "unrecognized_keys") return unknownKeys(inner.keys, document, path, of);
    const value = valueAt(document, path);
    const missing = value === undefined;
    return [
      diagnostic({
        code: missing && path.length > 0 ? "missing" : (CODES[inner.code] ?? "bad-value"),
        path: pathText(path),
        message: `${pathForPeople(document, path, of.name)}: ${expected(inner)}, got ${got(value)}.`,
        hint: missing && path.length > 0 ? "Add it." : "Change it to what is expected.",
        values: { got: got(value) },
      }),
    ];
  });
}
