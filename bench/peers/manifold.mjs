// manifold-3d: mesh booleans in WebAssembly, two-manifold by promise.
//
// The tube is an extruded ring (no boolean needed), the cutters prisms; one n-ary difference takes them all away, which is
// its fastest way (it joins the cutters first where they do not overlap). Objects live on the WebAssembly heap and have to
// be deleted: the time of that counts, as a program that does not do it runs out of memory.
import init from "manifold-3d";
import { reachOf, segmentsOf } from "../jobs.mjs";
import { versionOf } from "./version.mjs";

export async function load() {
  const kernel = await init();
  kernel.setup();
  const { Manifold, CrossSection } = kernel;

  /** A prism with the section's corners from angle `turn`, its axis through (0, 0, z) at an angle from +z. */
  const prism = (radius, length, z, angle, turn) => {
    const upright = Manifold.cylinder(length, radius, radius, segmentsOf(radius), true);
    const round = upright.rotate([0, 0, turn]);
    const leaning = round.rotate([0, angle, 0]);
    const placed = leaning.translate([0, 0, z]);
    for (const m of [upright, round, leaning]) m.delete();
    return placed;
  };

  const make = (job) => {
    const { branch, header, length, angle, headerTurn, bores, boreAngle } = job;
    const radius = branch.od / 2;
    const [outer, inner] = [radius, radius - branch.wall].map((r) => CrossSection.circle(r, segmentsOf(r)));
    const ring = CrossSection.difference(outer, inner);
    const tube = Manifold.extrude(ring, length);
    const cutters = [
      prism(header.od / 2, 2 * reachOf(job), length, angle, headerTurn),
      ...bores.map(({ z, diameter }) => prism(diameter / 2, 2 * branch.od, z, boreAngle, 0)),
    ];
    const solid = Manifold.difference([tube, ...cutters]);
    const mesh = solid.getMesh();
    for (const m of [outer, inner, ring, tube, ...cutters, solid]) m.delete();
    return mesh;
  };

  return {
    key: "manifold",
    name: "manifold-3d",
    version: versionOf("manifold-3d"),
    make,
    free: () => {},
    read: (mesh) => ({ positions: Float64Array.from(mesh.vertProperties), triangles: mesh.triVerts }),
  };
}
