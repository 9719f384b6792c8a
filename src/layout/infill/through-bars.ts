/**
 * Round bars that run through drilled posts: one for as many bays as are in one line.
 *
 * Where the next bay goes on in another line, or at a plan corner, the bar is cut to the post between; the first and the last
 * post of a chain of bays are run through too, and the bar goes on past their far faces. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";
import { member } from "../../members/member.js";
import { cutBeside } from "../as-set/beside.js";
import type { LinesDesign } from "../document/infill-design.js";
import { at, joined, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, faceOf } from "../posts/post-line.js";
import { type Bay, memberId, type Stretch, tailOf } from "../rails/bay.js";
import { axisLine, bayPoints } from "../rails/lower-rails.js";
import type { Opening, Row } from "./opening.js";

/** The bars of one row of one opening, from below. */
export interface ThroughRow {
  readonly opening: Opening;
  readonly row: Row;
  readonly bays: readonly Bay[];
  readonly through: NonNullable<LinesDesign["through"]>;
}

/** A straight bar over one stretch or more: posts at its ends, where there are, and those it runs through between them. */
interface Run {
  readonly id: string;
  readonly mark: string;
  readonly bay: Bay;
  readonly stretch: Stretch;
  readonly through: ThroughRow["through"];
  readonly ends: readonly [End, End];
  readonly drilled: readonly PlacedPost[];
}

/** An end at a post, or at a miter with the bay's next stretch. */
interface End {
  readonly post?: PlacedPost;
  readonly point: Vec3;
}

/** The runs of one bar in one bay. */
function runsOf(place: Place, bay: Bay, through: Run["through"]): Run[] {
  const points = bayPoints(place, bay);
  const last = bay.stretches.length - 1;
  return bay.stretches.map((stretch, i): Run => {
    const [from, to] = [points[i] as Vec3, points[i + 1] as Vec3];
    const start: End = i === 0 ? { post: bay.from, point: from } : { point: from };
    const end: End = i === last ? { post: bay.to, point: to } : { point: to };
    const mark = `${bay.mark}${last === 0 ? "" : tailOf(i)}${place.suffix}`;
    return { id: memberId(bay, i), mark, bay, stretch, through, ends: [start, end], drilled: [] };
  });
}

const inLine = (a: Stretch, b: Stretch): boolean =>
  a.reach === b.reach &&
  Math.abs(a.slope - b.slope) <= STATION_MM / Math.max(1, Math.abs(a.x[0]), Math.abs(b.x[1])) &&
  Math.abs(a.z0 + a.slope * a.x[1] - (b.z0 + b.slope * b.x[0])) <= STATION_MM;

/** Runs that follow each other in one line at a post are one. */
function oneLineOneBar(runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  for (const next of runs) {
    const last = out.at(-1);
    const post = next.ends[0].post;
    if (
      last === undefined ||
      post === undefined ||
      last.ends[1].post !== post ||
      !inLine(last.stretch, next.stretch)
    ) {
      out.push(next);
      continue;
    }
    const stretch = { ...last.stretch, x: [last.stretch.x[0], next.stretch.x[1]] as const };
    out[out.length - 1] = {
      ...last,
      stretch,
      ends: [last.ends[0], next.ends[1]],
      drilled: [...last.drilled, post],
    };
  }
  return out;
}

/** The point a run goes on to past a post. */
function pastPoint(place: Place, { stretch, bay, through }: Run, post: PlacedPost, way: 1 | -1): Vec3 {
  const line = axisLine(bay.extent, stretch);
  const face = faceOf(place, post, stretch.reach, way);
  const x = crossX(face, line) + way * through.past;
  const z = line.z0 + stretch.slope * x;
  return at(place, stretch.reach, x, z);
}

/** A bar; at an `inner` post, which other bars end at from the other side, it is cut to it, elsewhere it runs through. */
function barPart(place: Place, runs: readonly Run[], i: number, inner: ReadonlySet<PlacedPost>): Part {
  const run = runs[i] as Run;
  const [start, end] = run.ends;
  const after = runs[i + 1];
  const first = start.post !== undefined && !inner.has(start.post) ? start.post : undefined;
  const last = end.post !== undefined && !inner.has(end.post) ? end.post : undefined;
  const bar = member({
    ...{ id: run.id, mark: run.mark, section: run.bay.rail.section, role: "rail" },
    material: place.design.material,
    from: first === undefined ? start.point : pastPoint(place, run, first, -1),
    to: last === undefined ? end.point : pastPoint(place, run, last, 1),
  });
  const posts = [...(first ? [first] : []), ...run.drilled, ...(last ? [last] : [])];
  const drilled = posts.map((post): Joint => {
    const id = `${run.id}-through-${post.id}`;
    return { kind: "through", id, bar: run.id, member: post.id, clearance: run.through.clearance };
  });
  const mitred = after !== undefined && end.post === undefined;
  const miter: Joint[] = mitred
    ? [
        {
          ...{ kind: "miter", id: `${run.id}-break` },
          ends: [
            { member: run.id, end: 1 },
            { member: after.id, end: 0 },
          ],
        },
      ]
    : [];
  const { halfWidth } = run.bay.extent;
  const rail = { mark: run.mark, halfWidth, line: axisLine(run.bay.extent, run.stretch) };
  const cut = ([0, 1] as const).flatMap((side) => {
    const { post } = run.ends[side];
    if (post === undefined || !inner.has(post)) return [];
    return [cutBeside(place, post, { ...rail, end: { member: run.id, end: side } })];
  });
  return {
    members: [bar],
    joints: [...drilled, ...miter, ...cut.flatMap((own) => own.joints)],
    diagnostics: cut.flatMap((own) => own.diagnostics),
  };
}

/** Rows that continue each other: of one design, one row number. */
function chains(rows: readonly ThroughRow[]): ThroughRow[][] {
  const all: ThroughRow[][] = [];
  for (const next of rows) {
    const chain = all.find((own) => {
      const last = own.at(-1);
      return last?.opening.design === next.opening.design && last.row.number === next.row.number;
    });
    if (chain === undefined) all.push([next]);
    else chain.push(next);
  }
  return all;
}

/** The bars of all rows, each as long as it is in one line. */
export function throughBars(place: Place, rows: readonly ThroughRow[]): Part {
  const parts = chains(rows).flatMap((chain) => {
    const filled = chain.filter(({ bays }) => bays.length > 0);
    const starts = new Set(filled.map(({ opening }) => opening.from));
    const inner = new Set(filled.map(({ opening }) => opening.to).filter((post) => starts.has(post)));
    const most = Math.max(...chain.map(({ bays }) => bays.length));
    return Array.from({ length: most }, (_, k) => {
      const runs = chain.flatMap(({ bays, through }) => {
        const bay = bays[k];
        return bay === undefined ? [] : runsOf(place, bay, through);
      });
      const bars = oneLineOneBar(runs);
      return joined(bars.map((_, i) => barPart(place, bars, i, inner)));
    });
  });
  return joined(parts);
}
