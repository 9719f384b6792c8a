/**
 * Joints: who meets where, who yields, how each end is cut, and the shop's numbers for it.
 *
 * @packageDocumentation
 */
export {
  type ArrisMarks,
  arrisMarks,
  type CompoundMiter,
  type CompoundMiterInput,
  compoundMiter,
  type SawCut,
  sawCut,
} from "./compound-miter.js";
export { type ContactFit, type FitPoint, type FitRange, fitOf, fitsOf } from "./contact-fit.js";
export type {
  BoreJoint,
  CopeJoint,
  CutDirection,
  CutJoint,
  Joint,
  JointRules,
  MemberEnd,
  MiterJoint,
  ThroughJoint,
} from "./joint.js";
export { massOf, type PieceMass } from "./mass-of.js";
export { type Miter, type MiterInput, miter } from "./miter.js";
export type {
  ArrisMark,
  BoreMark,
  Contact,
  CopeNumbers,
  EndCut,
  MeasuredLength,
  NamedPoint,
  Piece,
  PieceBore,
  PieceLengths,
  SawSetting,
  ShopPose,
} from "./piece.js";
export {
  type PlaneCutInput,
  type PlaneCutOrdinates,
  type PlumbCut,
  type PlumbCutInput,
  planeCutOrdinates,
  plumbCut,
} from "./plane-cut.js";
export { type Saddle, type SaddleInput, type SaddleStation, saddle } from "./saddle.js";
export { solidOf } from "./solid-of.js";
export { solveJoints } from "./solve.js";
export type { HeldPiece, JointModel, JointSolution } from "./solve-types.js";
