/**
 * Brackets under a handrail: a level arm from a post or a wall, mitred to a plumb stem that is shaped to the rail's underside.
 *
 * The arm's centreline lies `drop` plumb below the underside at the stem. From a post it is shaped to the post's inner side, one
 * at each post of the handrail's legs; from a wall it ends on a flange, in equal spaces between an end or corner and the next.
 * Marks are HB1a (arm), HB1b (stem), HB1c (flange). Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";
import { negate } from "../../kernel/vec.js";
import type { BracketDesign } from "../document/handrail-design.js";
import { alongOf, at, inwardOf, joined, type Part } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { holesOf, plateOr } from "../posts/plate-or.js";
import { crossX, inwardOfAxis, postAxis } from "../posts/post-line.js";
import { edgeZ, type RailRun } from "../rails/rail-path.js";
import type { BracketReport } from "../report-types.js";
import { sayLength } from "../say-length.js";
import { sectionExtent } from "../section-extent.js";
import { spacedStations } from "../site/spaced-stations.js";
import { type ChainCommon, chainPart, type Link } from "./chain.js";
import { linkId, type PlacedHandrail } from "./placed-handrail.js";

/** Where a bracket stands. */
interface Station {
  readonly reach: number;
  readonly x: number;
  readonly post?: PlacedPost;
}

/** Brackets and what is said about them. */
export interface Brackets {
  readonly part: Part;
  readonly reports: readonly BracketReport[];
}

/** x from and to which the underside runs in a reach. */
function span(rail: PlacedHandrail, reach: number): readonly [number, number] {
  const runs = rail.line.runs.filter((run) => run.reach === reach);
  return [runs[0]?.x.underside[0] ?? Number.NaN, runs.at(-1)?.x.underside[1] ?? Number.NaN];
}

/** Where a post's axis is as high as the arm that stands from it. */
function armX({ line: { runs }, place }: PlacedHandrail, post: PlacedPost, drop: number): number {
  const axis = postAxis(place.site, post);
  const xs = runs
    .filter((run) => run.reach === post.reach)
    .map((run) => ({ run, x: crossX(axis, { slope: run.slope, z0: run.z0.underside - drop }) }));
  const over = xs.find(({ run, x }) => run.x.underside[0] <= x && x <= run.x.underside[1]);
  return (over ?? xs[0])?.x ?? post.x;
}

/** The posts of the legs that the stem finds the rail over. */
function postStations(
  rail: PlacedHandrail,
  posts: readonly PlacedPost[],
  radius: number,
  drop: number,
): Station[] {
  const { legs } = rail.place.site;
  const [first, last] = rail.design.legs;
  const own = new Set(legs.slice(first, last + 1).map(({ leg }) => leg.id));
  return posts.flatMap((post): Station[] => {
    const [from, to] = span(rail, post.reach);
    const x = armX(rail, post, drop);
    const under = x - radius >= from - STATION_MM && x + radius <= to + STATION_MM;
    const wanted = own.has(post.leg) && post.corner === undefined && under;
    return wanted ? [{ reach: post.reach, x, post }] : [];
  });
}

function wallStations(rail: PlacedHandrail, design: Extract<BracketDesign, { from: "wall" }>): Station[] {
  const reaches = [...new Set(rail.line.runs.map((run) => run.reach))];
  return reaches.flatMap((reach): Station[] => {
    const [low, high] = span(rail, reach);
    const [from, to] = [low + design.ends, high - design.ends];
    if (to < from) return from - to < 2 * design.ends ? [{ reach, x: (low + high) / 2 }] : [];
    const by = { type: "greatest", space: design.greatest, along: "plan" } as const;
    return spacedStations({ from, to, by }, 0).map((x) => ({ reach, x }));
  });
}

/** The run over a place, and the members a stem of that radius touches: two at a break. */
function railOver(rail: PlacedHandrail, { reach, x }: Station, radius: number) {
  const { runs, breaks } = rail.line;
  const over = (edge: "underside") =>
    runs.find((run) => run.reach === reach && run.x[edge][0] <= x && x <= run.x[edge][1]);
  const run = (over("underside") ?? runs.find((own) => own.reach === reach)) as RailRun;
  const broken = breaks.find((own) => {
    const [low, high] = [own.x.axis, own.x.underside].sort((a, b) => a - b) as [number, number];
    const inReach = runs[own.runs[0]]?.reach === reach;
    return inReach && x + radius > low + STATION_MM && x - radius < high - STATION_MM;
  });
  const onto = broken === undefined ? [run] : broken.runs.map((i) => runs[i] as RailRun);
  return { run, onto: onto.map((own) => linkId(rail, own)) };
}

function noRoom(rail: PlacedHandrail, mark: string): ChainCommon["tooShort"] {
  return (link: Link, shortest: number): Diagnostic =>
    diagnostic({
      code: "bracket-too-short",
      path: link.path,
      members: [link.id],
      message: `Bracket ${mark} of handrail ${rail.design.id}: expected arm and stem longer than their miter takes, got a shortest edge of ${sayLength(shortest)}.`,
      hint: "Make `drop` larger, move the handrail farther in, or use a thinner arm.",
      values: { shortest },
    });
}

function flangeOf(
  rail: PlacedHandrail,
  design: BracketDesign,
  end: Vec3,
  id: string,
  mark: string,
  way: Vec3,
) {
  if (design.from === "posts" || design.flange === undefined) return undefined;
  const { plate, thickness } = design.flange;
  const size = 2 * sectionExtent(design.section).halfWidth;
  return plateOr(
    {
      ...{ id: `${id}-flange`, mark: `${mark}c${rail.place.suffix}`, thickness, at: end, normal: way },
      material: rail.place.design.material,
      outline: {
        width: plate.width ?? size,
        depth: plate.height ?? size,
        cornerRadius: plate.cornerRadius,
      },
      holes: holesOf(plate.holes, plate.holes?.across ?? 0, plate.holes?.along ?? 0),
    },
    `${rail.path}.brackets.flange`,
  );
}

/** How far a post's inner face is from the guard's middle plane at a height. */
function faceInward({ place }: PlacedHandrail, post: PlacedPost, z: number): number {
  const axis = postAxis(place.site, post);
  return inwardOfAxis(place, axis, z) + post.extent.halfWidth * Math.hypot(1, axis.q);
}

function bracket(
  rail: PlacedHandrail,
  design: BracketDesign,
  station: Station,
  number: number,
): { readonly part: Part; readonly report: BracketReport } {
  const { place, path } = rail;
  const { reach, x, post } = station;
  const { inward } = rail.design;
  const radius = sectionExtent(design.section).halfWidth;
  const { run, onto } = railOver(rail, station, radius);
  const under = edgeZ(run, "underside", x);
  const z = under - design.drop;
  const [mark, id] = [`HB${number}`, `${rail.id}-bracket-${number}`];
  const outside = design.from === "posts" || design.side === "outside";
  const way: Vec3 = outside ? inwardOf(place, reach) : negate(inwardOf(place, reach));
  const thick = design.from === "wall" ? (design.flange?.thickness ?? 0) : 0;
  // From a post: the chain is measured from the post's face, the member drawn from its axis.
  const face =
    design.from === "wall"
      ? inward + (outside ? -1 : 1) * (design.wall - thick)
      : post === undefined
        ? 0
        : faceInward(rail, post, z);
  const [start, elbow] = [at(place, reach, x, z, face), at(place, reach, x, z, inward)];
  const up: Vec3 = alongOf(place, reach);
  const common = { path: `${path}.brackets`, up } as const;
  const links: Link[] = [
    { ...common, id: `${id}-arm`, from: start, to: elbow, way, mitred: false },
    {
      ...common,
      ...{ id: `${id}-stem`, from: elbow, to: at(place, reach, x, under, inward), way: [0, 0, 1] },
      mitred: true,
    },
  ];
  const letters = ["a", "b"];
  const built = chainPart(links, {
    ...{ section: design.section, role: "other", material: place.design.material },
    mark: (i) => `${mark}${letters[i]}${place.suffix}`,
    tooShort: noRoom(rail, mark),
  });
  const made = flangeOf(rail, design, start, id, mark, negate(way));
  const arm = { member: `${id}-arm`, end: 0 } as const;
  const wall: Joint = {
    ...{ kind: "cut", id: `${id}-wall`, end: arm },
    ...(made?.plate === undefined
      ? { cut: { type: "square" } as const, onto: "wall" }
      : { cut: { type: "face" } as const, onto: made.plate.id }),
  };
  const joints: Joint[] = [
    post === undefined ? wall : { kind: "cope", id: `${id}-post`, end: arm, onto: [post.id] },
    { kind: "cope", id: `${id}-rail`, end: { member: `${id}-stem`, end: 1 }, onto },
  ];
  const part = joined([
    built,
    { members: made?.plate ? [made.plate] : [], joints, diagnostics: made?.diagnostics ?? [] },
  ]);
  const report: BracketReport = {
    ...{ mark: `${mark}${place.suffix}`, x, clear: design.drop - radius },
    ...(post === undefined ? {} : { post: post.mark }),
  };
  return { part, report };
}

/**
 * The brackets of a handrail.
 *
 * @param before - how many brackets the guard has already: their marks go on counting
 */
export function handrailBrackets(
  rail: PlacedHandrail,
  posts: readonly PlacedPost[],
  before: number,
): Brackets {
  const design = rail.design.brackets;
  const nothing: Part = { members: [], joints: [], diagnostics: [] };
  if (design === undefined) return { part: nothing, reports: [] };
  const radius = sectionExtent(design.section).halfWidth;
  const stations =
    design.from === "posts" ? postStations(rail, posts, radius, design.drop) : wallStations(rail, design);
  if (stations.length === 0) {
    const found = diagnostic({
      code: "bracket-without-post",
      path: `${rail.path}.brackets`,
      message: `Handrail ${rail.design.id}: expected a ${design.from === "posts" ? "post of its legs under it" : "stretch long enough for a bracket"}, got none.`,
      hint: "Put posts on its legs, or let the brackets stand from a wall; with a wall, make `ends` smaller.",
    });
    return { part: { ...nothing, diagnostics: [found] }, reports: [] };
  }
  const made = stations.map((station, i) => bracket(rail, design, station, before + i + 1));
  return { part: joined(made.map((own) => own.part)), reports: made.map((own) => own.report) };
}
