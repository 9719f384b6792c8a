/**
 * Cuts planned bores into a shell: the edges of their openings, given to the sides they lie on, and the walls between
 * them, two half cylinders each.
 *
 * @packageDocumentation
 */

import type { BoreWall, Opening } from "./bore.js";
import { type OpeningOutline, openingOutline } from "./bore-edges.js";
import type { BoreStance } from "./bore-stance.js";
import { lineThrough } from "./curve/intersect.js";
import { type Loop, loopsOf, type Region } from "./region.js";
import { addEdge, addVertex, type Shell } from "./shell.js";
import type { EdgeUse } from "./solid.js";
import { distance, type Vec3 } from "./vec.js";

/** What bores take out of one side of a section. */
export interface SideCuts {
  /** Edges of openings, with the side's material on their left. */
  readonly uses: readonly EdgeUse[];
  /** Bores that take out the side's whole width, and so part it in two. */
  readonly across: readonly BoreStance[];
  /** Vertices of openings on the line that starts the side. */
  readonly onLine: readonly number[];
}

interface OpenCuts extends SideCuts {
  readonly uses: EdgeUse[];
  readonly across: BoreStance[];
  readonly onLine: number[];
}

/** What bores take out of the sides of a bar, loop by loop; their own walls go straight into the shell. */
export function cutBores(
  shell: Shell,
  section: Region,
  walls: readonly BoreWall[],
): readonly (readonly SideCuts[])[] {
  const cuts = loopsOf(section).map((loop) =>
    loop.map((): OpenCuts => ({ uses: [], across: [], onLine: [] })),
  );
  for (const wall of walls) {
    const entry = cutOpening(shell, section, wall.entry, wall.stance, cuts);
    const exit = cutOpening(shell, section, wall.exit, wall.stance, cuts);
    const lines = ([0, 1] as const).map((k) => {
      const [from, to] = [entry.ends[k], exit.ends[k]];
      const [p, q] = [shell.vertices[from] as Vec3, shell.vertices[to] as Vec3];
      return addEdge(shell, { curve: lineThrough(p, q), t0: 0, t1: distance(p, q) }, from, to);
    }) as [number, number];
    for (const half of [0, 1] as const) {
      const near = entry.halves[half].map((edge): EdgeUse => ({ edge, forward: false })).reverse();
      const far = exit.halves[half].map((edge): EdgeUse => ({ edge, forward: true }));
      const [first, second] = half === 0 ? lines : [lines[1], lines[0]];
      shell.faces.push({
        surface: wall.stance.surface,
        sense: -1,
        loops: [[...near, { edge: first, forward: true }, ...far, { edge: second, forward: false }]],
        provenance: { from: "bore", bore: wall.bore, wall: wall.wall },
      });
    }
  }
  return cuts;
}

/** Vertices at ψ = 0 and π, and the edges of the halves that follow them. */
interface CutOpening {
  readonly ends: readonly [number, number];
  readonly halves: readonly [readonly number[], readonly number[]];
}

function cutOpening(
  shell: Shell,
  section: Region,
  opening: Opening,
  stance: BoreStance,
  cuts: readonly (readonly OpenCuts[])[],
): CutOpening {
  const outline = openingOutline(section, opening, stance);
  const sides = cuts[opening.loop] as readonly OpenCuts[];
  const vertices = outline.vertices.map(({ point, corner }) => {
    const added = addVertex(shell, point);
    if (corner >= 0) (sides[corner] as OpenCuts).onLine.push(added);
    return added;
  });
  const n = vertices.length;
  const edges = outline.edges.map(({ segment, curve, t0, t1 }, k) => {
    const [from, to] = [vertices[k] as number, vertices[(k + 1) % n] as number];
    const edge = addEdge(shell, { curve, t0, t1 }, from, to);
    // Seen from outside the bore's sense runs clockwise where it enters and counter-clockwise where it leaves.
    (sides[segment] as OpenCuts).uses.push({ edge, forward: opening.into });
    return edge;
  });
  for (const segment of partedSides(outline, loopsOf(section)[opening.loop] as Loop)) {
    (sides[segment] as OpenCuts).across.push(stance);
  }
  const { opposite } = outline;
  return {
    ends: [vertices[0] as number, vertices[opposite] as number],
    halves: [edges.slice(0, opposite), edges.slice(opposite)],
  };
}

/** Sides whose two lines an opening both crosses. */
function partedSides({ vertices, edges }: OpeningOutline, loop: Loop): number[] {
  const crossed = new Set(vertices.map((v) => v.corner));
  const sides = new Set(edges.map((e) => e.segment));
  return [...sides].filter((k) => crossed.has(k) && crossed.has((k + 1) % loop.length));
}
