/**
 * The two figures of a section that say whether a hand closes round it, beside the ones someone asked for.
 *
 * The perimeter is that of the outline; the greatest size is its width in the direction in which it is widest: between two
 * corners, or through the centres of two roundings, or across one (each is tried; exact for lines and arcs). Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { pointOn } from "../../kernel/region.js";
import { extentAlong } from "../../kernel/region-extent.js";
import type { Vec2 } from "../../kernel/vec.js";
import { sectionProperties } from "../../members/properties.js";
import type { Section } from "../../members/section.js";
import type { GraspDesign } from "../document/handrail-design.js";
import { sayLength } from "../say-length.js";

/** Perimeter and greatest size of a section. */
export interface Grasp {
  readonly perimeter: number;
  readonly greatest: number;
}

/** The two figures of a section. */
export function graspOf(section: Section): Grasp {
  const { outer } = section.region;
  const points: Vec2[] = outer.flatMap((side) => [
    pointOn(side, 0),
    ...(side.kind === "arc" ? [side.centre] : []),
  ]);
  const widths = points.flatMap((p, i) =>
    points.slice(0, i).map((q) => {
      const [u, v] = [p[0] - q[0], p[1] - q[1]];
      const size = Math.hypot(u, v);
      const along: Vec2 = size > 0 ? [u / size, v / size] : [1, 0];
      const { least, greatest } = extentAlong(outer, along);
      return greatest - least;
    }),
  );
  return { perimeter: sectionProperties(section).perimeter, greatest: Math.max(...widths) };
}

/** What was asked, in words. */
function askedText({ perimeterFrom, perimeterTo, greatest }: GraspDesign): string {
  const perimeter = [
    ...(perimeterFrom === undefined ? [] : [`from ${sayLength(perimeterFrom)}`]),
    ...(perimeterTo === undefined ? [] : [`to ${sayLength(perimeterTo)}`]),
  ];
  return [
    ...(perimeter.length === 0 ? [] : [`perimeter ${perimeter.join(" ")}`]),
    ...(greatest === undefined ? [] : [`greatest size ${sayLength(greatest)}`]),
  ].join(", ");
}

/** The figures beside those asked for: a note, without a verdict. */
export function graspNote(id: string, section: Section, asked: GraspDesign, path: string): Diagnostic {
  const { perimeter, greatest } = graspOf(section);
  return diagnostic({
    code: "handrail-grasp",
    severity: "note",
    path,
    message: `Handrail ${id} (${section.name}): perimeter ${sayLength(perimeter)}, greatest size ${sayLength(greatest)}; asked for: ${askedText(asked) || "nothing"} (${asked.source}).`,
    hint: "Compare the figures; whoever gave the limits says what they mean.",
    values: { perimeter, greatest },
  });
}
