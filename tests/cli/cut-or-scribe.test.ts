/** `rakewright build` prints CUT OR SCRIBE on the cut list and puts each decision beside its end in the records. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { PieceRecords } from "../../src/shop/index.js";
import { example } from "../layout/designs.js";
import { document } from "../layout/uncertainty/fit-designs.js";
import { cli, freshFolder } from "./world.js";

async function built(loose: unknown, more: readonly string[] = []) {
  const folder = freshFolder();
  const design = join(folder, "design.json");
  writeFileSync(design, JSON.stringify(loose));
  const out = join(folder, "out");
  const { code } = await cli(["build", design, "-o", out, "--formats", "stl", "--quiet", ...more]);
  const paper = readFileSync(join(out, "cutlist.txt"), "utf8").replace(/\s+/g, " ");
  const records = JSON.parse(readFileSync(join(out, "pieces.json"), "utf8")) as PieceRecords;
  return { code, paper, records };
}

type Built = Awaited<ReturnType<typeof built>>;

describe("rakewright build", () => {
  let counted: Built;
  let taped: Built;
  beforeAll(async () => {
    counted = await built(example());
    taped = await built(document());
  }, 60_000);

  it("of counted steps says what is not to be cut, and why", () => {
    expect(counted.code).toBe(0);
    expect(counted.paper).toContain(
      "COUNTED: DO NOT CUT R1, R2, B1 to B4, P1 to P4, both ends: it hangs on steps",
    );
    expect(counted.paper).toContain("fit gap allowed 0: neither the design nor the shop file gives one");
  });

  it("of measured ones says what is left long, by the design's own gap", () => {
    expect(taped.paper).toContain("fit gap allowed 1.5;");
    expect(taped.paper).toMatch(/R2, UPHILL end: leave \d+\.\d long: the wall was not measured as it stands/);
    expect(taped.paper).not.toContain("DO NOT CUT");
  });

  it("puts one decision beside each end, and leaves the lengths alone", () => {
    for (const { records } of [counted, taped]) {
      for (const piece of records.pieces) {
        expect(piece.ends.map((end) => [end.cutOrScribe?.piece, end.cutOrScribe?.end])).toEqual([
          [piece.id, 0],
          [piece.id, 1],
        ]);
      }
    }
    const [rail] = taped.records.pieces.filter((piece) => piece.mark === "R2");
    expect(rail!.ends[1]!.cutOrScribe!.leaveLong).toBeGreaterThan(1);
    // Axis of the landing's rail: 2000 to the wall less the end plate's 10 and where the axis breaks; nothing is added.
    expect(rail!.lengths.blank!.value).toBeLessThan(1990 + 48.3);
  });
});
