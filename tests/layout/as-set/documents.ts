/**
 * As-set documents for the tests of this folder: read against the example, and against a guard with bars through its posts.
 */
import { readFileSync } from "node:fs";
import { type BuiltGuard, buildGuard } from "../../../src/layout/build-guard.js";
import { type AsSet, type Design, parseAsSet, parseDesign } from "../../../src/layout/index.js";
import { example, type Loose } from "../designs.js";

export const INCH = 25.4;
const TEXT = readFileSync(new URL("../../../examples/pottery-studio-as-set.json", import.meta.url), "utf8");

/** A fresh copy of the example's as-set document, changed. */
export function asSetExample(change: (document: Loose) => void = () => undefined): Loose {
  const document: Loose = JSON.parse(TEXT);
  change(document);
  return document;
}

export function designOf(document: Loose): Design {
  const read = parseDesign(document);
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  return read.value;
}

/** What stands, in inches unless the document says otherwise; throws when it cannot be read. */
export function standingOn(design: Loose, document: Loose): AsSet {
  const read = parseAsSet({ version: 1, unit: "in", ...document }, designOf(design));
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  return read.value;
}

/** The guard as designed, and as it stands. */
export function both(
  design: Loose,
  document: Loose,
): { readonly plain: BuiltGuard; readonly set: BuiltGuard } {
  return { plain: buildGuard(design), set: buildGuard(design, undefined, standingOn(design, document)) };
}

/** The example with round bars along the rails through its posts, all alike. */
export function throughBars(change: (document: Loose) => void = () => undefined): Loose {
  return example((document) => {
    document.sections.bar = "round bar 1/2";
    document.endPosts = undefined;
    document.infill = { type: "rails", section: "bar", clear: "3 1/4", through: true, past: "1" };
    change(document);
  });
}

/** Errors and warnings of a guard. */
export const codesIn = (built: BuiltGuard): string[] => built.diagnostics.map((d) => d.code);
