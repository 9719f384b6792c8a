/** Cut, or leave k sigma long: worked cases i17 and i18 of shared/shop-cases.json, and what no decision can be made from. */
import { describe, expect, it } from "vitest";
import { COVERAGE, leaveLong } from "../../src/checks/index.js";
import { shopCase } from "../layout/cases.js";

const WORDS: Readonly<Record<string, string>> = {
  "cut-to-length": "cut",
  "leave-long-and-scribe": "scribe",
};

describe("leaving long", () => {
  it.each(["i17", "i18"])("decides shop case %s", (id) => {
    const { inputs, expected, near } = shopCase(id);
    const { sigma, allowable_gap: gap, k } = inputs as Record<string, number>;
    const found = leaveLong(sigma!, { gap: gap!, k });
    if (!found.ok) throw new Error("not decided");
    expect(found.value.decision).toBe(WORDS[(expected as Record<string, unknown>).decision as string]);
    near("leave_long", found.value.leaveLong);
  });

  it("counts the boundary as known, and 2 as k", () => {
    expect(COVERAGE).toBe(2);
    expect(leaveLong(0.75, { gap: 1.5 })).toMatchObject({
      ok: true,
      value: { decision: "cut", leaveLong: 0 },
    });
    expect(leaveLong(0.7501, { gap: 1.5 })).toMatchObject({
      value: { decision: "scribe", leaveLong: 1.5002 },
    });
    expect(leaveLong(0, { gap: 0 })).toMatchObject({ value: { decision: "cut" } });
  });

  it.each([
    ["a gap that is missing", Number.NaN, 2, 1, "fit-gap-missing"],
    ["a gap below zero", -0.1, 2, 1, "fit-gap-missing"],
    ["no k", 1.5, 0, 1, "bad-coverage"],
    ["a k that is none", 1.5, Number.NaN, 1, "bad-coverage"],
    ["a sigma below zero", 1.5, 2, -1, "sigma-missing"],
    ["a sigma that is missing", 1.5, 2, Number.NaN, "sigma-missing"],
  ])("refuses %s", (_, gap, k, sigma, code) => {
    const found = leaveLong(sigma, { gap, k });
    expect(found.ok).toBe(false);
    expect(found.diagnostics.map((own) => own.code)).toEqual([code]);
    expect(found.diagnostics[0]!.message).toMatch(/expected .* got /);
  });
});
