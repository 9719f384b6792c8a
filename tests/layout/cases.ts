/**
 * Worked shop cases (shared/shop-cases.json) and the demo stair (shared/demo-data.json), for the tests of this folder.
 *
 * Both were computed by independent scripts in double precision; a case's tolerance is |got − expected| ≤ tolerance ·
 * max(1, |expected|), in the case's own unit.
 */
import { expect } from "vitest";
import demo from "../../shared/demo-data.json" with { type: "json" };
import table from "../../shared/shop-cases.json" with { type: "json" };

export const INCH = 25.4;
export { demo };

type Numbers = Readonly<Record<string, number>>;

/** A case by the start of its id, with its numbers. */
export function shopCase(prefix: string): {
  inputs: Numbers;
  expected: Numbers;
  near: (key: string, value: number) => void;
} {
  const found = table.cases.find((own) => own.id.startsWith(prefix));
  if (found === undefined) throw new Error(`no case ${prefix}`);
  const expected = found.expected as unknown as Numbers;
  const near = (key: string, value: number) => {
    const wanted = expected[key];
    expect(wanted, `${found.id} ${key}`).toBeTypeOf("number");
    const within = found.tolerance * Math.max(1, Math.abs(wanted as number));
    expect(
      Math.abs(value - (wanted as number)),
      `${found.id} ${key}: ${value} for ${wanted}`,
    ).toBeLessThanOrEqual(within);
  };
  return { inputs: found.inputs as unknown as Numbers, expected, near };
}

/** Asserts a length in millimetres against inches of the demo data, to 1e-6 in. */
export function inches(value: number | undefined, wanted: number): void {
  expect(Math.abs((value ?? Number.NaN) / INCH - wanted), `${value} mm for ${wanted} in`).toBeLessThanOrEqual(
    1e-6,
  );
}
