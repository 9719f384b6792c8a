/**
 * What every mesh writer takes: a mesh with the name of its piece, and how it should look.
 *
 * @packageDocumentation
 */
import type { Mesh } from "../kernel/mesh/mesh.js";

/** One piece to write. */
export interface NamedMesh {
  /** Any text, usually the piece's mark; writers make it fit their format. */
  readonly name: string;
  /** Closed and oriented, millimetres, Z up. */
  readonly mesh: Mesh;
  /** Any text, e.g. the role or the finish; pieces with the same material and colour share an entry. */
  readonly material?: string;
  /** sRGB red, green, blue, each 0 to 1. */
  readonly colour?: readonly [number, number, number];
}
