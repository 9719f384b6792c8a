/**
 * Takes triangles out of a mesh that lie back to back.
 *
 * Where two faces enclose less material than the chord tells apart, their triangles may have the same three corners and
 * face opposite ways: a flap without thickness. The two cancel, and what is left is closed as before.
 *
 * @packageDocumentation
 */

/**
 * Removes pairs of triangles with the same corners in opposite order from both lists, in place.
 *
 * @returns how many triangles are left; `triangles` is shortened, `faceOf` holds them first
 */
export function cancelFlaps(triangles: number[], faceOf: Uint32Array, vertices: number): number {
  const count = faceOf.length;
  // Triangles by their least corner, as linked lists.
  const first = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(count);
  let gone: Uint8Array | null = null;
  const corner = (t: number, k: number): number => triangles[3 * t + k] as number;
  for (let t = 0; t < count; t++) {
    const [a, b, c] = [corner(t, 0), corner(t, 1), corner(t, 2)];
    const least = Math.min(a, b, c);
    const [p, q] = least === a ? [b, c] : least === b ? [c, a] : [a, b];
    let other = first[least] as number;
    while (other >= 0) {
      const k = corner(other, 0) === least ? 0 : corner(other, 1) === least ? 1 : 2;
      if (!gone?.[other] && corner(other, (k + 1) % 3) === q && corner(other, (k + 2) % 3) === p) break;
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
  if (!gone) return count;
  let kept = 0;
  for (let t = 0; t < count; t++) {
    if (gone[t]) continue;
    for (let k = 0; k < 3; k++) triangles[3 * kept + k] = corner(t, k);
    faceOf[kept++] = faceOf[t] as number;
  }
  triangles.length = 3 * kept;
  return kept;
}
