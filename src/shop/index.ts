/**
 * The shop's papers: cut list and piece records, as data and as text.
 *
 * @packageDocumentation
 */
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
export {
  type LengthRecord,
  type PieceRecord,
  type PieceRecords,
  type PointRecord,
  pieceRecords,
} from "./pieces-json.js";
export type { PlateRow } from "./plate-rows.js";
export { settingOutText } from "./setting-out.js";
export { sideView } from "./side-view.js";
