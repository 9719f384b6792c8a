/**
 * Reads feet: base plates, bare feet, plates on a side face; and the holes and flanges other plates share with them.
 *
 * @packageDocumentation
 */
import { DEFAULTS } from "./defaults.js";
import type { FlangeDesign } from "./design.js";
import type { FlangeInput, FootInput, HolesInput, LengthInput, SubstrateInput } from "./design-input.js";
import type { FootDesign, HoleRectangle, Substrate } from "./foot-design.js";
import type { Reader } from "./reader.js";
import type { DocumentPath } from "./schema/path-text.js";

/** `{ [key]: length }` where the document has one. */
export function optional<K extends string>(
  key: K,
  input: LengthInput | undefined,
  path: DocumentPath,
  read: Reader,
): { readonly [P in K]?: number } {
  if (input === undefined) return {};
  return { [key]: read.length(input, [...path, key], "positive") } as { readonly [P in K]?: number };
}

function orDefault(
  input: LengthInput | undefined,
  fallback: number,
  path: DocumentPath,
  read: Reader,
): number {
  return input === undefined ? fallback : read.length(input, path, "not-negative");
}

/** `{ holes }` where the document has them. */
export function holesOf(
  input: HolesInput | undefined,
  path: DocumentPath,
  read: Reader,
): { readonly holes?: HoleRectangle } {
  if (input === undefined) return {};
  const at = [...path, "holes"];
  return {
    holes: {
      diameter: read.length(input.diameter, [...at, "diameter"], "positive"),
      along: read.length(input.along, [...at, "along"], "positive"),
      across: read.length(input.across, [...at, "across"], "positive"),
    },
  };
}

function substrateOf(
  input: SubstrateInput | undefined,
  path: DocumentPath,
  read: Reader,
): { readonly substrate?: Substrate } {
  if (input === undefined) return {};
  const at = [...path, "substrate"];
  return {
    substrate: {
      name: input.name,
      thickness: read.length(input.thickness, [...at, "thickness"], "positive"),
      ...optional("leastThickness", input.leastThickness, at, read),
      ...optional("leastEdge", input.leastEdge, at, read),
    },
  };
}

/** A flange of a rail's end. */
export function resolveFlange(
  input: FlangeInput | undefined,
  path: DocumentPath,
  read: Reader,
): FlangeDesign {
  const { width, height, cornerRadius, holes } = input ?? {};
  return {
    ...optional("width", width, path, read),
    ...optional("height", height, path, read),
    cornerRadius: orDefault(cornerRadius, DEFAULTS.plateCornerRadius, [...path, "cornerRadius"], read),
    ...holesOf(holes, path, read),
  };
}

/** A foot. */
export function resolveFoot(foot: FootInput, path: DocumentPath, read: Reader): FootDesign {
  const under = substrateOf(foot.substrate, path, read);
  if (foot.type === "bare") return { type: "bare", ...under };
  if (foot.type === "side") {
    const at = [...path, "plate"];
    const { thickness, along, height, centre, holes } = foot.plate;
    return {
      type: "side",
      below: read.length(foot.below, [...path, "below"], "not-negative"),
      plate: {
        thickness: read.length(thickness, [...at, "thickness"], "positive"),
        along: read.length(along, [...at, "along"], "positive"),
        height: read.length(height, [...at, "height"], "positive"),
        centre: read.length(centre, [...at, "centre"], "not-negative"),
        ...holesOf(holes, at, read),
      },
      packer: orDefault(foot.packer, DEFAULTS.packer, [...path, "packer"], read),
      ...under,
    };
  }
  return {
    type: "plate",
    thickness: orDefault(foot.thickness, DEFAULTS.plateThickness, [...path, "thickness"], read),
    ...optional("along", foot.along, path, read),
    ...optional("across", foot.across, path, read),
    cornerRadius: orDefault(foot.cornerRadius, DEFAULTS.plateCornerRadius, [...path, "cornerRadius"], read),
    ...holesOf(foot.holes, path, read),
    ...under,
  };
}
