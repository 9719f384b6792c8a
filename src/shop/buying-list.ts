/**
 * What is bought: metres, kilograms and stock lengths of each section, plates by size, fasteners by hole.
 *
 * Sums of blanks, no more. With n blanks on m lengths of stock S and a kerf k between neighbours, blanks + (n − m)·k ≤ m·S,
 * so m ≥ (blanks + n·k) / (S + k): a lower bound, and no cutting plan. Fasteners: `fasteners.ts`; a plate that is named as
 * sharing its mate's takes none of its own.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { ROUNDING_SHARE, STATION_MM } from "../kernel/tolerance.js";
import { isMaterialName, materialOf } from "../members/materials.js";
import { plateSizes } from "../members/plate-sizes.js";
import { sectionProperties } from "../members/properties.js";
import type { BoughtPlate, BoughtSection, BuyingList, BuyingOptions, StockBound } from "./buying-types.js";
import { fastenersOf } from "./fasteners.js";
import { groupBy } from "./group-by.js";

/** kg/m³ that `SectionProperties.massPerMetre` is at. */
const PROPERTIES_DENSITY = 7850;

type Masses = ReadonlyMap<string, number> | undefined;

/**
 * The buying list of some pieces.
 *
 * @param pieces - of one guard, from `solveJoints` or `buildGuard`
 * @param masses - kilograms by piece id, from `massOf`; sums that lack a piece are left out
 * @param options - the shop, and plates whose holes are their mates'
 * @returns sections in the order of the pieces, plates and fasteners by size; nothing rounded
 * @example
 * buyingList(guard.pieces, undefined, { shop: DEFAULT_SHOP }).sections[0]?.stock[0]?.atLeast; // 2
 */
export function buyingList(
  pieces: readonly Piece[],
  masses?: Masses,
  options: BuyingOptions = {},
): BuyingList {
  const sound = pieces.filter((p) => p.status === "ok");
  const plates = sound.filter((p) => p.kind !== "member");
  const bars = sound.filter((p) => p.kind === "member");
  const alike = groupBy(bars, (p) => JSON.stringify([p.section.name, p.section.shape, p.material]));
  const mass = sumOf(sound, masses);
  const { shop } = options;
  return {
    sections: alike.map((members) => boughtSection(members as [Piece, ...Piece[]], masses, shop)),
    plates: boughtPlates(plates, masses),
    fasteners: fastenersOf(plates.filter((p) => !options.sharedHoles?.includes(p.id))),
    otherHoles: plates.reduce((sum, p) => sum + plateSizes(p.section).otherHoles, 0),
    ...(shop && { kerf: shop.kerf }),
    ...(mass !== undefined && { mass }),
    blocked: pieces.filter((p) => p.status === "blocked").map((p) => p.mark),
  };
}

function boughtSection(
  members: readonly [Piece, ...Piece[]],
  masses: Masses,
  shop: BuyingOptions["shop"],
): BoughtSection {
  const { section, material } = members[0];
  const total = members.reduce((sum, p) => sum + p.lengths.blank.value, 0);
  const longest = members.reduce((a, b) => (b.lengths.blank.value > a.lengths.blank.value ? b : a));
  const density = isMaterialName(material) ? materialOf(material).density : PROPERTIES_DENSITY;
  const massPerMetre = (sectionProperties(section).massPerMetre * density) / PROPERTIES_DENSITY;
  const mass = sumOf(members, masses);
  const shape = JSON.stringify(section.shape);
  const onHand = (shop?.remnants ?? []).filter((r) => sameSection(r.section, section, shape));
  return {
    section: { name: section.name, shape: section.shape, source: section.source },
    material,
    pieces: members.length,
    total,
    longest: { mark: longest.mark, length: longest.lengths.blank.value },
    massPerMetre,
    blankMass: (massPerMetre * total) / 1000,
    ...(mass !== undefined && { mass }),
    stock: (shop?.stockLengths ?? []).map((stock) =>
      stockBound(total, members.length, stock, shop?.kerf ?? 0, longest.lengths.blank.value),
    ),
    remnants: onHand.map((r) => r.length).sort((a, b) => b - a),
  };
}

/** Custom outlines have no sizes to compare: they go by their names. */
function sameSection(a: Piece["section"], b: Piece["section"], shapeOfB: string): boolean {
  return a.shape.kind === "custom" ? a.name === b.name : JSON.stringify(a.shape) === shapeOfB;
}

function stockBound(total: number, n: number, stock: number, kerf: number, longest: number): StockBound {
  // A quotient that is whole but for a rounding is whole.
  const up = (x: number): number => Math.ceil(x * (1 - ROUNDING_SHARE));
  return {
    stock,
    atLeast: up(total / stock),
    withKerf: up((total + n * kerf) / (stock + kerf)),
    takesLongest: longest <= stock + STATION_MM,
  };
}

function boughtPlates(plates: readonly Piece[], masses: Masses): readonly BoughtPlate[] {
  const sizes = plates.map((piece) => {
    const { width, depth } = plateSizes(piece.section);
    const thickness = piece.lengths.blank.value;
    return { piece, length: Math.max(width, depth), width: Math.min(width, depth), thickness };
  });
  const key = ({ piece, length, width, thickness }: (typeof sizes)[number]) =>
    [piece.material, ...[length, width, thickness].map(steps)].join(" ");
  return groupBy(sizes, key).map((same) => {
    const [{ piece, length, width, thickness }] = same as [(typeof sizes)[number]];
    const mass = sumOf(
      same.map((own) => own.piece),
      masses,
    );
    return {
      length,
      width,
      thickness,
      material: piece.material,
      quantity: same.length,
      marks: same.map((own) => own.piece.mark),
      ...(mass !== undefined && { mass }),
    };
  });
}

/** Sizes within a station are one size. */
const steps = (mm: number): number => Math.round(mm / STATION_MM);

function sumOf(pieces: readonly Piece[], masses: Masses): number | undefined {
  return pieces.reduce<number | undefined>((sum, p) => {
    const own = masses?.get(p.id);
    return sum === undefined || own === undefined ? undefined : sum + own;
  }, 0);
}
