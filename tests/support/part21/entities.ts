/**
 * The entities a file of solids may use, with the type of every attribute and what each is a kind of.
 *
 * From the EXPRESS of ISO 10303-41, -42, -43, -44, -46 and AP214, from memory: attributes in the order in which Part 21 writes them, inherited
 * ones first; WHERE rules are not here.
 */

/** Type of one attribute. */
export type Wanted =
  | "string"
  | "real"
  | "integer"
  | "boolean"
  | "logical"
  | "derived"
  | { readonly enumeration: readonly string[] }
  | { readonly ref: readonly string[] }
  | { readonly list: Wanted; readonly least: number; readonly most: number }
  | { readonly optional: Wanted }
  | { readonly measure: string };

const ref = (...names: readonly string[]): Wanted => ({ ref: names });
const some = (list: Wanted, least = 1, most = Number.POSITIVE_INFINITY): Wanted => ({ list, least, most });
const optional = (wanted: Wanted): Wanted => ({ optional: wanted });
const one = (...enumeration: readonly string[]): Wanted => ({ enumeration });

/** Attributes by entity. */
export const ENTITIES: Readonly<Record<string, readonly Wanted[]>> = {
  CARTESIAN_POINT: ["string", some("real", 1, 3)],
  DIRECTION: ["string", some("real", 2, 3)],
  VECTOR: ["string", ref("DIRECTION"), "real"],
  AXIS2_PLACEMENT_2D: ["string", ref("CARTESIAN_POINT"), optional(ref("DIRECTION"))],
  AXIS2_PLACEMENT_3D: [
    "string",
    ref("CARTESIAN_POINT"),
    optional(ref("DIRECTION")),
    optional(ref("DIRECTION")),
  ],
  LINE: ["string", ref("CARTESIAN_POINT"), ref("VECTOR")],
  CIRCLE: ["string", ref("AXIS2_PLACEMENT_2D", "AXIS2_PLACEMENT_3D"), "real"],
  ELLIPSE: ["string", ref("AXIS2_PLACEMENT_2D", "AXIS2_PLACEMENT_3D"), "real", "real"],
  B_SPLINE_CURVE_WITH_KNOTS: [
    "string",
    "integer",
    some(ref("CARTESIAN_POINT"), 2),
    one("POLYLINE_FORM", "CIRCULAR_ARC", "ELLIPTIC_ARC", "PARABOLIC_ARC", "HYPERBOLIC_ARC", "UNSPECIFIED"),
    "logical",
    "logical",
    some("integer", 2),
    some("real", 2),
    one("UNIFORM_KNOTS", "UNSPECIFIED", "QUASI_UNIFORM_KNOTS", "PIECEWISE_BEZIER_KNOTS"),
  ],
  PLANE: ["string", ref("AXIS2_PLACEMENT_3D")],
  CYLINDRICAL_SURFACE: ["string", ref("AXIS2_PLACEMENT_3D"), "real"],
  DEFINITIONAL_REPRESENTATION: ["string", some(ref("CURVE")), ref("PARAMETRIC_REPRESENTATION_CONTEXT")],
  PCURVE: ["string", ref("SURFACE"), ref("DEFINITIONAL_REPRESENTATION")],
  SURFACE_CURVE: [
    "string",
    ref("CURVE"),
    some(ref("PCURVE", "SURFACE"), 1, 2),
    one("CURVE_3D", "PCURVE_S1", "PCURVE_S2"),
  ],
  VERTEX_POINT: ["string", ref("CARTESIAN_POINT")],
  EDGE_CURVE: ["string", ref("VERTEX_POINT"), ref("VERTEX_POINT"), ref("CURVE"), "boolean"],
  ORIENTED_EDGE: ["string", "derived", "derived", ref("EDGE_CURVE"), "boolean"],
  EDGE_LOOP: ["string", some(ref("ORIENTED_EDGE"))],
  FACE_BOUND: ["string", ref("EDGE_LOOP"), "boolean"],
  FACE_OUTER_BOUND: ["string", ref("EDGE_LOOP"), "boolean"],
  ADVANCED_FACE: ["string", some(ref("FACE_BOUND")), ref("SURFACE"), "boolean"],
  CLOSED_SHELL: ["string", some(ref("ADVANCED_FACE"))],
  MANIFOLD_SOLID_BREP: ["string", ref("CLOSED_SHELL")],
  APPLICATION_CONTEXT: ["string"],
  APPLICATION_PROTOCOL_DEFINITION: ["string", "string", "integer", ref("APPLICATION_CONTEXT")],
  PRODUCT_CONTEXT: ["string", ref("APPLICATION_CONTEXT"), "string"],
  PRODUCT_DEFINITION_CONTEXT: ["string", ref("APPLICATION_CONTEXT"), "string"],
  PRODUCT: ["string", "string", optional("string"), some(ref("PRODUCT_CONTEXT"))],
  PRODUCT_RELATED_PRODUCT_CATEGORY: ["string", optional("string"), some(ref("PRODUCT"))],
  PRODUCT_DEFINITION_FORMATION: ["string", optional("string"), ref("PRODUCT")],
  PRODUCT_DEFINITION: [
    "string",
    optional("string"),
    ref("PRODUCT_DEFINITION_FORMATION"),
    ref("PRODUCT_DEFINITION_CONTEXT"),
  ],
  PRODUCT_DEFINITION_SHAPE: [
    "string",
    optional("string"),
    ref("PRODUCT_DEFINITION", "NEXT_ASSEMBLY_USAGE_OCCURRENCE"),
  ],
  NEXT_ASSEMBLY_USAGE_OCCURRENCE: [
    "string",
    "string",
    optional("string"),
    ref("PRODUCT_DEFINITION"),
    ref("PRODUCT_DEFINITION"),
    optional("string"),
  ],
  SHAPE_DEFINITION_REPRESENTATION: [ref("PRODUCT_DEFINITION_SHAPE"), ref("REPRESENTATION")],
  SHAPE_REPRESENTATION: ["string", some(ref("AXIS2_PLACEMENT_3D")), ref("GEOMETRIC_REPRESENTATION_CONTEXT")],
  ADVANCED_BREP_SHAPE_REPRESENTATION: [
    "string",
    some(ref("AXIS2_PLACEMENT_3D", "MANIFOLD_SOLID_BREP")),
    ref("GEOMETRIC_REPRESENTATION_CONTEXT"),
  ],
  REPRESENTATION: ["string", some(ref("DESCRIPTIVE_REPRESENTATION_ITEM")), ref("REPRESENTATION_CONTEXT")],
  DESCRIPTIVE_REPRESENTATION_ITEM: ["string", "string"],
  PROPERTY_DEFINITION: ["string", optional("string"), ref("PRODUCT_DEFINITION")],
  PROPERTY_DEFINITION_REPRESENTATION: [ref("PROPERTY_DEFINITION"), ref("REPRESENTATION")],
  ITEM_DEFINED_TRANSFORMATION: [
    "string",
    optional("string"),
    ref("AXIS2_PLACEMENT_3D"),
    ref("AXIS2_PLACEMENT_3D"),
  ],
  CONTEXT_DEPENDENT_SHAPE_REPRESENTATION: [
    ref("SHAPE_REPRESENTATION_RELATIONSHIP"),
    ref("PRODUCT_DEFINITION_SHAPE"),
  ],
  REPRESENTATION_RELATIONSHIP: ["string", optional("string"), ref("REPRESENTATION"), ref("REPRESENTATION")],
  REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION: [ref("ITEM_DEFINED_TRANSFORMATION")],
  SHAPE_REPRESENTATION_RELATIONSHIP: [],
  GEOMETRIC_REPRESENTATION_CONTEXT: ["integer"],
  GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT: [some(ref("UNCERTAINTY_MEASURE_WITH_UNIT"))],
  GLOBAL_UNIT_ASSIGNED_CONTEXT: [some(ref("NAMED_UNIT"))],
  PARAMETRIC_REPRESENTATION_CONTEXT: [],
  REPRESENTATION_CONTEXT: ["string", "string"],
  NAMED_UNIT: [{ optional: ref("DIMENSIONAL_EXPONENTS") }],
  LENGTH_UNIT: [],
  PLANE_ANGLE_UNIT: [],
  SOLID_ANGLE_UNIT: [],
  SI_UNIT: [optional(one("MILLI")), one("METRE", "RADIAN", "STERADIAN")],
  CONVERSION_BASED_UNIT: ["string", ref("LENGTH_MEASURE_WITH_UNIT")],
  LENGTH_MEASURE_WITH_UNIT: [{ measure: "LENGTH_MEASURE" }, ref("LENGTH_UNIT")],
  DIMENSIONAL_EXPONENTS: ["real", "real", "real", "real", "real", "real", "real"],
  UNCERTAINTY_MEASURE_WITH_UNIT: [
    { measure: "LENGTH_MEASURE" },
    ref("LENGTH_UNIT"),
    "string",
    optional("string"),
  ],
  COLOUR_RGB: ["string", "real", "real", "real"],
  FILL_AREA_STYLE_COLOUR: ["string", ref("COLOUR_RGB")],
  FILL_AREA_STYLE: ["string", some(ref("FILL_AREA_STYLE_COLOUR"))],
  SURFACE_STYLE_FILL_AREA: [ref("FILL_AREA_STYLE")],
  SURFACE_SIDE_STYLE: ["string", some(ref("SURFACE_STYLE_FILL_AREA"))],
  SURFACE_STYLE_USAGE: [one("POSITIVE", "NEGATIVE", "BOTH"), ref("SURFACE_SIDE_STYLE")],
  PRESENTATION_STYLE_ASSIGNMENT: [some(ref("SURFACE_STYLE_USAGE"))],
  STYLED_ITEM: ["string", some(ref("PRESENTATION_STYLE_ASSIGNMENT")), ref("MANIFOLD_SOLID_BREP")],
  MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION: [
    "string",
    some(ref("STYLED_ITEM")),
    ref("GEOMETRIC_REPRESENTATION_CONTEXT"),
  ],
};

/** What an entity is a kind of, besides itself. */
export const KINDS: Readonly<Record<string, readonly string[]>> = {
  LINE: ["CURVE"],
  CIRCLE: ["CURVE"],
  ELLIPSE: ["CURVE"],
  B_SPLINE_CURVE_WITH_KNOTS: ["CURVE"],
  SURFACE_CURVE: ["CURVE"],
  PCURVE: ["CURVE"],
  PLANE: ["SURFACE"],
  CYLINDRICAL_SURFACE: ["SURFACE"],
  FACE_OUTER_BOUND: ["FACE_BOUND"],
  SHAPE_REPRESENTATION: ["REPRESENTATION"],
  ADVANCED_BREP_SHAPE_REPRESENTATION: ["SHAPE_REPRESENTATION", "REPRESENTATION"],
  DEFINITIONAL_REPRESENTATION: ["REPRESENTATION"],
  MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION: ["REPRESENTATION"],
};

/** Complex instances that make sense: their records in alphabetical order. */
export const COMPLEX: ReadonlySet<string> = new Set([
  "GEOMETRIC_REPRESENTATION_CONTEXT PARAMETRIC_REPRESENTATION_CONTEXT REPRESENTATION_CONTEXT",
  "GEOMETRIC_REPRESENTATION_CONTEXT GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT GLOBAL_UNIT_ASSIGNED_CONTEXT REPRESENTATION_CONTEXT",
  "LENGTH_UNIT NAMED_UNIT SI_UNIT",
  "NAMED_UNIT PLANE_ANGLE_UNIT SI_UNIT",
  "NAMED_UNIT SI_UNIT SOLID_ANGLE_UNIT",
  "CONVERSION_BASED_UNIT LENGTH_UNIT NAMED_UNIT",
  "REPRESENTATION_RELATIONSHIP REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION SHAPE_REPRESENTATION_RELATIONSHIP",
]);

/** Instances that nothing has to refer to. */
export const ROOTS: ReadonlySet<string> = new Set([
  "APPLICATION_PROTOCOL_DEFINITION",
  "PRODUCT_RELATED_PRODUCT_CATEGORY",
  "SHAPE_DEFINITION_REPRESENTATION",
  "PROPERTY_DEFINITION_REPRESENTATION",
  "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION",
  "MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION",
]);
