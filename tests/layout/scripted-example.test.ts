/**
 * The guard scripted by hand in examples/pottery-studio.ts is the guard its document lays out: two routes to the same
 * members, one by closed formulas on the nosing line, one through schema, path and bays.
 */
import { describe, expect, it, vi } from "vitest";
import { example, laidOut } from "./designs.js";

describe("the scripted example", () => {
  it("places every member where the document's layout places it", async () => {
    const printed = vi.spyOn(console, "log").mockImplementation(() => undefined);
    const { potteryStudioMembers } = await import("../../examples/pottery-studio.js");
    expect(printed.mock.calls.length).toBeGreaterThanOrEqual(17);
    printed.mockRestore();
    const scripted = potteryStudioMembers();
    const members = laidOut(example()).members.filter((own) => own.kind === undefined);
    expect(scripted.map((own) => own.id)).toEqual(members.map((own) => own.mark));
    scripted.forEach((own, i) => {
      for (const axis of [0, 1, 2] as const) {
        expect(own.from[axis]).toBeCloseTo(members[i]!.from[axis], 8);
        expect(own.to[axis]).toBeCloseTo(members[i]!.to[axis], 8);
      }
      expect(own.section.region).toEqual(members[i]!.section.region);
    });
  });
});
