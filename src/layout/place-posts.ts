/**
 * Where does every post stand, what is it called and what is it made of?
 *
 * Posts are numbered along the path from the foot: marks P1, P2…; an explicit id pins a mark and the numbers go round
 * it. A post on tread n stands `behindNosing` past nosing n, at that tread's height. Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import type { Section } from "../members/section.js";
import type { Design, LegDesign, PostDesign } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import { type SectionExtent, sectionExtent } from "./section-extent.js";

/** A post with its place. */
export interface PlacedPost {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  /** In the document, e.g. `legs[0].posts.onTreads[2]`. */
  readonly path: string;
  /** Of its centre, from the top nosing. */
  readonly x: number;
  /** From the start of a level leg, or behind the nosing of its tread. */
  readonly offset: number;
  readonly tread?: number;
  /** Of the tread, landing or floor. */
  readonly baseZ: number;
  /** Of the top of its base plate: where the tube starts. */
  readonly footZ: number;
  readonly section: Section;
  readonly extent: SectionExtent;
  /** Half the plate, or half the post where there is none, along the guard. */
  readonly halfFoot: number;
}

interface Spot {
  readonly post: PostDesign;
  readonly along: LegDesign["along"];
  readonly path: string;
  readonly x: number;
  readonly baseZ: number;
}

function spotOf(post: PostDesign, leg: LegDesign, legIndex: number, index: number, line: NosingLine): Spot {
  const list = leg.along === "stair" ? "onTreads" : "at";
  const at = { post, along: leg.along, path: `legs[${legIndex}].posts.${list}[${index}]` };
  if (post.on === "tread") {
    const nosing = line.nosings[post.tread - 1];
    return { ...at, x: (nosing?.x ?? 0) + post.behindNosing, baseZ: nosing?.z ?? 0 };
  }
  if (leg.along === "floor") return { ...at, x: (line.nosings[0]?.x ?? 0) - post.at, baseZ: line.floorZ };
  return { ...at, x: post.at, baseZ: 0 };
}

/** A mark for every spot: its own id, or the next free P number. */
function marksOf(spots: readonly Spot[]): string[] {
  const pinned = new Set(spots.flatMap((spot) => spot.post.id?.toUpperCase() ?? []));
  let next = 0;
  return spots.map((spot) => {
    if (spot.post.id !== undefined) return spot.post.id;
    do next += 1;
    while (pinned.has(`P${next}`));
    return `P${next}`;
  });
}

/**
 * Every post of a design, from the foot upward.
 *
 * @returns the posts; a diagnostic `unknown-post` for each mark of `endPosts` that no post has
 */
export function placePosts(
  design: Design,
  line: NosingLine,
): { readonly posts: readonly PlacedPost[]; readonly diagnostics: readonly Diagnostic[] } {
  const spots = design.legs
    .flatMap((leg, i) => leg.posts.map((post, j) => spotOf(post, leg, i, j, line)))
    .sort((a, b) => a.x - b.x);
  const marks = marksOf(spots);
  const heavy = design.endPosts;
  const ordinal = { floor: 0, stair: 0, landing: 0 };
  const posts = spots.map((spot, i): PlacedPost => {
    const { post, along, path, x, baseZ } = spot;
    ordinal[along] += 1;
    const mark = marks[i] ?? path;
    const section = post.section ?? (heavy?.marks.includes(mark) ? heavy.section : design.posts.section);
    const extent = sectionExtent(section);
    return {
      ...{ id: post.id ?? `${along}-post-${ordinal[along]}`, mark, along, path, x, baseZ, section, extent },
      offset: post.on === "tread" ? post.behindNosing : post.at,
      ...(post.on === "tread" ? { tread: post.tread } : {}),
      footZ: baseZ + design.foot.thickness,
      halfFoot:
        design.foot.along === undefined ? extent.depth / 2 : Math.max(design.foot.along, extent.depth) / 2,
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
