/**
 * The pipe table (shared/pipe-b36.10.json) against published values it was not made from: the ASME B36.10M and AISC
 * entries of shared/published-sections.json, and the standard's own agreement of inch and metric columns.
 */
import { describe, expect, it } from "vitest";
import table from "../../../shared/pipe-b36.10.json" with { type: "json" };
import { PIPES } from "../../../src/members/sections/pipe-table.js";
import { findStandardSection, standardSection } from "../../../src/members/sections/standard.js";
import { misses, publishedOf } from "../published.js";

const round = (name: string) => {
  const { shape } = standardSection(name);
  if (shape.kind !== "round-tube") throw new Error(name);
  return shape;
};

describe("pipe table", () => {
  it.each(publishedOf(/^b3610-/).map((e) => [e.id, e] as const))("%s: ASME B36.10M", (_, e) => {
    const inch = round(`NPS ${e.inputs.NPS} Sch ${e.inputs.schedule}`);
    const metric = round(`DN ${e.inputs.DN} Sch ${e.inputs.schedule}`);
    const sizes = { OD_mm: metric.od, wall_mm: metric.wall, ID_mm: metric.od - 2 * metric.wall };
    expect(misses(e, { ...sizes, OD_in: inch.od / 25.4, wall_in: inch.wall / 25.4 })).toEqual([]);
  });

  it.each(publishedOf(/^aisc-Pipe/).map((e) => [e.id, e] as const))(
    "%s: AISC Shapes Database, STD is Sch 40 and XS Sch 80",
    (_, e) => {
      const found = /^aisc-Pipe(.+)(STD|XS)$/.exec(e.id);
      const pipe = round(`NPS ${found?.[1]?.replace(/-(\d)-(\d)$/, "-$1/$2")} ${found?.[2]}`);
      expect(misses(e, { OD_in: pipe.od / 25.4, wall_nominal_in: pipe.wall / 25.4 })).toEqual([]);
    },
  );

  it("inch and metric columns agree within the metric one's rounding, and walls rise with the schedule", () => {
    expect(table.rows).toHaveLength(20);
    for (const row of table.rows) {
      expect(Math.abs(row.odIn * 25.4 - row.odMm)).toBeLessThan(0.055);
      expect(Math.abs(row.wallIn * 25.4 - row.wallMm)).toBeLessThan(0.0055);
      const other = table.rows.find((r) => r.nps === row.nps && r.schedule === "80");
      expect(row.schedule === "80" || (other?.wallIn ?? 0) > row.wallIn).toBe(true);
    }
  });

  it("lists twenty sizes in inches and in millimetres", () => {
    expect(PIPES.all()).toHaveLength(40);
    expect(PIPES.all()[0]?.source).toBe("ASME B36.10M");
  });

  it.each([
    "nps 1-1/2 sch 40",
    "1-1/2 in pipe sch 40",
    "NPS 1 1/2 Schedule 40",
    '1-1/2" sch. 40',
    "pipe 1-1/2 std",
    "NPS 1-1/2 Sch40",
  ])("understands %s", (name) => {
    expect(standardSection(name)).toEqual(standardSection("NPS 1-1/2 Sch 40"));
  });

  it.each(["NPS 5 Sch 40", "NPS 1-1/2 Sch 10", "1-1/2", "", "DN 41 Sch 40", "DN 1-1/2 Sch 40"])(
    "does not know %j",
    (name) => {
      expect(findStandardSection(name)).toBeUndefined();
      expect(() => standardSection(name)).toThrow(/^unknown-section: .*got/);
    },
  );
});
