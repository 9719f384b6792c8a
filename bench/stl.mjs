// Binary STL: the same triangles through three writers. The package's encoder alone, and with its gate in front; three's
// exporter over one geometry; the serialiser of JSCAD over one geom3. Megabytes of file a second.

import modeling from "@jscad/modeling";
import jscadSerializer from "@jscad/stl-serializer";
import { BufferAttribute, BufferGeometry, Mesh } from "three";
import { STLExporter } from "three/addons/exporters/STLExporter.js";
import { trianglesOf } from "./deviation.mjs";
import { posts } from "./jobs.mjs";
import { interleave } from "./measure.mjs";
import { buildRows } from "./ours.mjs";

/** Writers' throughput on the meshes of so many posts. */
export function measureStl(lib, count, options) {
  const items = [];
  buildRows(lib, posts(count), (mesh, piece) => items.push({ name: piece.id, mesh }));
  const corners = items.flatMap(({ mesh }) => trianglesOf(mesh));
  const megabytes = (84 + 50 * corners.length) / 1e6;

  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(corners.flat(2)), 3));
  const model = new Mesh(geometry);
  const exporter = new STLExporter();
  const geom3 = modeling.geometries.geom3.create(
    corners.map((triangle) => modeling.geometries.poly3.create(triangle)),
  );

  const tasks = [
    { key: "ours", run: () => lib.encodeStlBinary(items) },
    { key: "ours-gate", run: () => lib.toStlBinary(items) },
    { key: "three", run: () => exporter.parse(model, { binary: true }) },
    { key: "jscad", run: () => jscadSerializer.serialize({ binary: true }, geom3) },
  ];
  const sizes = tasks.map(({ run }) => sizeOf(run()));
  if (sizes.some((size) => size !== sizes[0])) throw new Error(`The writers' files differ in size: ${sizes}`);
  const times = interleave(tasks, options);
  const speed = (t) => ({ best: (1000 * megabytes) / t.min, median: (1000 * megabytes) / t.median });
  return {
    megabytes,
    triangles: corners.length,
    speeds: Object.fromEntries(Object.entries(times).map(([key, t]) => [key, speed(t)])),
  };
}

function sizeOf(file) {
  if (Array.isArray(file)) return file.reduce((sum, part) => sum + part.byteLength, 0);
  if (file.ok !== undefined) return file.value.byteLength;
  return (file.bytes ?? file).byteLength;
}
