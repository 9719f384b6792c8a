/**
 * What a file says before its first shape: the header section, the application context, units and uncertainty.
 *
 * Schemas and object identifiers of ISO 10303-214 and ISO 10303-242, as the editions in use write them.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../../kernel/caution.js";
import { text } from "./part21.js";
import type { Sink } from "./sink.js";

/** Application protocols that can be written. */
export type StepSchema = "AP214" | "AP242";
/** Units of length that can be written. */
export type StepUnit = "mm" | "in";
/** What the pieces' sizes rest on. */
export type StepBasis = "designed" | "as-set";

interface Protocol {
  readonly schema: string;
  readonly context: string;
  readonly name: string;
  readonly year: number;
}

const PROTOCOLS: Readonly<Record<StepSchema, Protocol>> = {
  AP214: {
    schema: "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }",
    context: "core data for automotive mechanical design processes",
    name: "automotive_design",
    year: 2000,
  },
  AP242: {
    schema: "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }",
    context: "managed model based 3d engineering",
    name: "ap242_managed_model_based_3d_engineering",
    year: 2014,
  },
};

/** Millimetres in a unit. */
export const UNIT_MM: Readonly<Record<StepUnit, number>> = { mm: 1, in: 25.4 };
/** mm. Points nearer than this are the same to a reader: coarser than anything that is written, finer than any shop. */
const UNCERTAINTY_MM = 1e-5;

const BASES: Readonly<Record<StepBasis, string>> = {
  designed: "Sizes as designed, not measured on site.",
  "as-set": "Sizes follow what was measured as set.",
};

/** What the header is told. */
export interface HeaderFacts {
  readonly schema: StepSchema;
  readonly basis: StepBasis;
  readonly fileName: string;
  readonly timestamp: string;
  readonly generator: string;
}

/** From the file's first line to the start of its data. */
export function headerText({ schema, basis, fileName, timestamp, generator }: HeaderFacts): string {
  return [
    "ISO-10303-21;",
    "HEADER;",
    `FILE_DESCRIPTION((${text(BASES[basis])},${text(CAUTION)}),'2;1');`,
    `FILE_NAME(${text(fileName)},${text(timestamp)},(''),(''),${text(generator)},${text(generator)},'');`,
    `FILE_SCHEMA((${text(PROTOCOLS[schema].schema)}));`,
    "ENDSEC;",
    "DATA;",
    "",
  ].join("\n");
}

/** The file's last lines. */
export const FOOTER = "ENDSEC;\nEND-ISO-10303-21;\n";

/** Contexts that the whole file shares. */
export interface Contexts {
  /** PRODUCT_CONTEXT. */
  readonly product: number;
  /** PRODUCT_DEFINITION_CONTEXT. */
  readonly definition: number;
  /** Geometric context with units. */
  readonly geometry: number;
}

/** Writes the application context, the units and the uncertainty. */
export function writeContexts(sink: Sink, schema: StepSchema, unit: StepUnit): Contexts {
  const { context, name, year } = PROTOCOLS[schema];
  const application = sink.put(`APPLICATION_CONTEXT('${context}')`);
  sink.put(`APPLICATION_PROTOCOL_DEFINITION('international standard','${name}',${year},#${application})`);
  const product = sink.put(`PRODUCT_CONTEXT('',#${application},'mechanical')`);
  const definition = sink.put(`PRODUCT_DEFINITION_CONTEXT('part definition',#${application},'design')`);
  const length = lengthUnit(sink, unit);
  const angle = sink.put("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
  const solidAngle = sink.put("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
  const uncertainty = sink.put(
    `UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(${sink.length(UNCERTAINTY_MM)}),#${length},'distance_accuracy_value','points nearer than this are the same')`,
  );
  const geometry = sink.put(
    `(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#${uncertainty}))GLOBAL_UNIT_ASSIGNED_CONTEXT((#${length},#${angle},#${solidAngle}))REPRESENTATION_CONTEXT('','space'))`,
  );
  return { product, definition, geometry };
}

function lengthUnit(sink: Sink, unit: StepUnit): number {
  const millimetre = sink.put("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
  if (unit === "mm") return millimetre;
  const measure = sink.put(`LENGTH_MEASURE_WITH_UNIT(LENGTH_MEASURE(25.4),#${millimetre})`);
  const exponents = sink.put("DIMENSIONAL_EXPONENTS(1.,0.,0.,0.,0.,0.,0.)");
  return sink.put(`(CONVERSION_BASED_UNIT('INCH',#${measure})LENGTH_UNIT()NAMED_UNIT(#${exponents}))`);
}
