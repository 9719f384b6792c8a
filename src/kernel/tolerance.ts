/**
 * Every tolerance of the library, with its unit, why it has this size, and who uses it.
 *
 * Doubles carry 16 digits: at 10 m (10⁴ mm) one rounding is 2·10⁻¹² mm, and a chain of a hundred operations stays below
 * 10⁻⁹ mm. What a shop can measure starts at 10⁻² mm. Decisions are taken in the empty decades between.
 *
 * @packageDocumentation
 */

/** mm. Two stations of a section nearer than this are one: 'equal diameters' means this. Users: contacts (snapping). */
export const STATION_MM = 1e-6;

/** mm. A jump between neighbouring parts of an end larger than this is a step, not rounding. Users: end boundary. */
export const STEP_MM = 1e-5;

/** mm. A boundary point may be this far from a surface it lies on. Users: rules, ridges. Snapping moves surfaces by up to STATION_MM. */
export const ON_SURFACE_MM = 2e-6;

/** mm. Brackets R ± h − r of a saddle below this are zero: a hundred roundings at 10⁴ mm. Users: saddle, end boundary, sheet corners. */
export const BRACKET_MM = 1e-10;

/**
 * mm. A straight side that moves less than this across a round header lies on one of its rulings: the sagitta c²/8R stays
 * below 10⁻⁹ mm, and the ellipse in its place would be so long that its own rounding is no less. Users: side edge.
 */
export const RULING_ACROSS_MM = 3e-4;

/** mm. How far inside the section a label is read, so that a ridge along a side is on one side of it. Users: end boundary, ridges. */
export const INSIDE_MM = 1e-6;

/** Dimensionless. Sine below which two directions are parallel: 10⁻⁹ rad turns 1 m by 10⁻⁶ mm. Users: everything with axes. */
export const PARALLEL_SINE = 1e-9;

/** mm. Material shorter than this along the axis is no piece. Users: bar solid. */
export const SHORTEST_FIBRE_MM = 1e-3;

/** Relative. Panels of an edge integral are halved until two rules agree to this: the rounding of a dozen terms. Users: mass. */
export const INTEGRAL_RELATIVE = 2e-14;

/** mm. Default nodes: ends nearer than this meet. A tape's finest mark is 0.4 mm; drawings agree to 0.01 mm. Users: joints. */
export const NODE_MM = 0.1;

/** mm. Default chord of meshes: below what a print or a screen shows at 1:1. Users: tessellate. */
export const CHORD_MM = 0.05;
