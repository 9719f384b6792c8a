/**
 * Holes of base plates and the riser in front of them, on the studio's stair (invented): going 10 5/8, overhang 3/4, posts 3
 * behind their nosings, holes 2 3/4 apart: 10.625 + 0.75 − 3 − 1.375 = 7 in to the riser face, by arithmetic.
 */
import { describe, expect, it } from "vitest";
import { drillRoom } from "../../src/checks/drill-room.js";
import { footDrillPlaces } from "../../src/checks/foot-drill.js";
import { DEFAULT_SHOP } from "../../src/layout/document/shop.js";
import { buildGuard } from "../../src/layout/index.js";
import { example, type Loose } from "../layout/designs.js";

const INCH = 25.4;
const holes = { diameter: "7/16", along: "2 3/4", across: "2 3/4" };

function placesOf(change: (document: Loose) => void = () => undefined) {
  const { design, report, pieces } = buildGuard(
    example((d) => {
      d.foot = { ...d.foot, holes };
      change(d);
    }),
  );
  if (!design || !report) throw new Error("no guard");
  return footDrillPlaces(design, report.posts, pieces);
}

describe("holes of feet on treads", () => {
  it("are 7 in from the riser face in front, on each of the four posts", () => {
    const places = placesOf();
    expect(places.map((p) => p.mark)).toEqual(["P1", "P2", "P3", "P4"]);
    for (const place of places) expect(place.toFace / INCH).toBeCloseTo(7, 9);
    expect(places[0]?.face).toBe("the riser in front of tread 1");
    expect(drillRoom(places, DEFAULT_SHOP)).toEqual([]);
  });

  it("are as far on the stair's other side", () => {
    const places = placesOf((d) => (d.side = "right"));
    expect(places).toHaveLength(4);
    for (const place of places) expect(place.toFace / INCH).toBeCloseTo(7, 9);
  });

  it("come nearer with the post, and want a warning: 9 behind the nosing leaves 1 in, 25.4 of 28.5 mm", () => {
    const places = placesOf((d) => {
      d.foot.along = "3 1/2";
      d.legs[0].posts.behindNosing = "9";
    });
    for (const place of places) expect(place.toFace / INCH).toBeCloseTo(1, 9);
    expect(drillRoom(places, DEFAULT_SHOP).map((d) => d.members)).toEqual(places.map((p) => [p.member]));
  });

  it("are none where the plates have none, or there are no plates", () => {
    expect(placesOf((d) => delete d.foot.holes)).toEqual([]);
    expect(placesOf((d) => delete d.foot)).toEqual([]);
  });
});
