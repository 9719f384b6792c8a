/**
 * What a design document means where it says nothing. The schema states these, the reader fills them in.
 *
 * @packageDocumentation
 */

/** Defaults of a design document, in the library's units. */
export const DEFAULTS = {
  /** Name in the materials table. */
  material: "mild-steel",
  /** Root gap, mm. */
  gap: 0,
  /** Nosing past the riser face, mm. */
  overhang: 0,
  /** Base plate, mm: posts stand on the tread itself. */
  plateThickness: 0,
  /** Of a free end past its last post's face, mm: flush. */
  freeOverhang: 0,
  /** At a wall, mm: the rail runs to the wall. */
  endPlate: 0,
} as const;

/** Most of each thing in one document: far above any real guard, low enough that reading never takes long. */
export const LIMITS = {
  risers: 100,
  rails: 20,
  sections: 50,
  posts: 400,
  /** Either way, mm: longer than any stair. */
  length: 1e6,
  /** Least thickness, height or riser, mm: below it a division loses its meaning. */
  least: 0.01,
} as const;
