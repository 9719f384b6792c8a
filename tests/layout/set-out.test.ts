/** Rail above tread and stop height against shop cases a23 and a24; handbook case a26: at the riser 43.5 in. */
import { describe, expect, it } from "vitest";
import { railAboveTread, stopHeight } from "../../src/layout/set-out.js";
import { shopCase } from "./cases.js";

const PITCH = (Math.atan2(7.5, 10.5) * 180) / Math.PI;

describe("railAboveTread", () => {
  it("is case a24", () => {
    const { inputs, near } = shopCase("a24");
    const behindNosing = inputs.post_centre_behind_nosing!;
    const rail = railAboveTread({ height: inputs.height!, behindNosing, pitch: PITCH, depth: 1.5 });
    near("rail_top_above_tread_at_post_centre", rail.top);
    near("underside_1p5_rail", rail.underside);
  });

  it("is a riser more at the back of the tread", () => {
    expect(railAboveTread({ height: 36, behindNosing: 10.5, pitch: PITCH }).top).toBeCloseTo(43.5, 12);
  });
});

describe("stopHeight", () => {
  it("is case a23: the rail rests on the downhill corner", () => {
    const { inputs, near } = shopCase("a23");
    const stop = stopHeight({
      height: inputs.height_rake_top!,
      depth: inputs.depth!,
      pitch: PITCH,
      from: inputs.stop_downhill_x!,
      to: inputs.stop_uphill_x!,
      treadZ: inputs.tread_z!,
    });
    near("stop_top_above_tread", stop.top);
    near("underside_at_uphill", stop.undersideUphill);
  });
});
