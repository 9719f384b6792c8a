/**
 * Where does every post stand, what is it called and what is it made of?
 *
 * Posts are numbered along the path from the foot: marks P1, P2…; an explicit id pins a mark and the numbers go round
 * it. A post on tread n stands `behindNosing` past nosing n, at that tread's height. x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import type { Section } from "../../members/section.js";
import type { PostStance } from "../as-set/stance.js";
import type { LegDesign, PostDesign } from "../document/design.js";
import type { FootDesign } from "../document/foot-design.js";
import type { Place } from "../part.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import type { LegGround, Site } from "../site/site.js";
import { spacedStations } from "../site/spaced-stations.js";

/** A post with its place. */
export interface PlacedPost {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  readonly leg: string;
  readonly reach: number;
  /** In the document, e.g. `legs[0].posts.onTreads[2]`. */
  readonly path: string;
  /** Of its centre. */
  readonly x: number;
  /** From the start of a level leg, or behind the nosing of its tread. */
  readonly offset: number;
  readonly tread?: number;
  /** Of the tread, landing or floor. */
  readonly baseZ: number;
  /** Of the line the heights are measured from, at the post. */
  readonly lineZ: number;
  /** Of the top of its base plate, or its lower end: where the tube starts. */
  readonly footZ: number;
  readonly section: Section;
  readonly extent: SectionExtent;
  readonly foot: FootDesign;
  /** Half the plate, or half the post where there is none, along the guard. */
  readonly halfFoot: number;
  /** Corner posts: index of the corner, and how far it goes above the higher rail. */
  readonly corner?: { readonly index: number; readonly above: number; readonly cap: number };
  /** Where it stands already: places and heights above are then those it was measured at. */
  readonly set?: PostStance;
}

interface Spot {
  readonly own: Pick<PostDesign, "id" | "section" | "foot">;
  readonly ground: LegGround;
  readonly path: string;
  readonly x: number;
  readonly offset: number;
  readonly tread?: number;
  readonly baseZ: number;
  readonly corner?: PlacedPost["corner"];
}

/** The tread a place of a flight is on: the last nosing at or before it. */
function treadAt(ground: LegGround, x: number): { number: number; x: number; z: number } | undefined {
  return [...(ground.flight?.nosings ?? [])].reverse().find((own) => own.x <= x) ?? ground.flight?.nosings[0];
}

function stationSpot(ground: LegGround, at: number, backward: boolean): Omit<Spot, "own" | "path"> {
  const x = backward ? ground.x[1] - at : ground.x[0] + at;
  const tread = treadAt(ground, x);
  if (tread === undefined) return { ground, x, offset: at, baseZ: ground.groundZ + ground.slope * x };
  return { ground, x, offset: x - tread.x, tread: tread.number, baseZ: tread.z };
}

function spotsOf(ground: LegGround, backward: boolean): Spot[] {
  const { leg, index, flight } = ground;
  const listed = leg.posts.map((post, j): Spot => {
    const list = post.on === "tread" ? "onTreads" : "at";
    const path = `legs[${index}].posts.${list}[${j}]`;
    if (post.on === "station") return { ...stationSpot(ground, post.at, backward), own: post, path };
    const nosing = flight?.nosings[post.tread - 1];
    return {
      ...{ own: post, ground, path, tread: post.tread, offset: post.behindNosing },
      x: (nosing?.x ?? 0) + post.behindNosing,
      baseZ: nosing?.z ?? 0,
    };
  });
  const spaced = leg.spaced === undefined ? [] : spacedStations(leg.spaced, ground.slope);
  return [
    ...listed,
    ...spaced.map(
      (at): Spot => ({ ...stationSpot(ground, at, backward), own: {}, path: `legs[${index}].posts.spacing` }),
    ),
  ];
}

function cornerSpots(site: Site): Spot[] {
  return site.corners.flatMap((corner, index): Spot[] => {
    const ground = site.legs[corner.legs[1]];
    const post = ground?.leg.turn?.post;
    const below = site.legs[corner.legs[0]];
    if (ground === undefined || below === undefined || post === undefined) return [];
    const { above, cap, ...own } = post;
    const path = `legs[${ground.index}].turn`;
    return [
      {
        ...{ own, ground: below, path, x: corner.x, offset: 0, baseZ: corner.groundZ },
        corner: { index, above, cap },
      },
    ];
  });
}

/** A mark for every spot: its own id, or the next free P number. */
function marksOf(spots: readonly Spot[]): string[] {
  const pinned = new Set(spots.flatMap((spot) => spot.own.id?.toUpperCase() ?? []));
  let next = 0;
  return spots.map((spot) => {
    if (spot.own.id !== undefined) return spot.own.id;
    do next += 1;
    while (pinned.has(`P${next}`));
    return `P${next}`;
  });
}

function footZ(foot: FootDesign, baseZ: number, lineZ: number): number {
  if (foot.type === "side") return lineZ - foot.below;
  return foot.type === "plate" ? baseZ + foot.thickness : baseZ;
}

/** Half of what stands on the tread, along the guard. */
function halfFootOf(foot: FootDesign, extent: SectionExtent): number {
  const plate = foot.type === "plate" ? (foot.along ?? 0) : 0;
  return Math.max(plate, extent.depth) / 2;
}

/**
 * Every post of a design, from the foot upward.
 *
 * @returns the posts; a diagnostic `unknown-post` for each mark of `endPosts` that no post has
 */
export function placePosts(place: Place): {
  readonly posts: readonly PlacedPost[];
  readonly diagnostics: readonly Diagnostic[];
} {
  const { design, site, prefix, suffix } = place;
  const listed = site.legs.flatMap((ground) =>
    spotsOf(ground, ground.index === 0 && ground.flight === undefined),
  );
  const spots = [...listed, ...cornerSpots(site)].sort((a, b) => a.x - b.x);
  const marks = marksOf(spots);
  const heavy = design.endPosts;
  const ordinal = new Map<string, number>();
  const posts = spots.map((spot, i): PlacedPost => {
    const { own, ground, path, x, baseZ, offset, tread, corner } = spot;
    const leg = ground.leg.id;
    const n = (ordinal.get(leg) ?? 0) + (corner === undefined ? 1 : 0);
    ordinal.set(leg, n);
    const mark = marks[i] ?? path;
    const section = own.section ?? (heavy?.marks.includes(mark) ? heavy.section : design.posts.section);
    const extent = sectionExtent(section);
    const foot = own.foot ?? ground.leg.foot ?? design.foot;
    const lineZ = corner === undefined ? ground.groundZ + ground.slope * x : baseZ;
    const id = own.id ?? (corner === undefined ? `${leg}-post-${n}` : `corner-${corner.index + 1}-post`);
    return {
      ...{
        id: `${prefix}${id}`,
        mark: `${mark}${suffix}`,
        along: ground.leg.along,
        leg,
        reach: ground.reach,
        path,
        x,
        offset,
        baseZ,
        lineZ,
      },
      ...(tread === undefined ? {} : { tread }),
      footZ: footZ(foot, baseZ, lineZ),
      ...{ section, extent, foot, halfFoot: halfFootOf(foot, extent) },
      ...(corner === undefined ? {} : { corner }),
    };
  });
  const diagnostics = (heavy?.marks ?? []).flatMap((mark, i) =>
    marks.includes(mark) ? [] : [unknownPost(mark, `endPosts.marks[${i}]`, marks)],
  );
  return { posts, diagnostics };
}

function unknownPost(mark: string, path: string, marks: readonly string[]): Diagnostic {
  return diagnostic({
    code: "unknown-post",
    path,
    message: `${path}: expected the mark of a post (${marks.slice(0, 12).join(", ") || "none"}${marks.length > 12 ? "…" : ""}), got ${mark}.`,
    hint: "Correct the mark, or give the post this id.",
    values: { mark },
  });
}
