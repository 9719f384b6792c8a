/**
 * Reads the posts of a leg: on treads, at stations, in equal spaces.
 *
 * @packageDocumentation
 */
import type { PostDesign, SpacedPosts } from "./design.js";
import type {
  FootInput,
  LegInput,
  LengthInput,
  SpacingInput,
  StairPostsInput,
  StationPostInput,
  TreadPostInput,
} from "./design-input.js";
import type { Reader } from "./reader.js";
import { resolveFoot } from "./resolve-foot.js";
import type { DocumentPath } from "./schema/path-text.js";

/** `id`, `section` and `foot` of a post, present only where the document has them. */
export function ownPost(
  post: {
    readonly id?: string | undefined;
    readonly section?: string | undefined;
    readonly foot?: FootInput | undefined;
  },
  path: DocumentPath,
  read: Reader,
) {
  const section = post.section === undefined ? undefined : read.section(post.section, [...path, "section"]);
  return {
    ...(post.id === undefined ? {} : { id: post.id }),
    ...(section === undefined ? {} : { section }),
    ...(post.foot === undefined ? {} : { foot: resolveFoot(post.foot, [...path, "foot"], read) }),
  };
}

function treadPost(
  post: TreadPostInput,
  behind: LengthInput | undefined,
  treads: number,
  path: DocumentPath,
  read: Reader,
): PostDesign {
  const written = typeof post === "number" ? { tread: post } : post;
  if (written.tread > treads) {
    read.report(
      "no-such-tread",
      path,
      `expected a tread from 1 to ${treads}, got ${written.tread}; the flight has ${treads + 1} risers and the last one ends at the landing.`,
      "Name a lower tread, or put the post on the landing leg.",
      { tread: written.tread, treads },
    );
  }
  const own = written.behindNosing ?? behind;
  if (own === undefined) {
    read.report(
      "missing",
      [...path, "behindNosing"],
      "expected how far behind its nosing the post stands, got nothing.",
      "Add `behindNosing` to the posts of this leg.",
    );
  }
  const at =
    written.behindNosing === undefined ? [...path.slice(0, -2), "behindNosing"] : [...path, "behindNosing"];
  const behindNosing = own === undefined ? 0 : read.length(own, at, "not-negative");
  return { on: "tread", tread: written.tread, behindNosing, ...ownPost(written, path, read) };
}

function stationPost(post: StationPostInput, path: DocumentPath, read: Reader): PostDesign {
  if (typeof post !== "object") return { on: "station", at: read.length(post, path, "not-negative") };
  return {
    on: "station",
    at: read.length(post.at, [...path, "at"], "not-negative"),
    ...ownPost(post, path, read),
  };
}

function spacedOf(spacing: SpacingInput, path: DocumentPath, read: Reader): SpacedPosts | undefined {
  const from = read.length(spacing.from, [...path, "from"], "not-negative");
  const to = read.length(spacing.to, [...path, "to"], "not-negative");
  const { greatest, spaces, along = "plan" } = spacing;
  if ((greatest === undefined) === (spaces === undefined)) {
    const got = greatest === undefined ? "neither" : "both";
    const message = `expected either \`greatest\` or \`spaces\`, got ${got}.`;
    read.report("bad-spacing", path, message, "Give one of the two.");
    return undefined;
  }
  if (to <= from) {
    const message = `expected \`to\` farther along than \`from\`, got ${from} and ${to} mm.`;
    read.report("bad-spacing", path, message, "Give the lower station first.", { from, to });
    return undefined;
  }
  if (spaces !== undefined) return { from, to, by: { type: "count", spaces } };
  const space = read.length(greatest as LengthInput, [...path, "greatest"], "positive");
  return { from, to, by: { type: "greatest", space, along } };
}

/** How many posts a leg's document asks for before spaces are divided. */
export function postCount(leg: LegInput): number {
  const { at = [], spacing } = leg.posts ?? {};
  const onTreads = (leg.posts as StairPostsInput | undefined)?.onTreads ?? [];
  return at.length + onTreads.length + (spacing === undefined ? 0 : (spacing.spaces ?? 1) + 1);
}

/** The posts of a leg. */
export function resolvePosts(
  leg: LegInput,
  treads: number,
  path: DocumentPath,
  read: Reader,
): { readonly posts: readonly PostDesign[]; readonly spaced?: SpacedPosts } {
  if (leg.posts === undefined) return { posts: [] };
  const { at = [], spacing } = leg.posts;
  const stair = leg.along === "stair" ? leg.posts : undefined;
  const onTreads = (stair?.onTreads ?? []).map((post, i) =>
    treadPost(post, stair?.behindNosing, treads, [...path, "onTreads", i], read),
  );
  const stations = at.map((post, i) => stationPost(post, [...path, "at", i], read));
  const spaced = spacing === undefined ? undefined : spacedOf(spacing, [...path, "spacing"], read);
  return { posts: [...onTreads, ...stations], ...(spaced === undefined ? {} : { spaced }) };
}
