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
export { type BreakInput, type BreakPoint, breakPoint, footBreak, heightNeededOverRiser } from "./break.js";
export { type BuiltGuard, buildGuard, type SolvedAsSet, solveAsSet } from "./build-guard.js";
export { compromiseRail } from "./compromise.js";
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
export { asSetJsonSchema, asSetSchema } from "./schema/as-set-schema.js";
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
export type {
  PlanReadingInput,
  PlanSurveyInput,
  StairReadingInput,
  StairSurveyInput,
  SurveyedLength,
  SurveyedTurn,
  SurveyTermsInput,
} from "./survey-input.js";
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
