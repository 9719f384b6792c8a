/**
 * `rakewright saddle`: the table against case c10 of shared/shop-cases.json (computed by an independent script from the
 * handbook's formula), and its refusals.
 */
import { describe, expect, it } from "vitest";
import { num, referenceCase } from "../joints/reference.js";
import { cli } from "./world.js";

const c10 = referenceCase("c10-saddle-post-to-rake");
const ANGLE = String(num(c10.inputs, "axis_angle_deg"));
const COMMAND = [
  "saddle",
  "--branch",
  "1.900x0.145",
  "--header",
  "1.900",
  "--angle",
  ANGLE,
  "--unit",
  "in",
  "--stations",
  "24",
];
const expected = c10.expected as unknown as { s_outer: number[]; s_effective: number[] };

/** Decimals in brackets of each line of the table. */
const decimals = (line: string): number[] => [...line.matchAll(/\((-?[\d.]+)\)/g)].map((m) => Number(m[1]));

describe("rakewright saddle", () => {
  it("prints case c10 to the decimals it shows, toe and heel named", async () => {
    const { code, out, err } = await cli(COMMAND);
    expect([code, err]).toEqual([0, ""]);
    const rows = out.split("\n").filter((line) => /^ {2,}\d+\.\d /.test(line));
    expect(rows).toHaveLength(24);
    rows.forEach((row, i) => {
      const [arc, outer, , effective] = decimals(row);
      // Three decimals are shown: half a thousandth either way. Arc: circumference π·OD in 24 equal steps.
      expect(Math.abs((arc as number) - (Math.PI * 1.9 * i) / 24)).toBeLessThan(0.00051);
      expect(Math.abs((outer as number) - expected.s_outer[i]!)).toBeLessThan(0.00051);
      expect(Math.abs((effective as number) - expected.s_effective[i]!)).toBeLessThan(0.00051);
    });
    expect(rows[0]).toMatch(/toe$/);
    expect(rows[12]).toMatch(/heel$/);
    expect(rows.filter((row) => /toe|heel/.test(row))).toHaveLength(2);
  });

  it("fits 100 columns and carries the caution", async () => {
    const { out } = await cli(COMMAND);
    expect(out.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(out).toContain("Measure before you cut.");
    expect(out).not.toMatch(/NaN|undefined/);
  });

  it("gives the same numbers unrounded as JSON, in millimetres", async () => {
    const { code, out } = await cli([...COMMAND, "--json"]);
    const { stations } = JSON.parse(out) as { stations: { outer: number; effective: number }[] };
    expect(code).toBe(0);
    stations.forEach((s, i) => {
      expect(s.outer / 25.4).toBeCloseTo(expected.s_outer[i]!, 9);
      expect(s.effective / 25.4).toBeCloseTo(expected.s_effective[i]!, 9);
    });
  });

  it("reads fractions and units on the lengths, and works in millimetres", async () => {
    const inches = await cli([
      "saddle",
      "--branch",
      "1 1/2x1/8",
      "--header",
      "2",
      "--angle",
      "60",
      "--unit",
      "in",
      "--json",
    ]);
    const metric = await cli([
      "saddle",
      "--branch",
      "38.1x3.175",
      "--header",
      "50.8",
      "--angle",
      "60",
      "--unit",
      "mm",
      "--json",
    ]);
    const stations = (text: string) => (JSON.parse(text) as { stations: { effective: number }[] }).stations;
    expect(stations(inches.out).map((s) => s.effective.toFixed(9))).toEqual(
      stations(metric.out).map((s) => s.effective.toFixed(9)),
    );
  });

  it("says where the branch misses and by how much: 1 wide past a 0.75 header is 1/8 a side", async () => {
    const { code, out } = await cli([
      "saddle",
      "--branch",
      "1x1/8",
      "--header",
      "3/4",
      "--angle",
      "90",
      "--unit",
      "in",
    ]);
    expect(code).toBe(0);
    expect(out).toContain("miss");
    expect(out).toContain("HANGS OFF: the branch reaches 1/8 (0.125) past");
  });

  it("names the side an offset goes to", async () => {
    const { out } = await cli([
      "saddle",
      "--branch",
      "1x1/8",
      "--header",
      "3",
      "--angle",
      "90",
      "--unit",
      "in",
      "--offset=-1/4",
    ]);
    expect(out).toContain("centrelines -1/4 (-0.250) apart");
  });

  it.each([
    ["--angle missing", ["--branch", "1x0.1", "--header", "2", "--unit", "in"], /--angle is missing/],
    ["--branch missing", ["--header", "2", "--angle", "60", "--unit", "in"], /--branch is missing/],
    ["--header missing", ["--branch", "1x0.1", "--angle", "60", "--unit", "in"], /--header is missing/],
    ["--unit missing", ["--branch", "1x0.1", "--header", "2", "--angle", "60"], /--unit is missing/],
    [
      "an unknown unit",
      ["--branch", "1x0.1", "--header", "2", "--angle", "60", "--unit", "cubit"],
      /expected in or mm/,
    ],
    ["no wall", ["--branch", "1", "--header", "2", "--angle", "60", "--unit", "in"], /expected ODxWALL/],
    ["no length", ["--branch", "axb", "--header", "2", "--angle", "60", "--unit", "in"], /--branch/],
    ["a wall too thick", ["--branch", "1x0.6", "--header", "2", "--angle", "60", "--unit", "in"], /wall/],
    [
      "an angle past 90",
      ["--branch", "1x0.1", "--header", "2", "--angle", "95", "--unit", "in"],
      /from 0 to 90/,
    ],
    ["an angle too flat", ["--branch", "1x0.1", "--header", "2", "--angle", "5", "--unit", "in"], /angle/],
    [
      "too many stations",
      ["--branch", "1x0.1", "--header", "2", "--angle", "60", "--unit", "in", "--stations", "1e9"],
      /stations/,
    ],
    ["an option without value", ["--branch"], /--branch/],
    ["a stray word", ["stray"], /did not expect `stray`/],
  ])("refuses %s with exit code 2 and says what to do", async (_what, argv, message) => {
    const { code, out, err } = await cli(["saddle", ...argv]);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(message);
    expect(err.trim().split("\n").length).toBeGreaterThan(1);
    expect(err).not.toContain("internal error");
  });
});
