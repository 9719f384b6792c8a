/**
 * Meshes as a Wavefront OBJ file and its material library.
 *
 * One object `o` per piece; coordinates are the shortest decimals that read back as the same doubles, so nothing is
 * lost. Faces count vertices from 1 through the whole file. The format has no unit: a comment says millimetres and Z up.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../kernel/caution.js";
import { hasErrors, type Result } from "../kernel/diagnostic.js";
import { checkItems } from "./check-items.js";
import type { NamedMesh } from "./named.js";
import { fileNames } from "./names.js";

/** What may be chosen. */
export interface ObjOptions {
  /** File name under which the material library will stand beside the OBJ. Default `guard.mtl`. */
  readonly mtlName?: string;
}

/** The two files' texts. */
export interface ObjFiles {
  readonly obj: string;
  readonly mtl: string;
}

const DEFAULT_MATERIAL = "steel";
/** sRGB of bare mill-finish steel; a look, not a property. */
const DEFAULT_COLOUR = [0.6, 0.62, 0.64] as const;

/**
 * All pieces as one OBJ file with its MTL, after the `edges` gate of each.
 *
 * @returns both texts, or the gate's diagnostics, `colour-out-of-range` or `nothing-to-write`
 * @example
 * ```ts
 * const files = toObj([{ name: "P1", mesh, material: "post", colour: [0.2, 0.4, 0.8] }], { mtlName: "stair.mtl" });
 * if (files.ok) save("stair.obj", files.value.obj);
 * ```
 */
export function toObj(items: readonly NamedMesh[], options: ObjOptions = {}): Result<ObjFiles> {
  const diagnostics = checkItems(items);
  if (hasErrors(diagnostics)) return { ok: false, diagnostics };
  const palette = paletteOf(items);
  const [library = ""] = fileNames([options.mtlName ?? "guard.mtl"], "unicode", "guard.mtl");
  const lines = [...HEAD, `mtllib ${library}`];
  const names = fileNames(
    items.map((item) => item.name),
    "unicode",
    "piece",
  );
  let base = 1;
  items.forEach((item, i) => {
    lines.push(`o ${names[i]}`, `usemtl ${palette.get(lookOf(item))?.name}`);
    base = pushMesh(lines, item, base);
  });
  const mtl = [...HEAD, ...[...palette.values()].flatMap(materialLines)];
  return { ok: true, value: { obj: `${lines.join("\n")}\n`, mtl: `${mtl.join("\n")}\n` }, diagnostics };
}

const HEAD = ["# Rakewright. Units: millimetres. Axes: right-handed, Z up.", `# ${CAUTION}`];

type Material = { readonly name: string; readonly colour: readonly [number, number, number] };

/** One material per pair of material name and colour, in the order of first use. */
function paletteOf(items: readonly NamedMesh[]): ReadonlyMap<string, Material> {
  const looks = new Map(items.map((item) => [lookOf(item), item]));
  const names = fileNames(
    [...looks.values()].map((item) => item.material ?? DEFAULT_MATERIAL),
    "unicode",
    DEFAULT_MATERIAL,
  );
  return new Map(
    [...looks].map(([look, item], i) => [
      look,
      { name: names[i] as string, colour: item.colour ?? DEFAULT_COLOUR },
    ]),
  );
}

function lookOf({ material, colour }: NamedMesh): string {
  return JSON.stringify([material ?? DEFAULT_MATERIAL, colour ?? DEFAULT_COLOUR]);
}

/** Diffuse colour only: `illum 1` is plain shading without highlights. */
function materialLines({ name, colour }: Material): readonly string[] {
  return [`newmtl ${name}`, `Kd ${colour.join(" ")}`, "illum 1"];
}

/** Appends a mesh's vertices and faces; returns the number of the next free vertex. */
function pushMesh(lines: string[], { mesh }: NamedMesh, base: number): number {
  const { positions: p, triangles: t } = mesh;
  for (let i = 0; i < p.length; i += 3) lines.push(`v ${p[i]} ${p[i + 1]} ${p[i + 2]}`);
  for (let h = 0; h < t.length; h += 3) {
    lines.push(`f ${base + (t[h] as number)} ${base + (t[h + 1] as number)} ${base + (t[h + 2] as number)}`);
  }
  return base + p.length / 3;
}
