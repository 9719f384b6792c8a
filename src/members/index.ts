/**
 * Members and sections: what is bought, how it stands, what it weighs and how stiff it is.
 *
 * @packageDocumentation
 */
export { isMaterialName, MATERIALS, type Material, type MaterialName, materialOf } from "./materials.js";
export { type Member, type MemberInput, member, PLUMB_WITHIN, type Role } from "./member.js";
export { type PlateHole, type PlateInput, type PlateRectangle, plate } from "./plate.js";
export { type MarkedHole, type PlateSizes, plateSizes } from "./plate-sizes.js";
export { type SectionProperties, sectionProperties } from "./properties.js";
export type { Section, SectionShape } from "./section.js";
export { type AngleBarInput, angleBar } from "./sections/angle.js";
export { type ChannelBarInput, channelBar } from "./sections/channel.js";
export { type CustomSectionInput, customSection, polygonLoop } from "./sections/custom.js";
export { parseSection } from "./sections/parse-section.js";
export { type RectBarInput, type RectTubeInput, rectBar, rectTube } from "./sections/rect.js";
export { roundBar, roundTube, type SectionNaming } from "./sections/round.js";
export { findStandardSection, standardSection, standardSections } from "./sections/standard.js";
