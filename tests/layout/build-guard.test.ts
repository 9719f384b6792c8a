/** From document to cut pieces, against the demo data's rail and post lengths (computed independently). */
import { describe, expect, it } from "vitest";
import { buildGuard } from "../../src/layout/build-guard.js";
import { demo, inches } from "./cases.js";
import { example } from "./designs.js";

const { straight } = demo;

describe("buildGuard", () => {
  it("answers a document that cannot be read with its findings and nothing else", () => {
    const guard = buildGuard({ version: 1 });
    expect([guard.members, guard.pieces, guard.contacts]).toEqual([[], [], []]);
    expect(guard.report).toBeUndefined();
    expect(guard.diagnostics.map((d) => d.code)).toContain("missing");
  });

  it("makes one sound piece a member of the example", () => {
    const guard = buildGuard(example());
    expect(guard.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
    expect(guard.pieces.map((piece) => piece.id)).toEqual(guard.members.map((own) => own.id));
    expect(guard.pieces.every((piece) => piece.status === "ok")).toBe(true);
  });

  it("cuts the demo data's rails", () => {
    const [rake, level] = buildGuard(example()).pieces;
    inches(rake!.lengths.blank.value, straight.rakeRail.blank);
    inches(rake!.lengths.top?.value, straight.rakeRail.top);
    inches(rake!.lengths.bottom?.value, straight.rakeRail.bottom);
    inches(level!.lengths.top?.value, straight.levelRail.topFromBreakToEndPlateFace);
    inches(level!.lengths.bottom?.value, straight.levelRail.bottom);
  });
});
