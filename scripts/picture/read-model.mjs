// Reads the OBJ and MTL files that `rakewright build` writes: one named mesh per piece, with its colour.
// Only what those files hold is understood: `o`, `usemtl`, `v`, and triangles as `f`.

/** [{ name, colour: [r, g, b], points: [[x, y, z]…], triangles: [[a, b, c]…] }], indices into the piece's own points. */
export function readModel(obj, mtl) {
  const colours = new Map();
  let current = "";
  for (const [word, ...rest] of lines(mtl)) {
    if (word === "newmtl") current = rest[0];
    if (word === "Kd") colours.set(current, rest.map(Number));
  }
  const pieces = [];
  let first = 1;
  let count = 0;
  for (const [word, ...rest] of lines(obj)) {
    const piece = pieces.at(-1);
    if (word === "o") {
      first = count + 1;
      pieces.push({ name: rest.join(" "), colour: [0.6, 0.6, 0.6], points: [], triangles: [] });
    } else if (word === "usemtl") piece.colour = colours.get(rest[0]) ?? piece.colour;
    else if (word === "v") {
      piece.points.push(rest.map(Number));
      count++;
    } else if (word === "f") piece.triangles.push(rest.map((corner) => Number.parseInt(corner, 10) - first));
  }
  return pieces;
}

function* lines(text) {
  for (const line of text.split("\n")) {
    const words = line.trim().split(/\s+/);
    if (words[0] !== "" && !words[0].startsWith("#")) yield words;
  }
}
