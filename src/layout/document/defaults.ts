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
  /** Of plates, mm: sharp. */
  plateCornerRadius: 0,
  /** Plate that closes a tube, mm: open. */
  cap: 0,
  /** Corner post above the higher rail, mm: flush. */
  cornerAbove: 0,
  /** Between a side plate and its face, mm: none. */
  packer: 0,
  /** Id of the first handrail. */
  handrail: "handrail",
  /** Hole past a bar that runs through it, mm all round. Common practice, no source. */
  throughClearance: 0.5,
} as const;

/** Most of each thing in one document: far above any real guard, low enough that reading never takes long. */
export const LIMITS = {
  risers: 100,
  /** Readings of one survey. */
  readings: 500,
  rails: 20,
  handrails: 8,
  sections: 50,
  posts: 400,
  legs: 12,
  splices: 40,
  /** Bars in one opening. */
  infill: 400,
  /** Degrees either way: a sharper plan turn folds the guard on itself. */
  turn: 150,
  /** Degrees either way, of a floor or landing. */
  slope: 15,
  /** Either way, mm: longer than any stair. */
  length: 1e6,
  /** Least thickness, height or riser, mm: below it a division loses its meaning. */
  least: 0.01,
} as const;
