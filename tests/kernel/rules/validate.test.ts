/** Every kind of end, and the same with both ends swapped, breaks no rule. */
import { describe, expect, it } from "vitest";
import { validateSolid } from "../../../src/kernel/rules/validate.js";
import { reversed } from "../../support/bar-moves.js";
import { BARS, solidFor } from "../../support/bars.js";

describe("validateSolid", () => {
  it.each(Object.entries(BARS))("finds nothing on %s", (_, bar) => {
    expect(validateSolid(solidFor(bar))).toEqual([]);
    expect(validateSolid(solidFor(reversed(bar)))).toEqual([]);
  });
});
