/**
 * The layout room: from a design document to members and joints.
 *
 * @packageDocumentation
 */
export { type BreakInput, type BreakPoint, breakPoint, footBreak, heightNeededOverRiser } from "./break.js";
export { type BuiltGuard, buildGuard } from "./build-guard.js";
export { compromiseRail } from "./compromise.js";
export type { Design, EndDesign, LegDesign, PostDesign, RailDesign } from "./design.js";
export { designInShop } from "./design-in-shop.js";
export type {
  DesignInput,
  EndInput,
  LegInput,
  LengthInput,
  LevelLegInput,
  LevelPostsInput,
  RailInput,
  StairLegInput,
  StairPostsInput,
  StationPostInput,
  TreadPostInput,
} from "./design-input.js";
export { type Drop, type DropInput, dropToHold } from "./drop-to-hold.js";
export { type DrilledHole, type Finished, holeFor, sleeveFor } from "./hole-for.js";
export { type Layout, layOut } from "./lay-out.js";
export { type CountedStair, type Nosing, type NosingLine, nosingLine } from "./nosing-line.js";
export { PAPERS, type PaperSize } from "./paper.js";
export { parseDesign } from "./parse-design.js";
export { parseShop } from "./parse-shop.js";
export type {
  BreakReport,
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
  type PostSeam,
  type RailSeam,
  type Remnant,
  type Shop,
  type ShopInput,
  type Turn,
  type TurnInput,
} from "./shop.js";
export { type TapeClass, tapeError } from "./tape.js";
