/**
 * Every tolerance of the library, with its unit, why it has this size, and who uses it.
 *
 * Doubles carry 16 digits: at 10 m (10⁴ mm) one rounding is 2·10⁻¹² mm, and a chain of a hundred operations stays below
 * 10⁻⁹ mm. What a shop can measure starts at 10⁻² mm. Decisions are taken in the empty decades between.
 *
 * @packageDocumentation
 */

/** mm. Two stations of a section nearer than this are one: 'equal diameters' means this. Users: contacts (snapping), solved pieces (outlines close). */
export const STATION_MM = 1e-6;

/** mm. A jump between neighbouring parts of an end larger than this is a step, not rounding. Users: end boundary. */
export const STEP_MM = 1e-5;

/** mm. A boundary point may be this far from a surface it lies on. Users: rules, ridges. Snapping moves surfaces by up to STATION_MM. */
export const ON_SURFACE_MM = 2e-6;

/** mm. Brackets R ± h − r of a saddle below this are zero: a hundred roundings at 10⁴ mm. Users: saddle, end boundary. */
export const BRACKET_MM = 1e-12;

/**
 * mm. A straight side that leaves a ruling of a round header by a sagitta below this lies on it, by half a station: the
 * ellipse in its place would be kilometres long, and its rounding no less. Users: side edge.
 */
export const RULING_SAGITTA_MM = 5e-7;

/**
 * Dimensionless. Surfaces that turn from a header's rulings by less may meet it in lines, when these bend by no more than
 * RULING_SAGITTA_MM: the circle across the header is seen 5·10⁻¹¹ of its radius too long, the curve itself would be 10⁵
 * radii long. Users: near ruling.
 */
export const NEARLY_PARALLEL_SINE = 1e-5;

/** mm. A curve that only touches a surface does so where it is this near: ten roundings of a header some metres away. Users: ridges. */
export const TOUCH_ROUNDING_MM = 1e-11;

/** Slope. Sheets whose slopes differ by less across a ridge are told apart some way off it: 10⁴ roundings of a slope. Users: ridges. */
export const LEAST_RISE = 1e-9;

/** mm. Heights that differ by less do not differ: some ten roundings at 100 mm. Users: end boundary (a tie at a mark). */
export const TIE_ROUNDING_MM = 1e-13;

/** mm along a side. On less a header's skin stays within ROUNDING_MM of a side that touches its silhouette: √(8r · 10⁻⁹), r from 12 mm. Users: end boundary. */
export const MOMENT_MM = 3e-4;

/** mm. How far inside the section a label is read, so that a ridge along a side is on one side of it. Users: end boundary, ridges. */
export const INSIDE_MM = 1e-6;

/** Dimensionless. Sine below which two directions are parallel: 10⁻⁹ rad turns 1 m by 10⁻⁶ mm. Users: everything with axes. */
export const PARALLEL_SINE = 1e-9;

/** mm. Material shorter than this along the axis is no piece. Users: bar solid. */
export const SHORTEST_FIBRE_MM = 1e-3;

/** Relative. Panels of an edge integral are halved until two rules agree to this: the rounding of a dozen terms. Users: mass. */
export const INTEGRAL_RELATIVE = 2e-14;

/**
 * Relative to the whole solid: what a small panel of an edge integral may still be off by, one rounding. On a small corner
 * radius the rounding of the coordinates is a large share of the edge's own integral and never fades by halving. Users: mass.
 */
export const INTEGRAL_FLOOR = 2e-16;

/** Share of a bore's radius by which a line across it keeps clear of the outline's corners: far above rounding, far below what two corners of a section are apart. Users: bores. */
export const CLEAR_OF_CORNERS_SHARE = 1e-3;

/** mm. Default nodes: ends nearer than this meet. A tape's finest mark is 0.4 mm; drawings agree to 0.01 mm. Users: joints. */
export const NODE_MM = 0.1;

/** mm. Default chord of meshes: below what a print or a screen shows at 1:1. Users: tessellate. */
export const CHORD_MM = 0.05;

/** mm. What is nearer than this is the same place to a double: a hundred roundings at 10⁴ mm. Users: profile, outline, extents, kinks, end cut. */
export const ROUNDING_MM = 1e-9;

/** Dimensionless: a share, a cosine or a parameter that differs by less does not differ. Ten thousand roundings of one. Users: profile, sampling, bores, conics, crossings, end cut, STEP splines. */
export const ROUNDING_SHARE = 1e-12;

/**
 * Relative: some fifty roundings of a double. A fibre of a straight side this near a silhouette touches it: the root of so
 * little is the vertex's own uncertainty there, a few 10⁻⁷ mm. Users: side edge (a break on a silhouette), sheet corners.
 */
export const SILHOUETTE_RELATIVE = 1e-14;

/** Share of a radius below which a fibre grazes its header: the slope of s(φ) is about its inverse root, 100 here. Users: side edge. */
export const GRAZING_SHARE = 1e-4;

/** Fraction of a side at which the label beside a corner is read: off the corner's rounding, within 0.01 mm of it. Users: end boundary. */
export const BESIDE_CORNER_SHARE = 1e-4;

/** Share of a short stretch by which a label is read beside it: what bounds it may run almost along it. Users: end boundary, ridges. */
export const BESIDE_STRETCH_SHARE = 0.01;

/** Least fraction of a side that counts as its own interval: below it the two ends are one place. Users: end boundary. */
export const CORNER_SHARE = 1e-10;

/**
 * mm along a side. A break this near a corner is the corner: an edge carried on past its kink by so little leaves its
 * vertex by less than ON_SURFACE_MM at 15 degrees, and a shorter edge would be no edge. Users: end boundary, no-kink.
 */
export const CORNER_MM = 2e-7;

/** Share of an edge by which its direction at an end is read: off a kink's own point, where it has none. Users: cap. */
export const BESIDE_END_SHARE = 1e-7;

/** mm. Two meeting surfaces are what closes the bar only where it is as high as they are; their other crossing is farther off than this. Users: ridge. */
export const OTHER_CROSSING_MM = 1e-3;

/** Relative. Place of a maximum on a side: the root of a double, closer cannot be told. Users: outline. */
export const MAXIMUM_SHARE = 1e-8;

/** mm across. A ruling this near to a point of an edge goes through the point: far above rounding, below float32 at 1 m. Users: grid (less at chords finer than 16 of it). */
export const RULING_MM = 1e-4;

/** Slope to a ruling below which two points beside it lie along it. Users: flat face, side edge. */
export const ALONG_RULING_SLOPE = 1e-3;

/** Area over the square of the longest side below which a triangle is flat: 1 m by 10⁻⁶ mm. Users: polygon, ladder. */
export const FLAT_TRIANGLE = 1e-9;

/** mm of side or material left between a bore and an edge, an end or another bore. Less is no web anybody can drill. Users: bores. */
export const LEFT_BESIDE_BORE_MM = 1e-3;

/** Direction components below this say nothing about which way a bore points: 10⁻⁶ of 1 m is 10⁻³ mm. Users: laid bores. */
export const LEVEL_DIRECTION = 1e-6;

/** Slope below which a cut is square: 10⁻⁹ mm over 100 mm of section. Users: piece lengths. */
export const SQUARE_SLOPE = 1e-11;

/** Sine by which a post may be out of the plane of the break over it: 10⁻⁴ mm in 1 m. Users: crest. */
export const OFF_BREAK_SINE = 1e-7;

/** mm. Pieces that differ by less everywhere are cut with one setting: a twentieth of a tape's finest mark. Users: identity. */
export const SAME_PIECE_MM = 0.02;

/** Degrees. A saw setting past its limit by less is at the limit: 10⁷ roundings of an angle, 10⁻⁵ of what a saw's scale shows. Users: saw limits. */
export const SAW_SETTING_DEG = 1e-6;

/** mm. Least corner radius a section may have: no tool makes less, and stations need 10³ of theirs. Users: sections. */
export const LEAST_RADIUS_MM = 1e-3;

/** Radians of the parameter. A kink this near an end of an edge is the end: the root of a double. Users: no-kink. */
export const KINK_AT_END = 1e-8;

/** In the unit of a standard's name: sizes nearer than this are one. A sixteenth of an inch is often written to 0.001. Users: section tables. */
export const NAME_SIZE = 6e-4;

/**
 * mm. How far a spline of a STEP file may be from the exact curve, measured between spans' knots: the curve in space and the
 * one on a surface may then differ by twice as much, and surfaces snapped by STATION_MM still keep ON_SURFACE_MM. Users: STEP.
 */
export const STEP_FIT_MM = 4e-7;

/** mm. Pieces written as one part of a STEP file agree to this: one station. Users: STEP. */
export const SAME_PART_MM = 1e-6;

/**
 * mm. Rails mitred at a plan corner may miss each other plumb by this: heights typed to a thousandth of an inch are half of
 * 0.0254 mm off each, and a rake makes at most twice of it. Users: corners of a layout.
 */
export const CORNER_STEP_MM = 0.05;

/**
 * Relative to columns of length one: a column of a design matrix that is shorter once the others are taken out follows from
 * them. Rounding leaves 10⁻¹⁵, the flattest stair that can be taped 10⁻⁵. Users: survey.
 */
export const RANK_SHARE = 1e-10;

/**
 * Share of the misfit, or of one standard uncertainty: a full step that moves the fitted values by less may be trusted
 * blindly. The sum of squares changes by its square, 10⁻¹², still above what rounding does to it; the last digits come from
 * full steps after that. Users: survey.
 */
export const SETTLED_SHARE = 1e-6;

/**
 * Dimensionless: redundancies and one less a likeness below this are zero. Rounding leaves 3·10⁻¹⁵ between tied readings of a
 * stair of 13 risers; readings there that are not tied differ by 0.08 and more. Users: survey.
 */
export const TELLS_NOTHING = 1e-8;

/**
 * mm. How far a measured length is moved to see what moves with it: three standard uncertainties of a hooked, read and marked
 * tape, so that a kink as near as readings go shows on one side. On random stairs the drawn spread was then at most 1/0.93 of
 * the stated one, to what 250 draws can tell; with a third of the step 1/0.72. Both sides together are off by (step / length)²
 * of the slope, 10⁻³ at 100 mm; rounding by 10⁻¹⁰. Users: uncertainty of a layout.
 */
export const DIFFERENCE_MM = 3;

/** Degrees. The same for measured angles: half of what one reading of a level is taken for, 1 mm at 1.15 m. Users: uncertainty of a layout. */
export const DIFFERENCE_DEG = 0.05;

/**
 * Relative. Slopes of the two sides of a step that differ by more have a kink between them: a smooth length of 150 mm bends by
 * this in DIFFERENCE_MM, a line that leaves one nosing for another by a tenth and more. Users: uncertainty of a layout.
 */
export const KINK_SHARE = 0.02;

/** mm, or degrees, for a millimetre of step. What moves by less does not hang on the steps: far above rounding (10⁻⁹), below any mark. Users: uncertainty of a layout. */
export const HANGS_MM = 1e-6;

/**
 * mm. Half of 1/32 in, the finest mark of the papers: a piece that is cut to its marks may be off by so much itself, so less than
 * that is no misfit of what is made. Users: fit of made pieces.
 */
export const MARK_MM = 0.396875;
