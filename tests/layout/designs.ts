/**
 * Design documents for the tests of this folder: the example, and ways to change a copy of it.
 */
import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { solidOf } from "../../src/joints/index.js";
import { type BuiltGuard, buildGuard } from "../../src/layout/build-guard.js";
import { parseDesign } from "../../src/layout/document/parse-design.js";
import { type Layout, layOut } from "../../src/layout/lay-out.js";

/** JSON that a test may change at will. */
// biome-ignore lint/suspicious/noExplicitAny: a test breaks documents in ways no type allows
export type Loose = any;

const TEXT = readFileSync(new URL("../../examples/pottery-studio.json", import.meta.url), "utf8");

/** A fresh copy of the example document, changed. */
export function example(change: (document: Loose) => void = () => undefined): Loose {
  const document: Loose = JSON.parse(TEXT);
  change(document);
  return document;
}

/** The example with a level leg on the floor: 40 in from nosing 1, posts at 15 and 38 in, 42 in high. */
export function withFloor(change: (document: Loose) => void = () => undefined): Loose {
  return example((document) => {
    document.legs.unshift({
      along: "floor",
      top: "42",
      undersides: { low: "2" },
      posts: { at: ["15", "38"] },
      end: { type: "free" },
    });
    document.endPosts = undefined;
    change(document);
  });
}

/** The example without its heavy posts, whose shoulders warn, changed. */
export function plain(change: (document: Loose) => void = () => undefined): Loose {
  return example((document) => {
    document.endPosts = undefined;
    change(document);
  });
}

/** A guard built without a finding, every piece with its solid. */
export function whole(document: Loose): BuiltGuard {
  const guard = buildGuard(document);
  expect(guard.diagnostics.map((d) => d.message)).toEqual([]);
  for (const piece of guard.pieces) expect(solidOf(piece).ok, piece.id).toBe(true);
  return guard;
}

/** A document laid out; throws when it cannot be read. */
export function laidOut(document: unknown): Layout {
  const read = parseDesign(document);
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  return layOut(read.value);
}

/** The codes of a layout's findings, or of a reading that failed. */
export function codesOf(document: unknown): string[] {
  const read = parseDesign(document);
  return (read.ok ? layOut(read.value).diagnostics : read.diagnostics).map((d) => d.code);
}
