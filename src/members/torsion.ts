/**
 * The torsion constant of the sections that have a trustworthy closed form.
 *
 * Round tube and bar: exact, twice the second moment. Rectangular tube: the mean-line formula of EN 10219-2 and
 * EN 10210-2 Annex B (from memory; it reproduces the published tables). Everything else: no value and the reason.
 *
 * @packageDocumentation
 */
import type { SectionShape } from "./section.js";

/** Torsion constant in mm⁴ where there is one, and what it is or why it is missing. */
export interface Torsion {
  readonly torsion?: number;
  readonly torsionNote: string;
}

/**
 * Torsion constant of a section's shape.
 *
 * @example
 * torsionOf({ kind: "round-bar", od: 20 }).torsion; // π·20⁴/32 = 15708
 */
export function torsionOf(shape: SectionShape): Torsion {
  switch (shape.kind) {
    case "round-tube":
      return {
        torsion: polar(shape.od) - polar(shape.od - 2 * shape.wall),
        torsionNote: "exact for a circular section",
      };
    case "round-bar":
      return { torsion: polar(shape.od), torsionNote: "exact for a circular section" };
    case "rect-tube": {
      const { width, depth, wall, outerRadius, innerRadius } = shape;
      const cornerRadius = (outerRadius + innerRadius) / 2;
      const cut = 4 - Math.PI;
      const meanLine = 2 * (width - wall + depth - wall) - 2 * cornerRadius * cut;
      const meanArea = (width - wall) * (depth - wall) - cornerRadius * cornerRadius * cut;
      return {
        torsion: (wall ** 3 * meanLine) / 3 + (4 * meanArea * meanArea * wall) / meanLine,
        torsionNote: "mean-line formula of EN 10219-2 / EN 10210-2 Annex B",
      };
    }
    case "rect-bar":
      return { torsionNote: "not given: a solid rectangle has only a series" };
    case "custom":
      return { torsionNote: "not given: no closed form for a general outline" };
  }
}

function polar(diameter: number): number {
  return (Math.PI * diameter ** 4) / 32;
}
