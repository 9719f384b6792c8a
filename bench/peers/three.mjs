// three-bvh-csg on three: booleans of three's own geometries, fast by a bounding volume tree.
//
// Its best use here: position is the only attribute, no groups, the tube is turned on a lathe (no boolean needed) and all
// cutters, which do not overlap, go in one brush, so that there is one evaluation a job. It comes twice: as it is by
// default, and `exact`, clipping by constrained triangulation (`useCDTClipping`), slower and closed.
import { CylinderGeometry, LatheGeometry, Matrix4, Vector2 } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import { Brush, Evaluator, SUBTRACTION } from "three-bvh-csg";
import { reachOf, segmentsOf } from "../jobs.mjs";
import { versionOf } from "./version.mjs";

const RAD = Math.PI / 180;

/** Positions alone: fewer attributes to interpolate. */
function bare(geometry) {
  geometry.deleteAttribute("uv");
  geometry.deleteAttribute("normal");
  geometry.clearGroups();
  return geometry;
}

/** A prism about +z with its first corner at +x turned by `turn`, then leant from +z towards +x. */
function prism(radius, length, z, angle, turn) {
  const geometry = bare(new CylinderGeometry(radius, radius, length, segmentsOf(radius)));
  // three's cylinder stands along y with its first corner at +z.
  const place = new Matrix4()
    .makeTranslation(0, 0, z)
    .multiply(new Matrix4().makeRotationY(angle * RAD))
    .multiply(new Matrix4().makeRotationZ(turn * RAD))
    .multiply(new Matrix4().makeRotationX(Math.PI / 2));
  return geometry.applyMatrix4(place);
}

function tube({ od, wall }, length) {
  const [outer, inner] = [od / 2, od / 2 - wall];
  const rim = [
    [inner, 0],
    [outer, 0],
    [outer, length],
    [inner, length],
    [inner, 0],
  ].map(([x, y]) => new Vector2(x, y));
  const geometry = bare(new LatheGeometry(rim, segmentsOf(outer)));
  return geometry.applyMatrix4(new Matrix4().makeRotationX(Math.PI / 2));
}

const brushOf = (geometry) => {
  const brush = new Brush(geometry);
  brush.updateMatrixWorld();
  return brush;
};

/** Corners of the triangles drawn: the result's index joins few of them, and its arrays may be longer than what is drawn. */
function read({ attributes, index, drawRange }) {
  const { array } = attributes.position;
  const total = index ? index.count : attributes.position.count;
  const count = Math.min(total, drawRange.count);
  const positions = new Float64Array(3 * count);
  for (let k = 0; k < count; k++) {
    const v = index ? index.getX(k) : k;
    for (let n = 0; n < 3; n++) positions[3 * k + n] = array[3 * v + n];
  }
  return { positions, triangles: null };
}

export async function load({ exact = false } = {}) {
  const evaluator = new Evaluator();
  evaluator.attributes = ["position"];
  evaluator.useGroups = false;
  evaluator.useCDTClipping = exact;
  const make = (job) => {
    const { branch, header, length, angle, headerTurn, bores, boreAngle } = job;
    const cutters = [
      prism(header.od / 2, 2 * reachOf(job), length, angle, headerTurn),
      ...bores.map(({ z, diameter }) => prism(diameter / 2, 2 * branch.od, z, boreAngle, 0)),
    ];
    const cutter = cutters.length === 1 ? cutters[0] : mergeGeometries(cutters);
    return evaluator.evaluate(brushOf(tube(branch, length)), brushOf(cutter), SUBTRACTION).geometry;
  };
  return {
    key: exact ? "three-exact" : "three",
    name: exact ? "three-bvh-csg, CDT" : "three-bvh-csg",
    version: versionOf("three-bvh-csg"),
    make,
    free: (geometry) => geometry.dispose(),
    read,
  };
}
