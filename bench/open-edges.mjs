// How many edges of a mesh are not used once in each direction.
//
// An indexed mesh is taken at its word. A soup of triangles is welded first, points within WELD of each other becoming
// one, and triangles that vanish by that are left out: a gentle reading, for formats that keep no indices.

const WELD = 1e-4;

/** Triangles as vertex numbers; points of a soup within WELD are one. */
export function weld({ positions, triangles }) {
  if (triangles) return triangles;
  const places = new Map();
  const cellOf = (k) => Math.floor(positions[k] / WELD);
  const ids = new Uint32Array(positions.length / 3);
  for (let v = 0; v < ids.length; v++) {
    const cell = [cellOf(3 * v), cellOf(3 * v + 1), cellOf(3 * v + 2)];
    const near = nearest(positions, v, places, cell);
    ids[v] = near ?? v;
    if (near !== undefined) continue;
    const key = cell.join();
    places.set(key, [...(places.get(key) ?? []), v]);
  }
  const kept = [];
  for (let h = 0; h < ids.length; h += 3) {
    const [a, b, c] = [ids[h], ids[h + 1], ids[h + 2]];
    if (a !== b && b !== c && c !== a) kept.push(a, b, c);
  }
  return Uint32Array.from(kept);
}

function nearest(positions, v, places, [x, y, z]) {
  for (let i = x - 1; i <= x + 1; i++) {
    for (let j = y - 1; j <= y + 1; j++) {
      for (let k = z - 1; k <= z + 1; k++) {
        for (const w of places.get(`${i},${j},${k}`) ?? []) {
          const apart = Math.hypot(...[0, 1, 2].map((n) => positions[3 * v + n] - positions[3 * w + n]));
          if (apart <= WELD) return w;
        }
      }
    }
  }
  return undefined;
}

/** Directed edges whose opposite is not there exactly once. */
export function openEdges(mesh) {
  const triangles = weld(mesh);
  const uses = new Map();
  for (let h = 0; h < triangles.length; h += 3) {
    for (let k = 0; k < 3; k++) {
      const key = `${triangles[h + k]},${triangles[h + ((k + 1) % 3)]}`;
      uses.set(key, (uses.get(key) ?? 0) + 1);
    }
  }
  let open = 0;
  for (const [key, count] of uses) {
    const [from, to] = key.split(",");
    if (count !== 1 || uses.get(`${to},${from}`) !== 1) open++;
  }
  return open;
}
