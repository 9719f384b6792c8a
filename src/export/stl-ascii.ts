/**
 * Meshes as one ASCII STL file, one `solid` per piece.
 *
 * Each number is the shortest decimal that reads back as the same 32-bit float, so that the file carries exactly what the
 * binary form does. The format has no unit and no comments; each solid's name is followed by the unit.
 *
 * @packageDocumentation
 */
import { hasErrors, type Result } from "../kernel/diagnostic.js";
import { CHORD_MM } from "../kernel/tolerance.js";
import { checkItems } from "./check-items.js";
import type { NamedMesh } from "./named.js";
import { fileNames } from "./names.js";
import { encodeStlBinary, RECORD_BYTES, RECORD_START } from "./stl-binary.js";

/**
 * All pieces in one ASCII STL file, after the `edges` gate and the 32-bit check of each.
 *
 * @param options - `tolerance`: chord tolerance the meshes were made to, millimetres. Default CHORD_MM
 * @returns the text, or the gate's diagnostics, `float32-too-coarse` or `nothing-to-write`
 * @example
 * ```ts
 * const file = toStlAscii([{ name: "P1", mesh }]);
 * if (file.ok) save("P1.stl", file.value); // "solid P1 unit_mm …"
 * ```
 */
export function toStlAscii(
  items: readonly NamedMesh[],
  options: { readonly tolerance?: number } = {},
): Result<string> {
  const diagnostics = checkItems(items, options.tolerance ?? CHORD_MM);
  if (hasErrors(diagnostics)) return { ok: false, diagnostics };
  const names = fileNames(
    items.map((item) => item.name),
    "ascii",
    "piece",
  );
  const lines: string[] = [];
  items.forEach((item, i) => {
    const name = `${names[i]} unit_mm`;
    lines.push(`solid ${name}`);
    pushFacets(lines, item);
    lines.push(`endsolid ${name}`);
  });
  return { ok: true, value: `${lines.join("\n")}\n`, diagnostics };
}

/**
 * The shortest decimal that reads back as the same 32-bit float; nine digits always do. Six digits survive a float, so
 * nothing shorter needs trying; below 2^-126, where that fails, the text may be longer than it must.
 */
export function float32Text(x: number): string {
  const rounded = Math.fround(x);
  for (let digits = 6; digits < 9; digits++) {
    const candidate = Number(rounded.toPrecision(digits));
    if (Math.fround(candidate) === rounded) return String(candidate);
  }
  return String(Number(rounded.toPrecision(9)));
}

/** The very numbers of the binary records, spelt. */
function pushFacets(lines: string[], item: NamedMesh): void {
  const { bytes } = encodeStlBinary([item]);
  const view = new DataView(bytes.buffer);
  const triple = (at: number): string =>
    [0, 4, 8].map((k) => float32Text(view.getFloat32(at + k, true))).join(" ");
  const texts: string[] = [];
  item.mesh.triangles.forEach((vertex, h) => {
    const at = RECORD_START + RECORD_BYTES * Math.floor(h / 3);
    if (h % 3 === 0) lines.push(`facet normal ${triple(at)}`, "outer loop");
    texts[vertex] ??= triple(at + 12 * (1 + (h % 3)));
    lines.push(`vertex ${texts[vertex]}`);
    if (h % 3 === 2) lines.push("endloop", "endfacet");
  });
}
