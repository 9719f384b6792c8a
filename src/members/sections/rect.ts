/**
 * Rectangular and square tube, flat and square bar.
 *
 * Width runs along u (across the member), depth along v (the member's up). Corner radii of a tube default to those of
 * the cold-formed property tables of EN 10219-2 up to 6 mm wall: outside twice the wall, inside the outside less the wall
 * (the same rule AISC uses for ASTM A500). Above 6 mm that standard takes 2.5 walls, above 10 mm three; hot-finished tube
 * (EN 10210-2) 1.5 walls outside and one inside; mills differ within wide tolerances: give what is measured.
 *
 * @packageDocumentation
 */
import { reverseLoop } from "../../kernel/region.js";
import type { Section } from "../section.js";
import { badSection, defaultRadius, requireBore, requireRadius, requireSizes, sizesOf } from "./checks.js";
import type { SectionNaming } from "./round.js";
import { roundedRectLoop } from "./rounded-rect.js";

/** Sizes of a rectangular tube, millimetres. */
export interface RectTubeInput extends SectionNaming {
  /** Across the member (along u). */
  readonly width: number;
  /** In the member's up direction (along v). */
  readonly depth: number;
  /** Below half the smaller side. */
  readonly wall: number;
  /** 0, or from 0.001 mm to half the smaller side; default twice the wall, at most half the smaller side. */
  readonly outerRadius?: number;
  /** 0, or from 0.001 mm to half the smaller inside; default the outer radius less the wall, 0 below 0.001 mm. */
  readonly innerRadius?: number;
}

/** Sizes of a flat or square bar, millimetres. */
export interface RectBarInput extends SectionNaming {
  /** Across the member (along u). */
  readonly width: number;
  /** In the member's up direction (along v). */
  readonly depth: number;
  /** Rounding of the four edges: 0, or from 0.001 mm to half the smaller side; default 0. */
  readonly edgeRadius?: number;
}

/**
 * A rectangular or square tube; sides `+u`, `top`, `-u`, `bottom`, `corner`, and the same with `inner ` in the bore.
 *
 * @throws RakewrightError `bad-section` for sizes that are no tube, a radius above 0 and below 0.001 mm (no tool makes it, and
 *   the points of its arc would be too near each other to tell apart), or radii that leave no wall in the corner
 * @example
 * rectTube({ width: 40, depth: 40, wall: 3 }).shape; // outerRadius 6, innerRadius 3
 */
export function rectTube(input: RectTubeInput): Section {
  const { width, depth, wall } = input;
  const [smaller, word] = [Math.min(width, depth), width === depth ? "square" : "rect"];
  requireSizes("Rectangular tube", { width, depth, wall });
  requireBore("Rectangular tube", smaller, wall);
  const outerRadius = input.outerRadius ?? defaultRadius(Math.min(2 * wall, smaller / 2));
  requireRadius("Rectangular tube", "outerRadius", outerRadius, smaller);
  const [innerWidth, innerDepth] = [width - 2 * wall, depth - 2 * wall];
  const innerSmaller = Math.min(innerWidth, innerDepth);
  const innerRadius = input.innerRadius ?? defaultRadius(Math.min(outerRadius - wall, innerSmaller / 2));
  requireRadius("Rectangular tube", "innerRadius", innerRadius, innerSmaller);
  const cornerWall = Math.SQRT2 * wall - (Math.SQRT2 - 1) * (outerRadius - innerRadius);
  if (cornerWall <= 0) {
    badSection(
      `Rectangular tube: expected radii that leave a wall in the corner, got ${outerRadius} outside and ${innerRadius} inside a wall of ${wall}.`,
      "Give a larger inside radius; usual is the outside radius less the wall.",
      { outerRadius, innerRadius, wall, cornerWall },
    );
  }
  return {
    name: input.name ?? `${word} ${width === depth ? sizesOf(width, wall) : sizesOf(width, depth, wall)}`,
    shape: { kind: "rect-tube", width, depth, wall, outerRadius, innerRadius },
    region: {
      outer: roundedRectLoop(width, depth, outerRadius, ""),
      holes: [reverseLoop(roundedRectLoop(innerWidth, innerDepth, innerRadius, "inner "))],
    },
    source: input.source ?? "as given",
  };
}

/**
 * A solid flat or square bar; sides `+u`, `top`, `-u`, `bottom`, and `corner` where edges are rounded.
 *
 * @throws RakewrightError `bad-section` for sizes that are no bar, or an edge radius above 0 and below 0.001 mm
 * @example
 * rectBar({ width: 50, depth: 10 }).name; // flat 50 x 10
 */
export function rectBar(input: RectBarInput): Section {
  const { width, depth, edgeRadius = 0 } = input;
  requireSizes("Bar", { width, depth });
  requireRadius("Bar", "edgeRadius", edgeRadius, Math.min(width, depth));
  return {
    name: input.name ?? (width === depth ? `square bar ${sizesOf(width)}` : `flat ${sizesOf(width, depth)}`),
    shape: { kind: "rect-bar", width, depth, edgeRadius },
    region: { outer: roundedRectLoop(width, depth, edgeRadius, ""), holes: [] },
    source: input.source ?? "as given",
  };
}
