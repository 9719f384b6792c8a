// @jscad/modeling: booleans by binary space partition, in plain JavaScript.
//
// The tube is an extruded ring; all cutters are taken away in one call. Its `generalize` (snap, simplify, triangulate)
// is not counted: it costs more and leaves the open edges.
import modeling from "@jscad/modeling";
import { reachOf, segmentsOf } from "../jobs.mjs";
import { versionOf } from "./version.mjs";

const RAD = Math.PI / 180;
const { booleans, extrusions, geometries, primitives, transforms } = modeling;

function prism(radius, length, z, angle, turn) {
  const upright = primitives.cylinder({ radius, height: length, segments: segmentsOf(radius) });
  return transforms.translateZ(z, transforms.rotateY(angle * RAD, transforms.rotateZ(turn * RAD, upright)));
}

function make(job) {
  const { branch, header, length, angle, headerTurn, bores, boreAngle } = job;
  const radius = branch.od / 2;
  const [outer, inner] = [radius, radius - branch.wall].map((r) =>
    primitives.circle({ radius: r, segments: segmentsOf(r) }),
  );
  const tube = extrusions.extrudeLinear({ height: length }, booleans.subtract(outer, inner));
  const cutters = [
    prism(header.od / 2, 2 * reachOf(job), length, angle, headerTurn),
    ...bores.map(({ z, diameter }) => prism(diameter / 2, 2 * branch.od, z, boreAngle, 0)),
  ];
  return booleans.subtract(tube, ...cutters);
}

/** Triangles of flat convex polygons, as fans. */
function read(solid) {
  const positions = [];
  for (const { vertices } of geometries.geom3.toPolygons(solid)) {
    for (let k = 2; k < vertices.length; k++) {
      positions.push(...vertices[0], ...vertices[k - 1], ...vertices[k]);
    }
  }
  return { positions: Float64Array.from(positions), triangles: null };
}

export async function load() {
  return {
    key: "jscad",
    name: "@jscad/modeling",
    version: versionOf("@jscad/modeling"),
    make,
    free: () => {},
    read,
  };
}
