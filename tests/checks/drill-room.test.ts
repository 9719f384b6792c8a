/**
 * Room for a drill chuck: half its diameter and a clearance, by arithmetic.
 */
import { describe, expect, it } from "vitest";
import { drillRoom } from "../../src/checks/drill-room.js";

const shop = { drillChuck: { diameter: 45, clearance: 6 } };
const place = (toFace: number) => ({ member: "P1", mark: "P1", toFace, face: "the riser behind it" });

describe("room for the drill", () => {
  it("is half the chuck and the clearance: 22.5 + 6", () => {
    expect(drillRoom([place(28.5), place(40)], shop)).toEqual([]);
    const [found, ...more] = drillRoom([place(28.4)], shop);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: "no-room-to-drill", severity: "warning", members: ["P1"] });
    expect(found?.values).toEqual({ least: 28.5, toFace: 28.4, diameter: 45, clearance: 6 });
    expect(found?.message).toContain("at least 28.5 mm (1.122 in) from the riser behind it");
  });

  it("is missing behind the face, and not told of a distance that is no number", () => {
    expect(drillRoom([place(-3)], shop)).toHaveLength(1);
    expect(() => drillRoom([place(Number.NaN)], shop)).toThrow(/bad-length/);
  });
});
