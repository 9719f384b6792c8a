// Draws examples/*.svg from what `npm run demo` built: an overview of the guard on its stair, and a close-up of the break.
// Orthographic views of the real meshes; hidden parts are hidden by an exact depth order. Run after `npm run demo`.
import { readFileSync, writeFileSync } from "node:fs";
import { layOut, parseDesign } from "../dist/index.js";
import { farToNear } from "./picture/depth-order.mjs";
import { facetsOf, viewOf } from "./picture/facets.mjs";
import { paint } from "./picture/paint.mjs";
import { readModel } from "./picture/read-model.mjs";
import { stairBodies } from "./picture/stair.mjs";

const file = (path) => new URL(`../${path}`, import.meta.url);
const text = (path) => readFileSync(file(path), "utf8");

/** Lighter than on a shaded screen: a picture on paper has no glow. */
const PLATE = [0.66, 0.67, 0.69];
const COLOURS = {
  ...{ R: [0.82, 0.52, 0.25], B: [0.47, 0.62, 0.74], P: [0.5, 0.54, 0.6] },
  ...{ BP: PLATE, EP: PLATE, CP: PLATE, HF: PLATE, V: [0.42, 0.45, 0.5], H: [0.72, 0.42, 0.2] },
};
const { design, report, pieces } = built("pottery-studio");
write("examples/pottery-studio.svg", [
  picture([...stairBodies(design, report), ...pieces], {
    direction: [0.34, -1, -0.36],
    width: 1200,
    margin: 28,
  }),
]);
const loft = built("kiln-loft");
write("examples/kiln-loft.svg", [
  picture([...stairBodies(loft.design, loft.report), ...loft.pieces], {
    direction: [0.75, -0.66, -0.42],
    width: 900,
    margin: 28,
  }),
]);

/** A design, its layout's report, and the pieces that the demo wrote. */
function built(name) {
  const read = parseDesign(JSON.parse(text(`examples/${name}.json`)));
  if (!read.ok) throw new Error(`examples/${name}.json does not read`);
  const model = readModel(text(`out/${name}/model.obj`), text(`out/${name}/model.mtl`));
  return {
    design: read.value,
    report: layOut(read.value).report,
    pieces: model.map((piece) => ({
      ...piece,
      colour: COLOURS[piece.name.match(/BP|EP|CP|HF/)?.[0] ?? piece.name[0]] ?? piece.colour,
    })),
  };
}

function moved(names, [dx, dy, dz]) {
  return pieces
    .filter((piece) => names.includes(piece.name))
    .map((piece) => ({ ...piece, points: piece.points.map(([x, y, z]) => [x + dx, y + dy, z + dz]) }));
}

const rake = (report.pitch * Math.PI) / 180;
const [back, down] = [75, 85];
const node = [report.breaks[0].midDepth, 0, 1066.8 - 24.13];
const close = { direction: [0.62, -1, -0.55], width: 600, height: 520, scale: 1.75, line: 1.2, digits: 2 };
const centre = [node[0] + 20, 0, node[2] - 40];
write("examples/break-closeup.svg", [
  picture(moved(["R1", "R2", "P5"], [0, 0, 0]), { ...close, centre }),
  picture(
    [
      ...moved(["R2"], [0, 0, 0]),
      ...moved(["R1"], [-back * Math.cos(rake), 0, -back * Math.sin(rake)]),
      ...moved(["P5"], [0, 0, -down]),
    ],
    { ...close, centre },
  ),
]);

/** One view: `{ width, height, style, paths }`. */
function picture(bodies, { direction, width, height, margin = 0, scale, centre, line = 0.7, digits = 1 }) {
  const view = viewOf(direction);
  const facets = farToNear(bodies.flatMap((body) => facetsOf(body, view)));
  const frame = centre ? about(view(centre), width, height, scale) : around(facets, width, margin);
  return { ...frame, line, ...paint(facets, { ...frame, digits }) };
}

function about([x, y], width, height, scale) {
  return { width, height, place: { scale, x: width / 2 - scale * x, y: height / 2 + scale * y } };
}

function around(facets, width, margin) {
  const [xs, ys] = [0, 1].map((c) => facets.flatMap((facet) => facet.points.map((p) => p[c])));
  const [[x0, x1], [y0, y1]] = [xs, ys].map((all) => [
    all.reduce((a, b) => Math.min(a, b)),
    all.reduce((a, b) => Math.max(a, b)),
  ]);
  const scale = (width - 2 * margin) / (x1 - x0);
  const height = Math.ceil(scale * (y1 - y0) + 2 * margin);
  return { width, height, place: { scale, x: margin - scale * x0, y: margin + scale * y1 } };
}

/** Writes views side by side. */
function write(path, views) {
  const width = views.reduce((sum, view) => sum + view.width, 0);
  const height = Math.max(...views.map((view) => view.height));
  let left = 0;
  const groups = views.map((view, i) => {
    const group = `<svg id="v${i}" x="${left}" width="${view.width}" height="${view.height}">\n${view.paths}\n</svg>`;
    left += view.width;
    return group;
  });
  const [{ line }] = views;
  const style = [
    `path{stroke-linejoin:round;stroke-linecap:round;stroke-width:.6}`,
    `.e{fill:none;stroke:#23282e;stroke-width:${line}}.f{fill:none;stroke:#a9a6a0;stroke-width:${0.8 * line}}`,
    ...views.map((view, i) => view.style.replaceAll(/(?<=^|\})\./g, views.length > 1 ? `#v${i} .` : ".")),
  ].join("");
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">
<style>${style}</style>
<rect width="${width}" height="${height}" rx="10" fill="#fff"/>
${groups.join("\n")}
</svg>
`;
  writeFileSync(file(path), svg);
  console.log(`wrote ${path}, ${Math.round(svg.length / 1024)} kB`);
}
