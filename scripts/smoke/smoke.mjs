// Runs inside the consumer's folder: imports every entry by name and uses two plain functions of rakewright/joints.
// Checks (closed forms): a square corner of equal depths is sawn at 45; equal tubes at 90 have saddle ordinates R|cos phi|.
import assert from "node:assert/strict";
import { miter, saddle } from "rakewright/joints";

for (const entry of process.argv.slice(2)) {
  const names = Object.keys(await import(entry));
  assert.ok(names.length > 0, `${entry} exports nothing`);
  assert.ok(!names.includes("default"), `${entry} has a default export`);
}
const corner = miter({ angle: 90, depths: [40, 40] });
assert.ok(Math.abs(Math.abs(corner.first.miter) - 45) < 1e-9);
const { stations } = saddle({
  branch: { od: 42.4, wall: 3.2 },
  header: { od: 42.4 },
  angle: 90,
  stations: 8,
});
assert.ok(stations.length >= 8);
for (const { phi, outer } of stations) {
  assert.ok(
    Math.abs(outer - 21.2 * Math.abs(Math.cos((phi * Math.PI) / 180))) < 1e-6,
    `outer at ${phi}: ${outer}`,
  );
}
console.log(`${process.argv.length - 2} entries imported`);
