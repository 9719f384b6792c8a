/**
 * Reads handrails: their legs by name, ends, brackets and the figures beside their section.
 *
 * @packageDocumentation
 */
import { DEFAULTS } from "./defaults.js";
import type { LegDesign } from "./design.js";
import type { DesignInput, FlangeInput, LengthInput } from "./design-input.js";
import type {
  BracketDesign,
  GraspDesign,
  HandrailDesign,
  HandrailEnd,
  HandrailFlange,
  HandrailReturn,
} from "./handrail-design.js";
import type { BracketsInput, GraspableInput, HandrailEndInput, HandrailInput } from "./handrail-input.js";
import type { Reader } from "./reader.js";
import { optional, resolveFlange } from "./resolve-foot.js";
import { type DocumentPath, got } from "./schema/path-text.js";

function needed(
  input: LengthInput | undefined,
  key: string,
  what: string,
  path: DocumentPath,
  read: Reader,
): number {
  if (input !== undefined) return read.length(input, [...path, key], "positive");
  read.report("missing", [...path, key], `expected ${what}, got nothing.`, `Add \`${key}\`.`);
  return 1;
}

/** Keys that say something only beside another one. */
function onlyWith(
  wrong: readonly (readonly [string, unknown])[],
  beside: string,
  path: DocumentPath,
  read: Reader,
): void {
  for (const [key, value] of wrong) {
    if (value === undefined) continue;
    read.report("bad-value", [...path, key], `expected \`${key}\` only ${beside}.`, "Remove it.");
  }
}

function flangeOf(
  thickness: LengthInput | undefined,
  plate: FlangeInput | undefined,
  keys: { readonly thickness: DocumentPath; readonly plate: DocumentPath },
  read: Reader,
): { readonly flange?: HandrailFlange } {
  const thick = thickness === undefined ? 0 : read.length(thickness, keys.thickness, "not-negative");
  if (thick === 0) return {};
  return { flange: { thickness: thick, plate: resolveFlange(plate, keys.plate, read) } };
}

function returnOf(end: HandrailEndInput, path: DocumentPath, read: Reader): HandrailReturn | undefined {
  const keys = { thickness: [...path, "endPlate"], plate: [...path, "plate"] };
  if (end.return !== "wall") {
    onlyWith(
      [
        ["distance", end.distance],
        ["towards", end.towards],
      ],
      "with a return to a wall",
      path,
      read,
    );
  }
  if (end.return === undefined || end.return === "post") {
    onlyWith(
      [
        ["endPlate", end.endPlate],
        ["plate", end.plate],
      ],
      "with a return to a wall or the ground",
      path,
      read,
    );
    return end.return === undefined ? undefined : { to: "post" };
  }
  const flange = flangeOf(end.endPlate, end.plate, keys, read);
  if (end.return === "ground") return { to: "ground", ...flange };
  const what = "how far the wall's face is from the handrail's centre";
  const distance = needed(end.distance, "distance", what, path, read);
  return { to: "wall", distance, towards: end.towards ?? "outside", ...flange };
}

function endOf(
  end: HandrailEndInput | undefined,
  side: "bottom" | "top",
  leg: LegDesign | undefined,
  base: DocumentPath,
  read: Reader,
): { readonly [P in "bottom" | "top"]?: HandrailEnd } {
  if (end === undefined) return {};
  const path = [...base, side];
  const flight = leg?.along === "stair";
  if (!(flight && side === "bottom")) {
    onlyWith([["slope", end.slope]], "at the foot of a flight", path, read);
  }
  const extend =
    end.extend === undefined
      ? 0
      : read.length(end.extend, [...path, "extend"], flight ? "not-negative" : "any");
  const slope =
    end.slope === undefined ? {} : { slope: read.length(end.slope, [...path, "slope"], "not-negative") };
  const back = returnOf(end, path, read);
  return { [side]: { extend, ...slope, ...(back === undefined ? {} : { back }) } };
}

function bracketsOf(
  input: BracketsInput | undefined,
  base: DocumentPath,
  read: Reader,
): { readonly brackets?: BracketDesign } {
  if (input === undefined) return {};
  const path = [...base, "brackets"];
  const section = read.section(input.section, [...path, "section"]);
  const drop = read.length(input.drop, [...path, "drop"], "positive");
  if (section !== undefined && section.shape.kind !== "round-bar" && section.shape.kind !== "round-tube") {
    const message = `expected a round bar or tube for arm and stem, got ${section.name}.`;
    read.report("bad-value", [...path, "section"], message, "Name a round section.");
  }
  if (input.from === "posts") {
    const { wall, side, greatest, ends, flange } = input;
    onlyWith(Object.entries({ wall, side, greatest, ends, flange }), "with brackets from a wall", path, read);
    return section === undefined ? {} : { brackets: { from: "posts", section, drop } };
  }
  const wall = needed(
    input.wall,
    "wall",
    "how far the wall's face is from the handrail's centre",
    path,
    read,
  );
  const greatest = needed(input.greatest, "greatest", "the greatest space between brackets", path, read);
  const ends = needed(input.ends, "ends", "how far the first bracket is from an end", path, read);
  const at = [...path, "flange"];
  const flange = flangeOf(
    input.flange?.thickness,
    input.flange,
    { thickness: [...at, "thickness"], plate: at },
    read,
  );
  if (section === undefined) return {};
  const side = input.side ?? "outside";
  return { brackets: { from: "wall", section, drop, wall, side, greatest, ends, ...flange } };
}

function graspOf(
  input: GraspableInput | undefined,
  base: DocumentPath,
  read: Reader,
): { readonly graspable?: GraspDesign } {
  if (input === undefined) return {};
  const path = [...base, "graspable"];
  return {
    graspable: {
      ...optional("perimeterFrom", input.perimeterFrom, path, read),
      ...optional("perimeterTo", input.perimeterTo, path, read),
      ...optional("greatest", input.greatest, path, read),
      source: input.source,
    },
  };
}

/** Indices of legs by name; a name that no leg has is reported. */
export function legIndices(
  names: readonly string[],
  legs: readonly LegDesign[],
  path: DocumentPath,
  read: Reader,
): number[] {
  return names.flatMap((name, j) => {
    const index = legs.findIndex((leg) => leg.id === name);
    if (index >= 0) return [index];
    const known = legs.map((leg) => leg.id).join(", ");
    const message = `expected the id of a leg (${known}), got ${got(name)}.`;
    read.report("unknown-leg", [...path, j], message, "Correct the name, or give the leg this id.");
    return [];
  });
}

function legsOf(
  input: HandrailInput,
  legs: readonly LegDesign[],
  base: DocumentPath,
  read: Reader,
): readonly [number, number] {
  if (input.legs === undefined) return [0, legs.length - 1];
  const path = [...base, "legs"];
  const found = legIndices(input.legs, legs, path, read);
  const apart = found.findIndex((index, j) => j > 0 && index !== (found[j - 1] as number) + 1);
  if (apart > 0) {
    const message = `expected legs that follow one another upward, got ${input.legs.join(", ")}.`;
    read.report("leg-order", path, message, "List them as one walks up, or write two handrails.");
  }
  return [found[0] ?? 0, found.at(-1) ?? 0];
}

/** The handrails of a document; one whose section cannot be read is left out (its diagnostic is with the reader). */
export function resolveHandrails(
  document: DesignInput,
  legs: readonly LegDesign[],
  read: Reader,
): HandrailDesign[] {
  const seen = new Set<string>();
  return (document.handrails ?? []).flatMap((input, i): HandrailDesign[] => {
    const path = ["handrails", i];
    const id = input.id ?? (i === 0 ? DEFAULTS.handrail : `${DEFAULTS.handrail}-${i + 1}`);
    if (seen.has(id.toLowerCase())) {
      const message = `expected an id of its own, got ${id} again.`;
      read.report("duplicate-id", path, message, "Give the handrail another id.");
    }
    seen.add(id.toLowerCase());
    const section = read.section(input.section, [...path, "section"]);
    const range = legsOf(input, legs, path, read);
    const rest = {
      height: read.length(input.height, [...path, "height"], "positive"),
      inward: read.length(input.inward, [...path, "inward"], "not-negative"),
      legs: range,
      ...endOf(input.bottom, "bottom", legs[range[0]], path, read),
      ...endOf(input.top, "top", legs[range[1]], path, read),
      ...bracketsOf(input.brackets, path, read),
      ...graspOf(input.graspable, path, read),
    };
    return section === undefined ? [] : [{ id, section, ...rest }];
  });
}
