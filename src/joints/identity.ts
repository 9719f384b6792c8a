/**
 * Which pieces are the same to cut, and which are left and right hand of each other.
 *
 * The two end functions are sampled on a ring of fibres. Two pieces are the same when some way of turning one, about its
 * axis by a symmetry of its section or end for end, makes all samples agree; they are hands of each other when only a
 * mirrored one agrees. Round sections are first turned so that the steepest side of the first shaped end is at φ = 0.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, endAt } from "../kernel/end-compile.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Section } from "../members/section.js";

/** Fibres in the ring: a multiple of four, so that quarter turns map samples onto samples. */
const FIBRES = 16;
/** mm. Pieces that differ by less everywhere are cut with one setting. A tenth of what a tape shows. */
export const SAME_PIECE_MM = 0.02;

/** What identity is decided on. */
export interface Shape {
  readonly id: string;
  readonly section: Section;
  readonly material: string;
  readonly low: CompiledEnd;
  readonly high: CompiledEnd;
}

/** Identity and hand of one piece. */
export interface Identity {
  readonly identity: string;
  readonly handOf?: string;
}

interface Group {
  readonly id: string;
  readonly ring: readonly number[];
  handOf?: string;
}

/** Identities of shapes in their order: the id of the first piece that is the same. */
export function identify(shapes: readonly Shape[]): Identity[] {
  const groups = new Map<string, Group[]>();
  return shapes.map((s): Identity => {
    const key = `${s.section.name}|${s.material}|${s.section.shape.kind}`;
    const known = groups.get(key) ?? [];
    groups.set(key, known);
    const ways = waysToTurn(s, false);
    const same = known.find((g) => ways.some((w) => agree(w, g.ring)));
    if (same) return { identity: same.id, ...(same.handOf === undefined ? {} : { handOf: same.handOf }) };
    const mirrored = waysToTurn(s, true);
    const hand = known.find((g) => mirrored.some((w) => agree(w, g.ring)));
    const group: Group = { id: s.id, ring: ways[0] as number[], ...(hand ? { handOf: hand.id } : {}) };
    known.push(group);
    return { identity: group.id, ...(hand ? { handOf: hand.id } : {}) };
  });
}

type Ends = (phi: number) => readonly [number, number];

/** Sample rings of every way the piece can be laid that its section allows. */
function waysToTurn(s: Shape, mirror: boolean): number[][] {
  const { shape, region } = s.section;
  const round = shape.kind === "round-tube" || shape.kind === "round-bar";
  const reach = (phi: number): readonly [number, number] => {
    const d: readonly [number, number] = [Math.cos(phi), Math.sin(phi)];
    const half = round ? extentAlong(region.outer, d).greatest : rectReach(s.section, d);
    return [half * d[0], half * d[1]];
  };
  const at: Ends = (phi) => {
    const [u, v] = reach(phi);
    const out = (end: CompiledEnd): number => {
      const x = endAt(end, u, v).out;
      return Number.isFinite(x) ? x : 1e6;
    };
    return [out(s.low), out(s.high)];
  };
  const handed: Ends = mirror ? (phi) => at(-phi) : at;
  const reversed: Ends = (phi) => {
    const [low, high] = handed(-phi);
    return [high, low];
  };
  return [handed, reversed].flatMap((f) => turnsOf(s.section, f).map((turn) => ring(f, turn)));
}

/** Where a ray from the middle leaves a rectangle's box; one sample place per direction, the same on all pieces. */
function rectReach(section: Section, [cu, cv]: readonly [number, number]): number {
  const u = extentAlong(section.region.outer, [1, 0]).greatest;
  const v = extentAlong(section.region.outer, [0, 1]).greatest;
  // Well inside rounded corners, so that every fibre is in the section's outline.
  const k = 0.7 * Math.min(u / Math.max(Math.abs(cu), 1e-12), v / Math.max(Math.abs(cv), 1e-12));
  return k;
}

function turnsOf(section: Section, f: Ends): readonly number[] {
  const { shape } = section;
  const quarter = Math.PI / 2;
  if (shape.kind === "round-tube" || shape.kind === "round-bar") return roundTurns(f);
  if ((shape.kind === "rect-tube" || shape.kind === "rect-bar") && shape.width === shape.depth) {
    return [0, 1, 2, 3].map((k) => k * quarter);
  }
  return shape.kind === "custom" ? [0] : [0, 2 * quarter];
}

/** Angles that bring the steepest side of the first end that is not square to φ = 0. */
function roundTurns(f: Ends): readonly number[] {
  const n = 64;
  for (const end of [0, 1] as const) {
    for (const harmonic of [1, 2]) {
      let [c, s] = [0, 0];
      for (let k = 0; k < n; k++) {
        const phi = (2 * Math.PI * k) / n;
        c += f(phi)[end] * Math.cos(harmonic * phi);
        s += f(phi)[end] * Math.sin(harmonic * phi);
      }
      if (Math.hypot(c, s) / n < SAME_PIECE_MM / 2) continue;
      const first = Math.atan2(s, c) / harmonic;
      return harmonic === 1 ? [first] : [first, first + Math.PI];
    }
  }
  return [0];
}

function ring(f: Ends, turn: number): number[] {
  const out: number[] = [];
  let middle = 0;
  for (let k = 0; k < FIBRES; k++) {
    const [low, high] = f(turn + (2 * Math.PI * k) / FIBRES);
    out.push(low, high);
    middle += (high - low) / (2 * FIBRES);
  }
  // Sliding a piece along its own axis changes nothing.
  return out.map((x, i) => (i % 2 === 0 ? x + middle : x - middle));
}

function agree(a: readonly number[], b: readonly number[]): boolean {
  return a.every((x, i) => Math.abs(x - (b[i] as number)) <= SAME_PIECE_MM);
}
