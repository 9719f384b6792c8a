/**
 * Reads the measured posts of an as-set document: which post, where along the guard, how it leans.
 *
 * @packageDocumentation
 */

import type { Reader } from "../document/reader.js";
import { type DocumentPath, nearestName } from "../document/schema/path-text.js";
import type { Place } from "../part.js";
import { type PlacedPost, placePosts } from "../posts/place-posts.js";
import type { LegGround } from "../site/site.js";
import { readingSigma } from "../survey/reading-sigma.js";
import type { AsSetPost } from "./as-set.js";
import type { AsSetInput, AsSetPostInput } from "./as-set-input.js";

/** Degrees. A post that leans more was mistyped, or wants setting again: common practice, no source. */
export const LEAN_LIMIT_DEG = 5;

interface Known {
  readonly place: Place;
  readonly post: PlacedPost;
}

/** The three ways of saying where. */
const PLACES = ["x", "behindNosing", "at"] as const;

function noPlace(own: AsSetPostInput, what: string, path: DocumentPath, read: Reader): undefined {
  const message = `expected post ${own.post} to be ${what}, which it is not in the design.`;
  read.report("no-such-place", path, message, "Give `x`, from the top nosing of the last flight.");
}

/** x along the guard, as the design's own words say it; undefined where the document says nothing, or nothing that fits. */
function xOf(own: AsSetPostInput, { place, post }: Known, path: DocumentPath, read: Reader) {
  const given = PLACES.filter((key) => own[key] !== undefined);
  if (given.length > 1) {
    const message = `expected one of x, behindNosing and at for post ${own.post}, got ${given.join(" and ")}.`;
    read.report("two-places", path, message, "Say once where it stands.");
    return undefined;
  }
  const [key] = given;
  const value = key && own[key];
  if (key === undefined || value === undefined) return undefined;
  const taped = read.length(value, [...path, key], "any");
  const ground = place.site.legs.find(({ leg }) => leg.id === post.leg) as LegGround;
  if (key === "x") return { x: taped, taped };
  if (post.corner !== undefined) return noPlace(own, "on a leg of its own", [...path, key], read);
  if (key === "behindNosing") {
    const nosing = ground.flight?.nosings.find(({ number }) => number === post.tread);
    if (nosing === undefined) return noPlace(own, "on a tread", [...path, key], read);
    return { x: nosing.x + taped, taped };
  }
  const backward = ground.index === 0 && ground.flight === undefined;
  return { x: backward ? ground.x[1] - taped : ground.x[0] + taped, taped };
}

function leanOf(own: AsSetPostInput, key: "lean" | "leanAcross", path: DocumentPath, read: Reader): number {
  const lean = own[key] ?? 0;
  if (Math.abs(lean) <= LEAN_LIMIT_DEG) return lean;
  const message = `expected post ${own.post} within ${LEAN_LIMIT_DEG} degrees of plumb, got ${lean}.`;
  const hint = "Correct the reading (degrees, not millimetres), or set the post again.";
  read.report("lean-too-far", [...path, key], message, hint, { lean, limit: LEAN_LIMIT_DEG });
  return 0;
}

function measured(
  own: AsSetPostInput,
  i: number,
  known: Known,
  tape: AsSetInput["tape"],
  read: Reader,
): AsSetPost {
  const path: DocumentPath = ["posts", i];
  const length = (key: "base" | "across" | "sigma", range: "any" | "not-negative") =>
    own[key] === undefined ? undefined : read.length(own[key], [...path, key], range);
  const place = xOf(own, known, path, read);
  const base = length("base", "any");
  const sigma = length("sigma", "not-negative");
  const usual = (taped: number) => readingSigma({ kind: "run", from: 0, to: 1 }, Math.abs(taped), tape);
  return {
    post: own.post,
    stage: own.stage ?? "dry-set",
    ...(place === undefined ? {} : { x: place.x }),
    ...(base === undefined ? {} : { baseZ: base }),
    lean: leanOf(own, "lean", path, read),
    leanAcross: leanOf(own, "leanAcross", path, read),
    across: length("across", "any") ?? 0,
    sigma: {
      x: sigma ?? usual(place?.taped ?? known.post.x),
      z: sigma ?? usual(base ?? known.post.baseZ),
      lean: own.sigmaLean ?? readingSigma({ kind: "level", from: 1, to: 2 }, 0, tape),
    },
    path: `posts[${i}]`,
  };
}

/** The measured posts of a document; `places` are the design's guards, with their legs as measured. */
export function measuredPosts(
  document: AsSetInput,
  places: readonly Place[],
  read: Reader,
): readonly AsSetPost[] {
  const known = new Map(
    places.flatMap((place) => placePosts(place).posts.map((post) => [post.mark, { place, post }] as const)),
  );
  const seen = new Set<string>();
  return (document.posts ?? []).flatMap((own, i): AsSetPost[] => {
    const found = known.get(own.post);
    if (found === undefined) {
      const marks = [...known.keys()];
      const near = nearestName(own.post, marks);
      const few = `${marks.slice(0, 12).join(", ") || "none"}${marks.length > 12 ? "…" : ""}`;
      const message = `expected the mark of a post of the design (${few}), got ${own.post}.`;
      const hint = near === undefined ? "Correct the mark." : `Did you mean ${near}?`;
      read.report("unknown-post", ["posts", i, "post"], message, hint);
      return [];
    }
    if (seen.has(own.post)) {
      const message = `expected each post once, got ${own.post} again.`;
      read.report("measured-twice", ["posts", i, "post"], message, "Keep the reading that is right.");
      return [];
    }
    seen.add(own.post);
    return [measured(own, i, found, document.tape, read)];
  });
}
