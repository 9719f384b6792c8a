/**
 * The export room: exact solids as STEP, meshes of pieces as STL and OBJ files. Adapters to other libraries are entries of their own.
 *
 * @packageDocumentation
 */
export type { NamedMesh } from "./named.js";
export { type ObjFiles, type ObjOptions, toObj } from "./obj.js";
export type { StepBasis, StepSchema, StepUnit } from "./step/schema.js";
export { type NamedSolid, type StepOptions, stepChunks, toStep } from "./step/to-step.js";
export { toStlAscii } from "./stl-ascii.js";
export { encodeStlBinary, type StlBinaryOptions, toStlBinary } from "./stl-binary.js";
