/**
 * Meshes as one binary STL file.
 *
 * Layout: 80 bytes of header, a 32-bit count, and per triangle 50 bytes: normal and three corners as 32-bit floats and
 * a 16-bit attribute, all little-endian. The format has no unit and no names; the header says millimetres. Normals are
 * computed from the corners as rounded, so that a reader who computes them finds the same.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, hasErrors, type Result } from "../kernel/diagnostic.js";
import type { Mesh } from "../kernel/mesh/mesh.js";
import { CHORD_MM } from "../kernel/tolerance.js";
import { checkItems } from "./check-items.js";
import type { NamedMesh } from "./named.js";

/** What may be chosen. */
export interface StlBinaryOptions {
  /** Up to 71 plain ASCII characters after `unit mm; `. Default: a short caution. */
  readonly header?: string;
  /** Chord tolerance the meshes were made to, millimetres: 32-bit floats must be four times finer. Default CHORD_MM. */
  readonly tolerance?: number;
}

const HEADER_BYTES = 80;
/** Of the first triangle's record, and from one to the next. */
export const RECORD_START = 84;
export const RECORD_BYTES = 50;
/** First in every header: tells the unit, and keeps the file from beginning with `solid` as the ASCII form does. */
const HEADER_PREFIX = "unit mm; ";
const DEFAULT_HEADER = "Z up; from a computer model: measure before you cut";

/**
 * All pieces in one binary STL file, after the `edges` gate and the 32-bit check of each.
 *
 * Pieces that touch share points once a reader welds the whole file; write one file per piece for programs that need
 * closed solids.
 *
 * @returns the bytes, 84 + 50 per triangle; or the gate's diagnostics, `float32-too-coarse`, `stl-header` or
 * `nothing-to-write`. The warning `float32-flat-triangle` comes with bytes: triangles that rounding made flat
 * @example
 * ```ts
 * const file = toStlBinary([{ name: "P1", mesh }]);
 * if (file.ok) save("P1.stl", file.value);
 * ```
 */
export function toStlBinary(items: readonly NamedMesh[], options: StlBinaryOptions = {}): Result<Uint8Array> {
  const header = options.header ?? DEFAULT_HEADER;
  const found = [...checkHeader(header), ...checkItems(items, options.tolerance ?? CHORD_MM)];
  if (hasErrors(found)) return { ok: false, diagnostics: found };
  const { bytes, flat } = encodeStlBinary(items, header);
  return { ok: true, value: bytes, diagnostics: [...found, ...flatWarning(flat)] };
}

/**
 * The bytes alone, with no check: for meshes that have passed the gate already.
 *
 * @param items - closed, finite, indices in range
 * @param header - at most 71 ASCII characters; more is cut off
 * @returns the bytes, and how many triangles have no area in 32-bit floats (their normal is zero)
 */
export function encodeStlBinary(
  items: readonly NamedMesh[],
  header: string = DEFAULT_HEADER,
): { readonly bytes: Uint8Array; readonly flat: number } {
  const count = items.reduce((sum, item) => sum + item.mesh.triangles.length / 3, 0);
  const bytes = new Uint8Array(RECORD_START + RECORD_BYTES * count);
  const text = `${HEADER_PREFIX}${header}`.padEnd(HEADER_BYTES).slice(0, HEADER_BYTES);
  for (let i = 0; i < HEADER_BYTES; i++) bytes[i] = text.charCodeAt(i);
  const view = new DataView(bytes.buffer);
  view.setUint32(HEADER_BYTES, count, true);
  let offset = RECORD_START;
  let flat = 0;
  for (const { mesh } of items) {
    flat += writeRecords(view, offset, mesh);
    offset += (RECORD_BYTES * mesh.triangles.length) / 3;
  }
  return { bytes, flat };
}

/**
 * One mesh's records; a view that is told the byte order is as fast as typed arrays and right on any machine. All in one
 * loop: calls from it are not always inlined, and cost a tenth.
 *
 * @returns how many triangles have no area: their normal is zero
 */
function writeRecords(view: DataView, start: number, { positions, triangles }: Mesh): number {
  const points = roundPoints(positions);
  // Corners are copied as they lie in memory: no way through a double and back.
  const bits = new Int32Array(points.buffer);
  let at = start;
  let flat = 0;
  for (let h = 0; h < triangles.length; h += 3) {
    const a = 3 * (triangles[h] as number);
    const b = 3 * (triangles[h + 1] as number);
    const c = 3 * (triangles[h + 2] as number);
    const ax = points[a] as number;
    const ay = points[a + 1] as number;
    const az = points[a + 2] as number;
    const ux = (points[b] as number) - ax;
    const uy = (points[b + 1] as number) - ay;
    const uz = (points[b + 2] as number) - az;
    const vx = (points[c] as number) - ax;
    const vy = (points[c + 1] as number) - ay;
    const vz = (points[c + 2] as number) - az;
    const x = uy * vz - uz * vy;
    const y = uz * vx - ux * vz;
    const z = ux * vy - uy * vx;
    const long = Math.sqrt(x * x + y * y + z * z);
    const k = long > 0 ? 1 / long : 0;
    if (k === 0) flat++;
    view.setFloat32(at, x * k + 0, true);
    view.setFloat32(at + 4, y * k + 0, true);
    view.setFloat32(at + 8, z * k + 0, true);
    view.setInt32(at + 12, bits[a] as number, true);
    view.setInt32(at + 16, bits[a + 1] as number, true);
    view.setInt32(at + 20, bits[a + 2] as number, true);
    view.setInt32(at + 24, bits[b] as number, true);
    view.setInt32(at + 28, bits[b + 1] as number, true);
    view.setInt32(at + 32, bits[b + 2] as number, true);
    view.setInt32(at + 36, bits[c] as number, true);
    view.setInt32(at + 40, bits[c + 1] as number, true);
    view.setInt32(at + 44, bits[c + 2] as number, true);
    at += RECORD_BYTES;
  }
  return flat;
}

/** Rounded to 32-bit floats; adding zero after rounding turns −0 into 0, so that equal points have equal bytes. */
function roundPoints(positions: Float64Array): Float32Array {
  const points = new Float32Array(positions.length);
  for (let i = 0; i < points.length; i++) points[i] = Math.fround(positions[i] as number) + 0;
  return points;
}

function checkHeader(header: string): readonly Diagnostic[] {
  const room = HEADER_BYTES - HEADER_PREFIX.length;
  if (header.length <= room && /^[\x20-\x7e]*$/.test(header)) return [];
  return [
    diagnostic({
      code: "stl-header",
      message: `The STL header: expected at most ${room} printable ASCII characters, got ${header.length}: ${JSON.stringify(header)}.`,
      hint: "Shorten it, or leave it out for the default.",
      values: { room, got: header.length },
    }),
  ];
}

function flatWarning(flat: number): readonly Diagnostic[] {
  if (flat === 0) return [];
  return [
    diagnostic({
      code: "float32-flat-triangle",
      severity: "warning",
      message: `The STL file: ${flat} triangles have no area in 32-bit floats; expected none.`,
      hint: 'checkMesh(mesh, "full") says which piece; write it in its own frame.',
      values: { flat },
    }),
  ];
}
