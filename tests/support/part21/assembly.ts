/** The assembly of a file: what stands where, under which names, in which colour and of which material; and the file's unit. */
import { type Place, placeOf } from "./curves.js";
import type { Graph } from "./graph.js";

/** One piece as it stands. */
export interface Occurrence {
  readonly name: string;
  readonly part: string;
  readonly solid: number;
  readonly place: Place | null;
  readonly colour: readonly number[] | null;
  readonly material: string | null;
}

/** All occurrences of parts, or the parts alone where there is no assembly. */
export function occurrencesOf(g: Graph): Occurrence[] {
  const parts = new Map<number, Omit<Occurrence, "name" | "place">>();
  for (const { id } of g.all("SHAPE_DEFINITION_REPRESENTATION")) {
    const [own, shape] = [g.ref(id, 0), g.ref(id, 1)];
    if (!g.is(shape, "ADVANCED_BREP_SHAPE_REPRESENTATION")) continue;
    const definition = g.ref(own, 2);
    const [solid] = g.refs(shape, 1).filter((item) => g.is(item, "MANIFOLD_SOLID_BREP"));
    const part = g.text(g.ref(g.ref(definition, 2), 2), 1);
    parts.set(definition, {
      part,
      solid: solid!,
      colour: colourOf(g, solid!),
      material: materialOf(g, definition),
    });
  }
  const usages = g.all("NEXT_ASSEMBLY_USAGE_OCCURRENCE");
  if (usages.length === 0) return [...parts.values()].map((p) => ({ ...p, name: p.part, place: null }));
  return usages.map(({ id }) => ({
    ...parts.get(g.ref(id, 4))!,
    name: g.text(id, 1),
    place: placeOfUsage(g, id),
  }));
}

function placeOfUsage(g: Graph, usage: number): Place {
  const own = g.all("PRODUCT_DEFINITION_SHAPE").find(({ id }) => g.ref(id, 2) === usage)!.id;
  const dependent = g
    .all("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION")
    .find(({ id }) => g.ref(id, 1) === own)!.id;
  const relation = g.ref(dependent, 0);
  const moved = g.ref(relation, 0, "REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION");
  const [from, to] = [placeOf(g, g.ref(moved, 2)), placeOf(g, g.ref(moved, 3))];
  // The part's own place is its origin, so that what it is put to is where it stands.
  if (from.o.some((x) => x !== 0) || from.x[0] !== 1 || from.z[2] !== 1)
    throw new Error("a part's place is not its origin");
  return to;
}

function colourOf(g: Graph, solid: number): readonly number[] | null {
  const style = g.all("STYLED_ITEM").find(({ id }) => g.ref(id, 2) === solid);
  if (!style) return null;
  let at = g.refs(style.id, 1)[0]!;
  at = g.ref(g.refs(at, 0)[0]!, 1);
  at = g.ref(g.refs(at, 1)[0]!, 0);
  const rgb = g.ref(g.refs(at, 1)[0]!, 1);
  return [1, 2, 3].map((i) => g.number(rgb, i));
}

function materialOf(g: Graph, definition: number): string | null {
  const property = g.all("PROPERTY_DEFINITION").find(({ id }) => g.ref(id, 2) === definition);
  if (!property) return null;
  const held = g.all("PROPERTY_DEFINITION_REPRESENTATION").find(({ id }) => g.ref(id, 0) === property.id)!;
  return g.text(g.refs(g.ref(held.id, 1), 1)[0]!, 0);
}

/** Millimetres in the file's unit of length. */
export function unitOf(g: Graph): number {
  const [context] = g.all("GLOBAL_UNIT_ASSIGNED_CONTEXT");
  const units = context!.records.find((r) => r.type === "GLOBAL_UNIT_ASSIGNED_CONTEXT")!.args[0]!;
  const ids = units.kind === "list" ? units.items.map((i) => (i.kind === "ref" ? i.id : 0)) : [];
  const length = ids.find((id) => g.is(id, "LENGTH_UNIT"))!;
  if (!g.is(length, "CONVERSION_BASED_UNIT")) return 1;
  const measure = g.attr(g.ref(length, 1, "CONVERSION_BASED_UNIT"), 0);
  return measure.kind === "typed" && measure.value.kind === "real" ? measure.value.value : Number.NaN;
}
