/**
 * A strict reader of the part of OBJ and MTL that a plain triangle mesh needs; it shares no code with the writer.
 */
import type { Mesh } from "../../src/kernel/mesh/mesh.js";

export interface ObjObject {
  readonly name: string;
  readonly material: string;
  readonly mesh: Mesh;
}

/** Objects with their own vertices, comments, and the libraries named. */
export function readObj(text: string): { objects: ObjObject[]; comments: string[]; libraries: string[] } {
  const vertices: number[][] = [];
  const comments: string[] = [];
  const libraries: string[] = [];
  const objects: { name: string; material: string; faces: number[][]; firstVertex: number }[] = [];
  for (const line of text.split("\n")) {
    const [word, ...rest] = line.split(" ");
    const current = objects.at(-1);
    if (line.startsWith("#")) comments.push(line);
    else if (word === "mtllib") libraries.push(one(rest));
    else if (word === "o")
      objects.push({ name: one(rest), material: "", faces: [], firstVertex: vertices.length });
    else if (word === "usemtl" && current) current.material = one(rest);
    else if (word === "v") vertices.push(numbers(rest, 3));
    else if (word === "f" && current) current.faces.push(numbers(rest, 3));
    else if (line !== "") throw new Error(`unexpected line: ${line}`);
  }
  return {
    comments,
    libraries,
    objects: objects.map(({ name, material, faces, firstVertex }, i) => {
      const end = objects[i + 1]?.firstVertex ?? vertices.length;
      const indices = faces.flat().map((n) => n - 1);
      if (!indices.every((n) => Number.isInteger(n) && n >= firstVertex && n < end))
        throw new Error("face out of range");
      const positions = Float64Array.from(vertices.slice(firstVertex, end).flat());
      return {
        name,
        material,
        mesh: { positions, triangles: Uint32Array.from(indices, (n) => n - firstVertex) },
      };
    }),
  };
}

/** Diffuse colour by material name. */
export function readMtl(text: string): Map<string, number[]> {
  const colours = new Map<string, number[]>();
  let current = "";
  for (const line of text.split("\n")) {
    const [word, ...rest] = line.split(" ");
    if (word === "newmtl") {
      current = one(rest);
      if (colours.has(current)) throw new Error(`material ${current} twice`);
      colours.set(current, []);
    } else if (word === "Kd") colours.set(current, numbers(rest, 3));
    else if (line !== "" && word !== "#" && word !== "illum") throw new Error(`unexpected line: ${line}`);
  }
  return colours;
}

function one(rest: readonly string[]): string {
  if (rest.length !== 1 || rest[0] === "") throw new Error(`expected one name, got ${JSON.stringify(rest)}`);
  return rest[0]!;
}

function numbers(rest: readonly string[], count: number): number[] {
  const values = rest.map(Number);
  if (values.length !== count || rest.includes("") || !values.every(Number.isFinite))
    throw new Error(rest.join(" "));
  return values;
}
