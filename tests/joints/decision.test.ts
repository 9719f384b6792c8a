import { describe, expect, it } from "vitest";
import { endKey } from "../../src/joints/decision.js";

describe("endKey", () => {
  it("keeps ends apart whose ids run on into each other (counting)", () => {
    const ids = ["a", "a0", "a1", "a01", "0", "1"];
    const keys = ids.flatMap((member) => ([0, 1] as const).map((end) => endKey({ member, end })));
    expect(new Set(keys).size).toBe(2 * ids.length);
    expect(endKey({ member: "a", end: 1 })).toBe(endKey({ member: "a", end: 1 }));
  });
});
