/**
 * A section's sizes in the paper's unit: what is written on the order and on the tube.
 *
 * Inches to 0.001, millimetres to 0.01: finer than any mill works, so the figure typed comes back. A section with a
 * designation of a standard keeps it in front.
 *
 * @packageDocumentation
 */
import { formatLength } from "../kernel/length.js";
import type { Section } from "../members/section.js";
import type { PaperUnit } from "./cut-list-types.js";

/**
 * The words for a section.
 *
 * @param section - any section; a custom one goes by its name alone
 * @param unit - unit of the paper
 * @example sectionText(roundTube({ od: 48.26, wall: 3.683 }), "in"); // "round tube 1.900 x 0.145 wall"
 */
export function sectionText(section: Pick<Section, "name" | "shape" | "source">, unit: PaperUnit): string {
  const sizes = sizesText(section.shape, (mm) =>
    formatLength(mm, { unit, decimals: unit === "in" ? 3 : 2, mark: false }),
  );
  if (sizes === undefined) return section.name;
  return section.source === "as given" ? sizes : `${section.name}: ${sizes}`;
}

function sizesText(shape: Section["shape"], say: (mm: number) => string): string | undefined {
  switch (shape.kind) {
    case "round-tube":
      return `round tube ${say(shape.od)} x ${say(shape.wall)} wall`;
    case "round-bar":
      return `round bar ${say(shape.od)}`;
    case "rect-tube":
      return `${flat(shape, "tube", say)} x ${say(shape.wall)} wall`;
    case "rect-bar":
      return flat(shape, "bar", say);
    case "angle":
      return `angle ${say(shape.width)} wide x ${say(shape.depth)} deep x ${say(shape.thickness)}`;
    case "channel":
      return `channel ${say(shape.width)} wide x ${say(shape.depth)} deep, web ${say(shape.web)}, flange ${say(shape.flange)}`;
    case "custom":
      return undefined;
  }
}

/** Width across and depth up, as the section stands in the guard. */
function flat(
  size: { readonly width: number; readonly depth: number },
  word: string,
  say: (mm: number) => string,
): string {
  return size.width === size.depth
    ? `square ${word} ${say(size.width)}`
    : `rect ${word} ${say(size.width)} wide x ${say(size.depth)} deep`;
}
