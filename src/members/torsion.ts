/**
 * The torsion constant of the sections that have a trustworthy closed form.
 *
 * Round tube and bar: exact, twice the second moment. Rectangular tube: the mean-line formula of EN 10219-2 and
 * EN 10210-2 Annex B (from memory; it reproduces the published tables). Angle and channel: Σbt³/3, less what the free ends
 * lack, and α·D⁴ for each fillet, D being the circle that fits into it: El Darwish and Johnston, Torsion of Structural Shapes
 * (1965), with the α of the notes to the UK section tables (from memory; it reproduces those tables). Everything else: no
 * value and the reason.
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
    case "angle": {
      const { width, depth, thickness: t, rootRadius: r } = shape;
      const alpha = 0.0768 + (0.0479 * r) / t;
      const fillet = alpha * inscribed(r, t, t) ** 4;
      return {
        torsion: ((width + depth - t) * t ** 3) / 3 + fillet - 0.21 * t ** 4,
        torsionNote: "El Darwish and Johnston, fillet as in the notes to the UK section tables",
      };
    }
    case "channel": {
      const { width, depth, web, rootRadius: r } = shape;
      const slope = Math.tan(((shape.taper ?? 0) * Math.PI) / 180);
      const flange = shape.flange + slope * (width / 2 - (shape.flangeAt ?? width / 2));
      const [w, f] = [web / flange, r / flange];
      const alpha = -0.0908 + 0.2621 * w + 0.1231 * f - 0.0752 * w * f - 0.0945 * w * w;
      const fillets = 2 * alpha * inscribed(r, web, flange) ** 4;
      const plates = (2 * width * flange ** 3 + (depth - 2 * flange) * web ** 3) / 3;
      return {
        torsion: plates + fillets - 0.42 * flange ** 4,
        torsionNote: `El Darwish and Johnston, fillets as in the notes to the UK section tables${slope === 0 ? "" : "; flanges as thick as in the middle, within 2 % of published tapered ones"}`,
      };
    }
    case "custom":
      return { torsionNote: "not given: no closed form for a general outline" };
  }
}

/** Diameter of the circle that fits between the fillet of a right corner and the outside of its two legs. */
function inscribed(r: number, t1: number, t2: number): number {
  return 2 * (3 * r + t1 + t2 - Math.sqrt(2 * (2 * r + t1) * (2 * r + t2)));
}

function polar(diameter: number): number {
  return (Math.PI * diameter ** 4) / 32;
}
