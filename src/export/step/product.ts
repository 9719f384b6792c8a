/**
 * Parts and the assembly they stand in: a PRODUCT for each shape, and an occurrence with its own name wherever it stands.
 *
 * @packageDocumentation
 */
import { type Frame, WORLD } from "../../kernel/frame.js";
import { refs, text } from "./part21.js";
import type { Contexts } from "./schema.js";
import type { Sink } from "./sink.js";

/** A product as others refer to it. */
export interface Product {
  readonly product: number;
  readonly definition: number;
  readonly shape: number;
}

/** Numbers for a product that others refer to before it is written. */
export function reserveProduct(sink: Sink): Product {
  return { product: sink.reserve(), definition: sink.reserve(), shape: sink.reserve() };
}

/** Writes a product under its numbers; its shape representation is written elsewhere. `id` is unique in the file. */
export function writeProduct(
  sink: Sink,
  contexts: Contexts,
  { product, definition, shape }: Product,
  { id, name }: { readonly id: string; readonly name: string },
): void {
  sink.fill(product, `PRODUCT(${text(id)},${text(name)},'',(#${contexts.product}))`);
  const formation = sink.put(`PRODUCT_DEFINITION_FORMATION('','',#${product})`);
  sink.fill(definition, `PRODUCT_DEFINITION('design','',#${formation},#${contexts.definition})`);
  const own = sink.put(`PRODUCT_DEFINITION_SHAPE('','',#${definition})`);
  sink.put(`SHAPE_DEFINITION_REPRESENTATION(#${own},#${shape})`);
}

/** A product with a solid. */
export interface Part extends Product {
  /** The place in it that occurrences put somewhere. */
  readonly origin: number;
}

/** Writes a part of one solid. */
export function writePart(
  sink: Sink,
  contexts: Contexts,
  names: { readonly id: string; readonly name: string },
  solid: number,
): Part {
  const part = reserveProduct(sink);
  const origin = sink.placement(WORLD);
  const items = `(#${origin},#${solid}),#${contexts.geometry}`;
  sink.fill(part.shape, `ADVANCED_BREP_SHAPE_REPRESENTATION(${text(names.name)},${items})`);
  writeProduct(sink, contexts, part, names);
  return { ...part, origin };
}

/** A material's name on a part, as a property that readers look for by these two texts. */
export function writeMaterial(
  sink: Sink,
  contexts: Contexts,
  { definition }: Product,
  material: string,
): void {
  const property = sink.put(`PROPERTY_DEFINITION('material property','material name',#${definition})`);
  const item = sink.put(`DESCRIPTIVE_REPRESENTATION_ITEM(${text(material)},${text(material)})`);
  const list = sink.put(`REPRESENTATION('material name',(#${item}),#${contexts.geometry})`);
  sink.put(`PROPERTY_DEFINITION_REPRESENTATION(#${property},#${list})`);
}

/** Writes one occurrence of a part in an assembly; the number of its place there. */
export function writeOccurrence(
  sink: Sink,
  assembly: Product,
  part: Part,
  occurrence: { readonly id: string; readonly name: string; readonly frame: Frame },
): number {
  const { id, name, frame } = occurrence;
  const place = sink.placement(frame);
  const usage = sink.put(
    `NEXT_ASSEMBLY_USAGE_OCCURRENCE(${text(id)},${text(name)},'',#${assembly.definition},#${part.definition},$)`,
  );
  const own = sink.put(`PRODUCT_DEFINITION_SHAPE('','',#${usage})`);
  const moved = sink.put(`ITEM_DEFINED_TRANSFORMATION('','',#${part.origin},#${place})`);
  const relation = sink.put(
    `(REPRESENTATION_RELATIONSHIP('','',#${part.shape},#${assembly.shape})REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(#${moved})SHAPE_REPRESENTATION_RELATIONSHIP())`,
  );
  sink.put(`CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(#${relation},#${own})`);
  return place;
}

/** Says of all products that they are parts. */
export function writeCategory(sink: Sink, products: readonly number[]): void {
  sink.put(`PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,${refs(products)})`);
}
