/** The plumb leg against shop case a20, the demo stair and the handbook's infeasible leg (a21: 0.3 in, least 0.364). */
import { describe, expect, it } from "vitest";
import { dropToHold } from "../../src/layout/rails/drop-to-hold.js";
import { demo, shopCase } from "./cases.js";

const PITCH = (Math.atan2(7.5, 10.5) * 180) / Math.PI;

describe("dropToHold", () => {
  it("has case a20's leg and edges", () => {
    const { inputs, near } = shopCase("a20");
    const drop = dropToHold({
      heightRake: inputs.height_rake!,
      heightLevel: inputs.height_level!,
      at: inputs.x!,
      pitch: PITCH,
      depth: inputs.depth!,
    });
    near("rake_top_z_at_x", drop.rakeZ);
    near("vertical_leg_centreline", drop.leg);
    near("miter_rake_vertical_deg", drop.miterRake);
    near("miter_vertical_level_deg", drop.miterLevel);
    near("leg_edge_long", drop.longEdge);
    near("leg_edge_short", drop.shortEdge);
    near("min_leg", drop.shortestLeg);
    expect(drop.feasible).toBe(true);
  });

  it("says when the leg is too short", () => {
    const drop = dropToHold({ heightRake: 36, heightLevel: 36.3, at: 0, pitch: PITCH, depth: 1.5 });
    expect(drop.feasible).toBe(false);
    expect(drop.shortestLeg).toBeCloseTo(0.364, 3);
  });

  it("holds the demo stair's 36 to 42 over the nosing", () => {
    const { pitchDeg, break36_42_drop_leg_to_hold_at_0: leg } = demo.straight;
    expect(
      dropToHold({ heightRake: 36, heightLevel: 42, at: 0, pitch: pitchDeg, depth: 1.9 }).leg,
    ).toBeCloseTo(leg, 9);
  });

  it("turns a downward leg by half of 90 + θ (trade geometry: the turn from rake to straight down)", () => {
    const drop = dropToHold({ heightRake: 42, heightLevel: 36, at: 0, pitch: 30, depth: 2 });
    expect(drop.leg).toBe(-6);
    expect(drop.miterRake).toBe(60);
    // Edges of a plumb leg between cuts at 60° and 45°: 6 ± (tan 60° − tan 45°).
    expect(drop.longEdge).toBeCloseTo(6 + Math.sqrt(3) - 1, 12);
    expect(drop.shortEdge).toBeCloseTo(6 - Math.sqrt(3) + 1, 12);
  });
});
