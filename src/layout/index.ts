/**
 * The layout room: from a design document to members and joints.
 *
 * @packageDocumentation
 */
export { type BreakInput, type BreakPoint, breakPoint, footBreak, heightNeededOverRiser } from "./break.js";
export { type BuiltGuard, buildGuard } from "./build-guard.js";
export { compromiseRail } from "./compromise.js";
export type { Design, EndDesign, LegDesign, PostDesign, RailDesign } from "./design.js";
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
export type { BarsDesign, InfillDesign, LinesDesign, PanelDesign } from "./infill-design.js";
export type { BarsInput, InfillInput, LinesInput, PanelInput } from "./infill-input.js";
export { type Layout, layOut } from "./lay-out.js";
export { type CountedStair, type Nosing, type NosingLine, nosingLine } from "./nosing-line.js";
export { parseDesign } from "./parse-design.js";
export type {
  BreakReport,
  InfillReport,
  LayoutReport,
  NosingReport,
  PostReport,
  SpacingReport,
  TopRailReport,
} from "./report-types.js";
export { designJsonSchema, designSchema } from "./schema/design-schema.js";
export { railAboveTread, stopHeight } from "./set-out.js";
