/**
 * The straight runs of a handrail: the legs it follows, short level pieces at plan corners, and what goes on past its legs.
 *
 * The same lines as a top rail's, at the handrail's own height: neighbours meet (see `rail-runs`), and every plan corner is
 * turned level. Past its legs a handrail goes on level over the landing; at the foot of a flight first at the flight's slope. x
 * runs along the guard, heights are plumb, to the top edge; millimetres.
 *
 * @packageDocumentation
 */
import type { HandrailDesign, HandrailEnd } from "../document/handrail-design.js";
import { oneLineOneRun, type RunLine, runsOfLeg } from "../rails/rail-runs.js";
import type { LegGround, Site } from "../site/site.js";

/** Lines and the x where the first starts and the last ends; `asked` before a return moves them. */
export interface HandrailLines {
  readonly lines: readonly RunLine[];
  readonly ends: readonly [number, number];
}

/** The site as a handrail sees it: its own breaks meet, corners between its legs are level, others are none. */
function levelled(site: Site, [first, last]: readonly [number, number]): Site {
  const legs = site.legs.map((ground): LegGround => {
    const { turn, ...leg } = ground.leg;
    const inside = ground.index > first && ground.index <= last;
    const level = turn && inside ? { turn: { ...turn, corner: "level" as const } } : {};
    return { ...ground, leg: { ...leg, ...level, break: { type: "meet", at: 0 } } };
  });
  return { ...site, legs };
}

/** A level run past an end of the legs, its top at height z. */
function levelRun(ground: LegGround, name: string, z: number): RunLine {
  return {
    ...{ id: `${ground.leg.id}-${name}`, leg: ground.leg, reach: ground.reach, slope: 0, z0: z, stub: true },
    ground: { ...ground, slope: 0, groundZ: ground.x[1] * ground.slope + ground.groundZ },
    from: { type: "meet", at: 0 },
    splices: [],
  };
}

type End = { readonly x: number; readonly extra: readonly RunLine[] };

/** A level leg's far end: its length, else the outermost post of it. */
function farEnd(ground: LegGround, side: 0 | 1, posts: readonly number[]): number {
  const x = ground.x[side];
  if (Number.isFinite(x)) return x;
  return side === 0 ? Math.min(...posts, ground.x[1]) : Math.max(...posts, ground.x[0]);
}

function bottomEnd(ground: LegGround, rake: RunLine, end: HandrailEnd | undefined, far: number): End {
  if (ground.flight === undefined) return { x: far - (end?.extend ?? 0), extra: [] };
  const low = ground.flight.nosings[0]?.x ?? 0;
  if (end === undefined) return { x: low, extra: [] };
  const x = low - (end.slope ?? ground.flight.line.going);
  if (end.extend === 0) return { x, extra: [] };
  return { x: x - end.extend, extra: [levelRun(ground, "foot", rake.z0 + rake.slope * x)] };
}

function topEnd(ground: LegGround, height: number, end: HandrailEnd | undefined, far: number): End {
  if (ground.flight === undefined) return { x: far + (end?.extend ?? 0), extra: [] };
  const top = ground.flight.nosings.at(-1);
  const x = top?.x ?? 0;
  if (end === undefined || end.extend === 0) return { x, extra: [] };
  return { x: x + end.extend, extra: [levelRun(ground, "head", (top?.z ?? 0) + height)] };
}

/**
 * The lines of a handrail, from the foot upward.
 *
 * @param postsOf - x of the posts of a leg, for level legs without a length
 */
export function handrailLines(
  site: Site,
  design: HandrailDesign,
  postsOf: (leg: string) => readonly number[],
): HandrailLines {
  const [first, last] = design.legs;
  const own = levelled(site, design.legs);
  const heights = site.legs.map((_, i) => (i >= first && i <= last ? design.height : undefined));
  const legs = own.legs.flatMap((_, i) => runsOfLeg(own, i, heights));
  const [low, high] = [own.legs[first] as LegGround, own.legs[last] as LegGround];
  const far = (ground: LegGround, side: 0 | 1) => farEnd(ground, side, postsOf(ground.leg.id));
  const bottom = bottomEnd(low, legs[0] as RunLine, design.bottom, far(low, 0));
  const top = topEnd(high, design.height, design.top, far(high, 1));
  return { lines: oneLineOneRun([...bottom.extra, ...legs, ...top.extra]), ends: [bottom.x, top.x] };
}
