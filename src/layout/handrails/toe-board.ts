/**
 * Toe boards as members: one flat a bay along level legs, between the posts or in front of them.
 *
 * Between, each is cut to both posts; in front, they stand at the face of the widest post, butt at post centres and end flush
 * with the outer faces of the first and last post. They follow sloping floors and are mitred at plan corners. Marks are TB1,
 * TB2… from the foot, with a, b… where one breaks or turns. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { diagnostic } from "../../kernel/diagnostic.js";
import type { ToeBoardDesign } from "../document/handrail-design.js";
import { alongOf, joined, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { axisX, crossX, faceOf, inwardReach } from "../posts/post-line.js";
import { oneLineOneRun, type RunLine } from "../rails/rail-runs.js";
import { sayLength } from "../say-length.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import type { LegGround, Site } from "../site/site.js";
import { chainPart, type Link } from "./chain.js";
import { cornerShift, handrailPath } from "./handrail-path.js";
import { pathLinks } from "./path-links.js";
import { toeBoardFindings } from "./toe-board-findings.js";

/** A bay that gets a board. */
interface Bay {
  readonly from: PlacedPost;
  readonly to: PlacedPost;
  /** Level legs under it. */
  readonly legs: readonly LegGround[];
}

/** The flat on its narrow side. */
function standing({ section }: ToeBoardDesign): { readonly extent: SectionExtent; readonly roll: number } {
  const extent = sectionExtent(section);
  const [wide, deep] = [2 * extent.halfWidth, extent.depth];
  if (wide <= deep) return { extent, roll: 0 };
  return {
    extent: { above: wide / 2, below: wide / 2, halfWidth: deep / 2, depth: wide },
    roll: 90,
  };
}

/** First leg a bay lies on, or last: a corner post belongs to the leg below it and to the one above. */
function legIndex(site: Site, post: PlacedPost, side: "from" | "to"): number {
  const own = site.legs.findIndex(({ leg }) => leg.id === post.leg);
  return side === "from" && post.corner ? (site.corners[post.corner.index]?.legs[1] ?? own) : own;
}

function baysOf(place: Place, design: ToeBoardDesign, posts: readonly PlacedPost[]): Bay[] {
  const { site } = place;
  return posts.slice(1).flatMap((to, i): Bay[] => {
    const from = posts[i] as PlacedPost;
    const [first, last] = [legIndex(site, from, "from"), legIndex(site, to, "to")];
    const legs = site.legs.slice(first, last + 1);
    const whole = legs.length > 0 && legs.every((ground) => design.legs.includes(ground.index));
    const room = to.x - from.x - (from.extent.depth + to.extent.depth) / 2;
    return whole && room > 0 ? [{ from, to, legs }] : [];
  });
}

function linesOf(bay: Bay, design: ToeBoardDesign, height: number): RunLine[] {
  return oneLineOneRun(
    bay.legs.map(
      (ground): RunLine => ({
        ...{ id: ground.leg.id, leg: ground.leg, ground, reach: ground.reach, slope: ground.slope },
        z0: ground.groundZ + design.gap + height * Math.hypot(1, ground.slope),
        ...{ stub: false, from: { type: "meet", at: 0 }, splices: [] },
      }),
    ),
  );
}

/** The line of a board's axis where it meets a post, and x there. */
function meets({ place, design, extent }: Omit<Boards, "inward">, bay: Bay, post: PlacedPost) {
  const { reach, slope, z0 } = linesOf(bay, design, extent.depth).at(post === bay.from ? 0 : -1) as RunLine;
  const line = { reach, slope, z0: z0 - extent.above * Math.hypot(1, slope) };
  return { line, x: axisX(place.site, post, line) };
}

/** x of a board in front of the posts at one end: its own corner, a post's centre, or the outer face of a last post. */
function frontX(own: Boards, bay: Bay, post: PlacedPost, way: 1 | -1, beside: boolean): number {
  const { place, inward } = own;
  const corner = post.corner && place.site.corners[post.corner.index];
  if (corner !== undefined) return corner.x - way * cornerShift(place, corner, inward);
  const { line, x } = meets(own, bay, post);
  if (beside) return x;
  if (post.set === undefined) return x + (way * post.extent.depth) / 2;
  return crossX(faceOf(place, post, line.reach, way), line);
}

interface Boards {
  readonly place: Place;
  readonly design: ToeBoardDesign;
  readonly extent: SectionExtent;
  readonly roll: number;
  readonly inward: number;
}

interface Board {
  readonly bay: Bay;
  readonly links: readonly Link[];
  readonly part: Part;
}

function board(
  own: Boards,
  bay: Bay,
  number: number,
  beside: { readonly before: boolean; readonly after: boolean },
): Board {
  const { place, design, extent, roll, inward } = own;
  const inside = design.face === "inside";
  const ends = inside
    ? ([frontX(own, bay, bay.from, -1, beside.before), frontX(own, bay, bay.to, 1, beside.after)] as const)
    : ([meets(own, bay, bay.from).x, meets(own, bay, bay.to).x] as const);
  const line = handrailPath(place, { lines: linesOf(bay, design, extent.depth) }, ends, extent, inward);
  const single = line.runs.length === 1;
  const tail = (i: number) => (single ? "" : String.fromCharCode("a".charCodeAt(0) + i));
  const id = `${place.prefix}toe-board-${number}`;
  const bare = pathLinks({
    ...{ place, line, inward, path: "toeBoard" },
    idOf: (_, i) => `${id}${single ? "" : `-${tail(i)}`}`,
  });
  const links = bare.map((link, i): Link => {
    const normal = alongOf(place, line.runs[i]?.reach ?? 0);
    const cuts = [
      inside && i === 0 ? normal : undefined,
      inside && i === bare.length - 1 ? normal : undefined,
    ] as const;
    return { ...link, cuts, ...(roll === 0 ? {} : { roll }) };
  });
  const part = chainPart(links, {
    ...{ section: design.section, role: "rail", material: place.design.material },
    mark: (i) => `TB${number}${tail(i)}${place.suffix}`,
    tooShort: (link, shortest) =>
      diagnostic({
        code: "toe-board-too-short",
        path: "toeBoard",
        members: [link.id],
        message: `Toe board TB${number}: expected a piece with every edge longer than nothing, got ${sayLength(shortest)}.`,
        hint: "Move the posts apart, or leave this leg out of the toe board.",
        values: { shortest },
      }),
  });
  return { bay, links, part };
}

/** How far towards the walking side a post reaches beside a board, from its underside to its top. */
function outInward(own: Omit<Boards, "inward">, bay: Bay, post: PlacedPost): number {
  const { line, x } = meets(own, bay, post);
  const z = line.z0 + line.slope * x;
  return inwardReach(own.place, post, line.reach, [z - own.extent.below, z + own.extent.above]);
}

/** Copes to the posts, or the cuts and miters of boards in front of them. */
function endJoints(boards: readonly Board[], inside: boolean): Joint[] {
  return boards.flatMap(({ bay, links }, k): Joint[] => {
    const [first, last] = [links[0] as Link, links.at(-1) as Link];
    const ends = [
      { link: first, end: 0, post: bay.from },
      { link: last, end: 1, post: bay.to },
    ] as const;
    if (!inside) {
      return ends.map(({ link, end, post }) => ({
        ...{ kind: "cope", id: `${link.id}-end-${end}`, end: { member: link.id, end }, onto: [post.id] },
      }));
    }
    const before = boards[k - 1];
    const turns = bay.from.corner !== undefined && before?.bay.to === bay.from;
    const turned = bay.to.corner !== undefined && boards[k + 1]?.bay.from === bay.to;
    const cuts = ends.flatMap(({ link, end }): Joint[] => {
      if (end === 0 ? turns : turned) return [];
      const type = link.way[2] === 0 ? "square" : "plumb";
      return [{ kind: "cut", id: `${link.id}-end-${end}`, end: { member: link.id, end }, cut: { type } }];
    });
    if (!turns || before === undefined) return cuts;
    const lower = before.links.at(-1) as Link;
    const miter: Joint = {
      ...{ kind: "miter", id: `${lower.id}-${first.id}` },
      ends: [
        { member: lower.id, end: 1 },
        { member: first.id, end: 0 },
      ],
    };
    return [...cuts, miter];
  });
}

/** The toe boards of a guard. */
export function toeBoards(place: Place, posts: readonly PlacedPost[]): Part {
  const design = place.design.toeBoard;
  const nothing: Part = { members: [], joints: [], diagnostics: [] };
  if (design === undefined) return nothing;
  const bays = baysOf(place, design, posts);
  const { extent, roll } = standing(design);
  const inside = design.face === "inside";
  const bare = { place, design, extent, roll };
  const widest = Math.max(
    0,
    ...bays.flatMap((bay) => [bay.from, bay.to].map((post) => outInward(bare, bay, post))),
  );
  const own: Boards = { ...bare, inward: inside ? widest + extent.halfWidth : 0 };
  const boards = bays.map((bay, k) => {
    const beside = { before: bays[k - 1]?.to === bay.from, after: bays[k + 1]?.from === bay.to };
    return board(own, bay, k + 1, beside);
  });
  const diagnostics = toeBoardFindings(place, design, extent, bays);
  return joined([
    ...boards.map(({ part }) => part),
    { members: [], joints: endJoints(boards, inside), diagnostics },
  ]);
}
