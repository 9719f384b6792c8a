/**
 * The kernel: exact solids over planes and cylinders. Knows nothing of rails.
 *
 * @packageDocumentation
 */
export type { Bar, Bore } from "./bar.js";
export { solidOfBar } from "./bar-solid.js";
export { CAUTION } from "./caution.js";
export type { ConicCurve } from "./curve/conic.js";
export { type Curve, type CurveDerivatives, derivatives, evaluate } from "./curve/curve.js";
export type { LineCurve } from "./curve/line.js";
export type { SaddleCurve } from "./curve/saddle.js";
export {
  type Diagnostic,
  diagnostic,
  hasErrors,
  RakewrightError,
  type Result,
  type Severity,
} from "./diagnostic.js";
export type {
  ContactSource,
  EndExpression,
  HitContact,
  MaxEnd,
  MinEnd,
  PlaneContact,
  SelectEnd,
} from "./end.js";
export {
  composeFrames,
  directionToLocal,
  directionToParent,
  type Frame,
  frameFromAxis,
  frameInLocal,
  pointToLocal,
  pointToParent,
  WORLD,
} from "./frame.js";
export * from "./length.js";
export { type MassProperties, massProperties } from "./mass.js";
export { float32Check } from "./mesh/float32.js";
export { checkMesh, type GateLevel, type GateOptions, type MeshReport } from "./mesh/gate.js";
export { type Mesh, placeMesh } from "./mesh/mesh.js";
export { type TessellateOptions, tessellate } from "./mesh/tessellate.js";
export { meshVolume } from "./mesh/volume.js";
export {
  type ArcSegment,
  circleLoop,
  type LineSegment,
  type Loop,
  loopsOf,
  pointOn,
  type Region,
  reverseLoop,
  type Segment,
} from "./region.js";
export { validateSolid } from "./rules/validate.js";
export type { Skin } from "./skin.js";
export type { Edge, EdgeUse, Face, Provenance, Solid } from "./solid.js";
export {
  type CylinderSurface,
  distanceTo,
  normalAt,
  type PlaneSurface,
  parametersOf,
  type Surface,
} from "./surface.js";
export * as tolerance from "./tolerance.js";
export type { Vec2, Vec3 } from "./vec.js";
