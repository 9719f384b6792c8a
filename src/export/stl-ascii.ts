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
import { setNormal } from "./stl-binary.js";

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

function pushFacets(lines: string[], { mesh }: NamedMesh): void {
  const points = Float32Array.from(mesh.positions);
  const normal = new Float32Array(3);
  const texts: string[] = [];
  for (let v = 0; v < points.length; v += 3) texts.push(tripleText(points, v));
  for (let h = 0; h < mesh.triangles.length; h += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => mesh.triangles[h + k] as number) as [number, number, number];
    setNormal(normal, points, 3 * a, 3 * b, 3 * c);
    lines.push(`facet normal ${tripleText(normal, 0)}`, "outer loop");
    lines.push(`vertex ${texts[a]}`, `vertex ${texts[b]}`, `vertex ${texts[c]}`, "endloop", "endfacet");
  }
}

function tripleText(values: Float32Array, at: number): string {
  return [0, 1, 2].map((k) => float32Text(values[at + k] as number)).join(" ");
}
