/**
 * A strict reader of both STL forms, written from the layout alone: it shares no code with the writers.
 *
 * Layout (binary): 80-byte header, uint32 count, per facet 12 float32 and a uint16, little-endian. Corners with exactly
 * equal 32-bit coordinates are one vertex.
 */
import type { Mesh } from "../../src/kernel/mesh/mesh.js";

export interface StlFacet {
  readonly normal: readonly number[];
  readonly corners: readonly (readonly number[])[];
}

export interface StlSolid {
  readonly name: string;
  readonly facets: readonly StlFacet[];
}

export function readStlBinary(bytes: Uint8Array): StlSolid {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 84) throw new Error("shorter than header and count");
  const name = String.fromCharCode(...bytes.subarray(0, 80));
  if (/^\s*solid/i.test(name)) throw new Error("header reads as the ASCII form");
  const count = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * count) throw new Error(`${bytes.length} bytes for ${count} facets`);
  const facets = Array.from({ length: count }, (_, i) => {
    const triple = (k: number) => [0, 1, 2].map((c) => view.getFloat32(84 + 50 * i + 12 * k + 4 * c, true));
    if (view.getUint16(84 + 50 * i + 48, true) !== 0) throw new Error("attribute is not zero");
    return checked({ normal: triple(0), corners: [triple(1), triple(2), triple(3)] });
  });
  return { name, facets };
}

export function readStlAscii(text: string): StlSolid[] {
  const lines = text.split("\n");
  if (lines.pop() !== "") throw new Error("no line end at the end");
  const solids: StlSolid[] = [];
  let at = 0;
  const take = (pattern: RegExp): string[] => {
    const match = pattern.exec(lines[at] ?? "");
    if (!match) throw new Error(`line ${at + 1}: ${lines[at]}`);
    at++;
    return match.slice(1);
  };
  const triple = (word: string) => {
    const number = "(-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?)";
    return take(new RegExp(`^${word} ${number} ${number} ${number}$`)).map((t) => Math.fround(Number(t)));
  };
  while (at < lines.length) {
    const [name] = take(/^solid ([!-~][ -~]*)$/);
    const facets: StlFacet[] = [];
    while (lines[at]?.startsWith("facet")) {
      const normal = triple("facet normal");
      take(/^outer loop$/);
      const corners = [triple("vertex"), triple("vertex"), triple("vertex")];
      take(/^endloop$/);
      take(/^endfacet$/);
      facets.push(checked({ normal, corners }));
    }
    const [end] = take(/^endsolid (.*)$/);
    if (end !== name) throw new Error(`solid ${name} ended as ${end}`);
    solids.push({ name: name!, facets });
  }
  return solids;
}

/** Welds corners by exact equality, −0 and 0 being equal. */
export function weldFacets(facets: readonly StlFacet[]): Mesh {
  const places = new Map<string, number>();
  const positions: number[] = [];
  const triangles = facets.flatMap(({ corners }) =>
    corners.map((p) => {
      const key = p.join(",");
      if (!places.has(key)) {
        places.set(key, places.size);
        positions.push(...p);
      }
      return places.get(key)!;
    }),
  );
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Undirected edges not used exactly once in each direction, counted by brute force. */
export function countBadEdges({ triangles }: Mesh): { bad: number; total: number } {
  const uses = new Map<string, [number, number]>();
  for (let h = 0; h < triangles.length; h++) {
    const [a, b] = [triangles[h]!, triangles[h % 3 === 2 ? h - 2 : h + 1]!];
    const key = a < b ? `${a},${b}` : `${b},${a}`;
    const use = uses.get(key) ?? [0, 0];
    use[a < b ? 0 : 1]++;
    uses.set(key, use);
  }
  const bad = [...uses.values()].filter(([there, back]) => there !== 1 || back !== 1).length;
  return { bad, total: uses.size };
}

function checked(facet: StlFacet): StlFacet {
  const all = [...facet.normal, ...facet.corners.flat()];
  if (!all.every(Number.isFinite)) throw new Error("a number is not finite");
  return facet;
}
