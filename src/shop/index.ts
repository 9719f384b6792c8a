/**
 * The shop's papers: cut list and piece records, as data and as text.
 *
 * @packageDocumentation
 */
export {
  type Assemblies,
  type Assembly,
  type AssemblyParts,
  type AssemblyReport,
  assemblies,
  longestLoose,
} from "./assemblies.js";
export { assembliesText } from "./assemblies-text.js";
export { type AssemblyBox, assemblyBox, type PlacedSolid } from "./assembly-box.js";
export { basisText } from "./basis.js";
export { buyingList } from "./buying-list.js";
export { buyingText } from "./buying-text.js";
export type {
  BoughtFastener,
  BoughtPlate,
  BoughtSection,
  BuyingList,
  BuyingOptions,
  OrderedSection,
  StockBound,
} from "./buying-types.js";
export type {
  ChangedPart,
  ChangeOptions,
  LonePiece,
  NumberChange,
  PieceChange,
  PieceChanges,
} from "./changes/change-types.js";
export { OVER_DEGREES, OVER_MM, pieceChanges } from "./changes/piece-changes.js";
export { type ChangesHeader, pieceChangesText } from "./changes/piece-changes-text.js";
export { clampStopsText, type LyingRailRow, type LyingStretch, type LyingTip } from "./clamp-stops-text.js";
export { cutList } from "./cut-list.js";
export { cutListText, type PaperHeader } from "./cut-list-text.js";
export type {
  CutEndRow,
  CutGroup,
  CutList,
  CutListOptions,
  CutRow,
  PaperUnit,
  SaddleRow,
} from "./cut-list-types.js";
export { cutOrScribeText } from "./cut-or-scribe-text.js";
export { type CarriedBox, fitsThrough, type Passage } from "./fits-through.js";
export { type MadeAlready, madeAlready, madeAlreadyText } from "./made-already.js";
export {
  type LengthRecord,
  type PieceRecord,
  type PieceRecords,
  type PointRecord,
  pieceRecords,
} from "./pieces-json.js";
export { planSurveyText } from "./plan-survey-text.js";
export type { PlateRow } from "./plate-rows.js";
export { type CornerInput, longestRound, longestWithin, rectangleFits } from "./round-corner.js";
export { settingOutText } from "./setting-out.js";
export { sideView } from "./side-view.js";
export type { SurveyPaper } from "./survey-paper.js";
export { type SheetPaper, surveySheetText } from "./survey-sheet-text.js";
export { surveyText } from "./survey-text.js";
