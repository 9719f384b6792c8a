import type { AnyMesh } from "./deviation.mjs";

export function weld(mesh: AnyMesh): Uint32Array;
export function openEdges(mesh: AnyMesh): number;
