/**
 * The records: units and caution said, every length with its two points in both frames, stable and plain.
 */
import { describe, expect, it } from "vitest";
import { pieceRecords } from "../../src/shop/pieces-json.js";
import { rakeRail, roundPost } from "./pieces.js";

const pieces = [rakeRail(30), roundPost("P1", 60)];
const masses = new Map([["P1", { volume: 5000, mass: 0.03925, centroid: [0, 0, 500] as const }]]);
const header = { generator: "rakewright 0", job: "Kiln room stair" };

describe("piece records", () => {
  const records = pieceRecords(pieces, masses, header);

  it("say their units, frame and caution", () => {
    expect(records.units).toEqual({ length: "mm", mass: "kg", angle: "degree", volume: "mm3" });
    expect(records.frame).toMatch(/origin at the top nosing/);
    expect(records.caution).toMatch(/Measure before you cut/);
  });

  it("keep the pieces' order, marks and roles", () => {
    expect(records.pieces.map((p) => [p.mark, p.role])).toEqual([
      ["R1", "top-rail"],
      ["P1", "post"],
    ]);
  });

  it("place each point in the layout: end of a rail 1000 along a 30° rake is 866.025 over and 500 up", () => {
    const { from, to } = records.pieces[0]!.lengths.blank!;
    // cos 30° = √3/2, sin 30° = 1/2.
    expect(to.inLayout[0] - from.inLayout[0]).toBeCloseTo(500 * Math.sqrt(3), 9);
    expect(to.inLayout[2] - from.inLayout[2]).toBeCloseTo(500, 9);
    expect(to.inPiece).toEqual([0, 0, 1000]);
    expect(from.name).not.toBe("");
  });

  it("carry mass and both centroids, or null where unknown", () => {
    const [rail, post] = records.pieces;
    expect([rail?.mass, rail?.volume, rail?.centroid]).toEqual([null, null, null]);
    expect([post?.mass, post?.volume]).toEqual([0.03925, 5000]);
    // The post's origin is at (−3162.3, 0, −2295.5) and its axis is plumb.
    expect(post?.centroid?.inLayout).toEqual([-3162.3, 0, -1795.5]);
  });

  it("survive JSON and come out the same every time", () => {
    expect(JSON.parse(JSON.stringify(records))).toEqual(
      JSON.parse(JSON.stringify(pieceRecords(pieces, masses, header))),
    );
    expect(structuredClone(records)).toEqual(records);
  });
});
