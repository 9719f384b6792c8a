/**
 * The layout room: from a design document to members and joints.
 *
 * @packageDocumentation
 */
export {
  type AsSet,
  type AsSetLeg,
  type AsSetPost,
  type Feature,
  type MadePiece,
  NOTHING_SET,
  type PostStage,
} from "./as-set/as-set.js";
export { type HeldMade, holdMade } from "./as-set/hold-made.js";
export type { MadeMisfit } from "./as-set/made-misfit.js";
export { type FeatureState, type PieceState, pieceStates } from "./as-set/piece-state.js";
export type { LayoutAssembly } from "./assemblies.js";
export { type BreakInput, type BreakPoint, breakPoint, footBreak, heightNeededOverRiser } from "./break.js";
export { type BuiltGuard, buildGuard, type SolvedAsSet, solveAsSet } from "./build-guard.js";
export { compromiseRail } from "./compromise.js";
export type {
  BreakDesign,
  Design,
  EndDesign,
  FlangeDesign,
  LegDesign,
  PostDesign,
  RailDesign,
  SpacedPosts,
  SpliceDesign,
  StairDesign,
  TurnDesign,
} from "./design.js";
export { designInShop } from "./design-in-shop.js";
export type {
  DesignInput,
  EndInput,
  FlangeInput,
  FootInput,
  HolesInput,
  LegBreakInput,
  LegInput,
  LengthInput,
  LevelLegInput,
  LevelPostsInput,
  RailInput,
  SpacingInput,
  SpliceInput,
  StairLegInput,
  StairPostsInput,
  StationPostInput,
  StepsInput,
  SubstrateInput,
  TreadPostInput,
  TurnInput,
} from "./design-input.js";
export { type Drop, type DropInput, dropToHold } from "./drop-to-hold.js";
export type { FootDesign, HoleRectangle, Substrate } from "./foot-design.js";
export type { BracketDesign, HandrailDesign, HandrailEnd, ToeBoardDesign } from "./handrail-design.js";
export type { BracketsInput, HandrailEndInput, HandrailInput, ToeBoardInput } from "./handrail-input.js";
export { type DrilledHole, type Finished, holeFor, sleeveFor } from "./hole-for.js";
export type { BarsDesign, InfillDesign, LinesDesign, PanelDesign } from "./infill-design.js";
export type { BarsInput, InfillInput, LinesInput, PanelInput } from "./infill-input.js";
export { type Layout, layOut } from "./lay-out.js";
export { measuredLine, stepLine } from "./measured-line.js";
export {
  type CountedStair,
  type Nosing,
  type NosingLine,
  nosingLine,
  type StairSteps,
  type TapedNosing,
} from "./nosing-line.js";
export { PAPERS, type PaperSize } from "./paper.js";
export { parseDesign } from "./parse-design.js";
export { parseShop } from "./parse-shop.js";
export { type PlumbLeg, plumbLeg } from "./plumb-leg.js";
export type {
  BracketReport,
  BreakReport,
  CornerReport,
  ExtensionReport,
  FlightReport,
  HandrailReport,
  InfillReport,
  LayoutReport,
  NosingReport,
  PostReport,
  SpacingReport,
  TopRailReport,
} from "./report-types.js";
export { designJsonSchema, designSchema } from "./schema/design-schema.js";
export { shopJsonSchema, shopSchema } from "./schema/shop-schema.js";
export { railAboveTread, stopHeight } from "./set-out.js";
export {
  type Access,
  DEFAULT_SHOP,
  FINISH_MM,
  type FinishKind,
  type PassageTurn,
  type PassageTurnInput,
  type PostSeam,
  type RailSeam,
  type Remnant,
  type Shop,
  type ShopInput,
} from "./shop.js";
export { parseSolved, unreadableSolved } from "./solved/parse-solved.js";
export {
  SOLVED_FORMAT,
  SOLVED_VERSION,
  type Solved,
  type SolvedInput,
  solved,
  solvedText,
} from "./solved/solved.js";
export { spacedStations } from "./spaced-stations.js";
export { adjustReadings, type SurveyUnknowns } from "./survey/adjust.js";
export type { AdjustedCoordinate, AdjustedPoint, AdjustedReading, Adjustment } from "./survey/adjustment.js";
export { type FixedCoordinate, usualDatum } from "./survey/datum.js";
export { fitNosings, type NosingFit, type PlumbPoint } from "./survey/fit-nosings.js";
export {
  type LeastSquares,
  leastSquares,
  type ResidualFunction,
  type ResidualRow,
} from "./survey/least-squares.js";
export { nextReading, type ReadingGain, splitTie, type TieSplit } from "./survey/next-reading.js";
export { covarianceOf, type Quantity, quantityOf } from "./survey/quantity.js";
export { type HeightBand, type RailBand, railBand } from "./survey/rail-band.js";
export type {
  Coordinate,
  CornerPlace,
  LandingPlace,
  Place,
  PlannedReading,
  Reading,
  StairPlace,
} from "./survey/reading.js";
export { readingSigma } from "./survey/reading-sigma.js";
export type { Suspect } from "./survey/suspects.js";
export { type TapeClass, tapeError } from "./tape.js";
