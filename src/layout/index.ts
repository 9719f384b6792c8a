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
export type {
  AsSetInput,
  AsSetLegInput,
  AsSetPostInput,
  MadeInput,
  MadeWord,
} from "./as-set/as-set-input.js";
export { type HeldMade, holdMade } from "./as-set/hold-made.js";
export type { MadeMisfit } from "./as-set/made-misfit.js";
export { parseAsSet } from "./as-set/parse-as-set.js";
export { type FeatureState, type PieceState, pieceStates } from "./as-set/piece-state.js";
export type { LayoutAssembly } from "./assemblies.js";
export { type BuiltGuard, buildGuard, type SolvedAsSet, solveAsSet } from "./build-guard.js";
export type {
  BreakDesign,
  Design,
  EndDesign,
  FlangeDesign,
  LegDesign,
  PlanDesign,
  PlanTaken,
  PostDesign,
  RailDesign,
  SpacedPosts,
  SpliceDesign,
  StairDesign,
  TurnDesign,
} from "./document/design.js";
export { designInShop } from "./document/design-in-shop.js";
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
} from "./document/design-input.js";
export type { FootDesign, HoleRectangle, Substrate } from "./document/foot-design.js";
export type {
  BracketDesign,
  HandrailDesign,
  HandrailEnd,
  ToeBoardDesign,
} from "./document/handrail-design.js";
export type {
  BracketsInput,
  HandrailEndInput,
  HandrailInput,
  ToeBoardInput,
} from "./document/handrail-input.js";
export type { BarsDesign, InfillDesign, LinesDesign, PanelDesign } from "./document/infill-design.js";
export type { BarsInput, InfillInput, LinesInput, PanelInput } from "./document/infill-input.js";
export { PAPERS, type PaperSize } from "./document/paper.js";
export { parseDesign } from "./document/parse-design.js";
export { parseShop } from "./document/parse-shop.js";
export { asSetJsonSchema, asSetSchema } from "./document/schema/as-set-schema.js";
export { designJsonSchema, designSchema } from "./document/schema/design-schema.js";
export { shopJsonSchema, shopSchema } from "./document/schema/shop-schema.js";
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
} from "./document/shop.js";
export type {
  PlanReadingInput,
  PlanSurveyInput,
  StairReadingInput,
  StairSurveyInput,
  SurveyedLength,
  SurveyedTurn,
  SurveyTermsInput,
} from "./document/survey-input.js";
export { type DrilledHole, type Finished, holeFor, sleeveFor } from "./hole-for.js";
export { type Layout, layOut } from "./lay-out.js";
export {
  type BreakInput,
  type BreakPoint,
  breakPoint,
  footBreak,
  heightNeededOverRiser,
} from "./rails/break.js";
export { compromiseRail } from "./rails/compromise.js";
export { type Drop, type DropInput, dropToHold } from "./rails/drop-to-hold.js";
export { type PlumbLeg, plumbLeg } from "./rails/plumb-leg.js";
export { type DesignSurveys, readSurveys } from "./read-surveys.js";
export type {
  AsSetReport,
  BracketReport,
  BreakReport,
  CornerReport,
  ExtensionReport,
  FlightReport,
  FlightSurveyReport,
  HandrailReport,
  InfillReport,
  LayoutReport,
  NosingReport,
  PlanSurveyReport,
  PostReport,
  SpacingReport,
  SurveyFacts,
  TopRailReport,
} from "./report-types.js";
export { railAboveTread, stopHeight } from "./set-out.js";
export { measuredLine, stepLine } from "./site/measured-line.js";
export {
  type CountedStair,
  type Nosing,
  type NosingLine,
  nosingLine,
  type StairSteps,
  type TapedNosing,
} from "./site/nosing-line.js";
export { spacedStations } from "./site/spaced-stations.js";
export { parseSolved, unreadableSolved } from "./solved/parse-solved.js";
export {
  SOLVED_FORMAT,
  SOLVED_VERSION,
  type Solved,
  type SolvedInput,
  solved,
  solvedText,
} from "./solved/solved.js";
export type { LaidRailReport, StopReport } from "./stops.js";
export { adjustReadings, type SurveyUnknowns } from "./survey/adjust.js";
export type { KeptOptions, KeptSurvey } from "./survey/adjust-kept.js";
export type { AdjustedCoordinate, AdjustedPoint, AdjustedReading, Adjustment } from "./survey/adjustment.js";
export { type Candidate, candidatesOn, sheetId } from "./survey/candidates.js";
export { type FixedCoordinate, usualDatum } from "./survey/datum.js";
export { fitNosings, type NosingFit, type PlumbPoint } from "./survey/fit-nosings.js";
export {
  type LeastSquares,
  leastSquares,
  type ResidualFunction,
  type ResidualRow,
} from "./survey/least-squares.js";
export { nextReading, type ReadingGain, splitTie, type TieSplit } from "./survey/next-reading.js";
export { planSurveyReport } from "./survey/plan-report.js";
export {
  type PlanFigure,
  type PlanReading,
  planLength,
  planTurn,
  surveyPlan,
} from "./survey/plan-survey.js";
export { covarianceOf, type Quantity, quantityOf } from "./survey/quantity.js";
export { type HeightBand, type RailBand, railBand } from "./survey/rail-band.js";
export type {
  Coordinate,
  CornerPlace,
  LandingPlace,
  OffsetPlace,
  Place,
  PlannedReading,
  PlanPlace,
  Reading,
  StairPlace,
} from "./survey/reading.js";
export { readingSigma } from "./survey/reading-sigma.js";
export { type StairSurvey, surveyStair } from "./survey/stair-survey.js";
export { surveyReport } from "./survey/survey-report.js";
export type {
  LeftOutRow,
  PlanReport,
  ReadingRow,
  SurveyedCorner,
  SurveyedNosing,
  SurveyReport,
  SuspectRow,
} from "./survey/survey-report-types.js";
export {
  landingSheet,
  type SheetReading,
  type SurveySheet,
  sheetReadings,
  surveySheet,
} from "./survey/survey-sheet.js";
export type { LineFit, SurveyTerms } from "./survey/survey-terms.js";
export type { Suspect } from "./survey/suspects.js";
export { type TapeClass, tapeError } from "./tape.js";
export {
  type CutDecision,
  type CutRule,
  type DecisionStyle,
  decisionReason,
  type EndDecision,
} from "./uncertainty/end-decision.js";
export {
  type EndUncertainty,
  type PieceUncertainty,
  pieceUncertainties,
} from "./uncertainty/piece-uncertainty.js";
export type { LaidCase, Unknown } from "./uncertainty/unknown.js";
export { type Unknowns, unknownsOf } from "./uncertainty/unknowns.js";
