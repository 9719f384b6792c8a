/**
 * Guards with infill for the tests of this folder: the example filled, and an invented one that turns a corner between two
 * flights; and whether what was laid out can be built.
 */
import { expect } from "vitest";
import { fitsOf, solidOf } from "../../src/joints/index.js";
import { type BuiltGuard, buildGuard } from "../../src/layout/build-guard.js";
import type { Layout } from "../../src/layout/lay-out.js";
import type { Member } from "../../src/members/index.js";
import { example, type Loose } from "./designs.js";

/** The example with infill, whose sections are `bar` and what a change adds; posts alike, so that no post is wider than its rail. */
export function filled(infill: Loose, change: (document: Loose) => void = () => undefined): Loose {
  return example((document) => {
    document.sections.bar = "round bar 1/2";
    document.endPosts = undefined;
    document.infill = infill;
    change(document);
  });
}

/** Two flights of 6 and 5 risers at a right angle, a landing between; millimetres. `corner` is how the guard turns. */
export function twoFlights(
  corner: Loose,
  infill: Loose,
  change: (document: Loose) => void = () => undefined,
): Loose {
  const undersides = { low: 90 };
  const document: Loose = {
    ...{ version: 1, job: "Clay store, two flights (invented)", unit: "mm", side: "left" },
    stair: { risers: 6, floorToFloor: 1050, going: 280 },
    sections: { rail: "round 48.3 x 3.2", post: "square 40 x 3", low: "square 25 x 2", bar: "round bar 12" },
    rails: [
      { role: "top", section: "rail" },
      { id: "low", role: "lower", section: "low" },
    ],
    posts: { section: "post" },
    infill,
    legs: [
      { along: "stair", top: 1000, undersides, posts: { onTreads: [1, 4], behindNosing: 90 } },
      { along: "landing", length: 900, top: 1000, undersides, posts: { at: [200, 600] } },
      {
        ...{ along: "stair", top: 1000, undersides, turn: corner },
        stair: { risers: 5, floorToFloor: 875, going: 280 },
        posts: { onTreads: [1, 4], behindNosing: 90 },
      },
    ],
  };
  change(document);
  return document;
}

/** Members whose id says that they are infill of a bay. */
export function infillOf({ members }: Pick<Layout, "members">, bay?: number): Member[] {
  const start =
    bay === undefined
      ? /bay-\d+(-[b-z])?-(bar|line|panel)/
      : new RegExp(`bay-${bay}(-[b-z])?-(bar|line|panel)`);
  return members.filter((own) => start.test(own.id));
}

/** Level distance between the centrelines of two plumb members. */
export function apart(a: Member, b: Member): number {
  return Math.hypot(b.from[0] - a.from[0], b.from[1] - a.from[1]);
}

/** Builds a document and asserts that every piece is sound and that none lies in another or stands off it. */
export function soundGuard(document: Loose): BuiltGuard {
  const guard = buildGuard(document);
  expect(guard.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
  for (const piece of guard.pieces) {
    expect(piece.status, piece.id).toBe("ok");
    expect(solidOf(piece).ok, piece.id).toBe(true);
  }
  for (const fit of fitsOf(guard)) {
    expect(fit.ok).toBe(true);
    if (!fit.ok) continue;
    const { contact, overlap, gap } = fit.value;
    expect([contact.piece, contact.onto, overlap, gap]).toEqual([contact.piece, contact.onto, 0, 0]);
  }
  return guard;
}
