/**
 * Finds triangles of a mesh that lie back to back.
 *
 * Where two faces enclose less material than the chord tells apart, their triangles may have the same three corners and
 * face opposite ways: a flap without thickness. The two cancel: without them the mesh is closed as before.
 *
 * @packageDocumentation
 */

/**
 * Marks pairs of triangles with the same corners in opposite order.
 *
 * @param vertices - how many there are
 * @returns 1 for each triangle that is to go; null where none is
 */
export function flapsOf(triangles: Uint32Array, vertices: number): Uint8Array | null {
  const count = triangles.length / 3;
  // Triangles by their least corner, as linked lists.
  const first = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(count);
  let gone: Uint8Array | null = null;
  for (let t = 0; t < count; t++) {
    const a = triangles[3 * t] as number;
    const b = triangles[3 * t + 1] as number;
    const c = triangles[3 * t + 2] as number;
    const least = Math.min(a, b, c);
    // The corners before and after the least one.
    const before = least === a ? c : least === b ? a : b;
    const after = least === a ? b : least === b ? c : a;
    let other = first[least] as number;
    while (other >= 0) {
      const o = 3 * other;
      const k = triangles[o] === least ? 0 : triangles[o + 1] === least ? 1 : 2;
      const turned =
        triangles[o + ((k + 1) % 3)] === before && triangles[o + ((k + 2) % 3)] === after && !gone?.[other];
      if (turned) break;
      other = next[other] as number;
    }
    if (other >= 0) {
      gone ??= new Uint8Array(count);
      gone[t] = 1;
      gone[other] = 1;
    }
    next[t] = first[least] as number;
    first[least] = t;
  }
  return gone;
}
