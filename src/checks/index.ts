/**
 * The checks room: pieces held against what a shop can do. Numbers, assumptions and limits; limits are inputs.
 *
 * @packageDocumentation
 */
export { cutOrScribe, type FitOptions, type SolvedGuard } from "./cut-or-scribe.js";
export { type DrillPlace, drillRoom } from "./drill-room.js";
export { footDrillPlaces } from "./foot-drill.js";
export { COVERAGE, type FitAllowed, leaveLong } from "./leave-long.js";
export { type LyingRail, type RailSag, railSag, STANDARD_GRAVITY } from "./rail-sag.js";
export { type RailTip, railTips } from "./rail-tips.js";
export { type LyingBay, type RailAsLaid, railsAsLaid } from "./rails-as-laid.js";
export { sawLimits } from "./saw-limits.js";
export { type SawWay, sawWays } from "./saw-ways.js";
export { type Stiffness, stiffnessOf } from "./stiffness.js";
