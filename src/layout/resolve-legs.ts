/**
 * Reads the legs of a checked document: lengths to millimetres, defaults filled in, order and names checked.
 *
 * @packageDocumentation
 */
import { DEFAULTS, LIMITS } from "./defaults.js";
import type { EndDesign, LegDesign, PostDesign, RailDesign } from "./design.js";
import type { DesignInput, EndInput, LegInput, StationPostInput, TreadPostInput } from "./design-input.js";
import type { Reader } from "./reader.js";
import type { DocumentPath } from "./schema/path-text.js";
import { got } from "./schema/path-text.js";

const ORDER = { floor: 0, stair: 1, landing: 2 } as const;

/** `id` and `section` of a post, present only where the document has them. */
function ownOf(
  post: { readonly id?: string | undefined; readonly section?: string | undefined },
  path: DocumentPath,
  read: Reader,
) {
  const section = post.section === undefined ? undefined : read.section(post.section, [...path, "section"]);
  return { ...(post.id === undefined ? {} : { id: post.id }), ...(section === undefined ? {} : { section }) };
}

function treadPost(
  post: TreadPostInput,
  behind: number,
  risers: number,
  path: DocumentPath,
  read: Reader,
): PostDesign {
  const written = typeof post === "number" ? { tread: post } : post;
  if (written.tread >= risers) {
    read.report(
      "no-such-tread",
      path,
      `expected a tread from 1 to ${risers - 1}, got ${written.tread}; the stair has ${risers} risers and the last one ends at the landing.`,
      "Name a lower tread, or put the post on the landing leg.",
      { tread: written.tread, treads: risers - 1 },
    );
  }
  const own = written.behindNosing;
  const behindNosing =
    own === undefined ? behind : read.length(own, [...path, "behindNosing"], "not-negative");
  return { on: "tread", tread: written.tread, behindNosing, ...ownOf(written, path, read) };
}

function stationPost(post: StationPostInput, path: DocumentPath, read: Reader): PostDesign {
  if (typeof post !== "object") return { on: "station", at: read.length(post, path, "not-negative") };
  return {
    on: "station",
    at: read.length(post.at, [...path, "at"], "not-negative"),
    ...ownOf(post, path, read),
  };
}

function endOf(end: EndInput | undefined, path: DocumentPath, read: Reader): EndDesign {
  if (end?.type === "wall") {
    const plate = end.endPlate;
    return {
      type: "wall",
      endPlate:
        plate === undefined ? DEFAULTS.endPlate : read.length(plate, [...path, "endPlate"], "not-negative"),
    };
  }
  const past = end?.overhang;
  return {
    type: "free",
    overhang:
      past === undefined ? DEFAULTS.freeOverhang : read.length(past, [...path, "overhang"], "not-negative"),
  };
}

function postsOf(leg: LegInput, risers: number, path: DocumentPath, read: Reader): readonly PostDesign[] {
  if (leg.posts === undefined) return [];
  if (leg.along !== "stair")
    return leg.posts.at.map((post, i) => stationPost(post, [...path, "at", i], read));
  const behind = read.length(leg.posts.behindNosing, [...path, "behindNosing"], "not-negative");
  return leg.posts.onTreads.map((post, i) => treadPost(post, behind, risers, [...path, "onTreads", i], read));
}

function levelEnd(
  leg: Exclude<LegInput, { along: "stair" }>,
  path: DocumentPath,
  read: Reader,
): Pick<LegDesign, "length" | "end"> {
  const end = endOf(leg.end, [...path, "end"], read);
  if (leg.length !== undefined)
    return { length: read.length(leg.length, [...path, "length"], "positive"), end };
  if (end.type === "wall" || (leg.posts?.at.length ?? 0) === 0) {
    const why = end.type === "wall" ? "it ends at a wall" : "no post ends it";
    read.report(
      "missing",
      [...path, "length"],
      `expected a length because ${why}, got nothing.`,
      "Add `length`.",
    );
  }
  return { end };
}

function undersidesOf(leg: LegInput, rails: readonly RailDesign[], path: DocumentPath, read: Reader) {
  const lower = rails.filter((rail) => rail.role === "lower").map((rail) => rail.id);
  const entries = Object.entries(leg.undersides ?? {}).map(([id, height]): [string, number] => {
    if (!lower.includes(id)) {
      const message = `expected the id of a lower rail (${lower.join(", ") || "none"}), got ${got(id)}.`;
      read.report("unknown-rail", [...path, id], message, "Add the rail to `rails`, or correct the name.");
    }
    return [id, read.length(height, [...path, id], "not-negative")];
  });
  return Object.fromEntries(entries);
}

/** The legs of a document, read; order and repetition are reported. */
export function resolveLegs(document: DesignInput, rails: readonly RailDesign[], read: Reader): LegDesign[] {
  const rank = document.legs.map((leg) => ORDER[leg.along]);
  const names = document.legs.map((leg) => leg.along);
  if (!names.includes("stair") || rank.some((own, i) => i > 0 && own <= (rank[i - 1] ?? -1))) {
    read.report(
      "leg-order",
      ["legs"],
      `expected floor (if any), stair, landing (if any), each once, got ${names.join(", ")}.`,
      "Order the legs as one walks up; the stair leg is needed.",
    );
  }
  const counts = document.legs.map(
    (leg) => (leg.along === "stair" ? leg.posts?.onTreads : leg.posts?.at)?.length ?? 0,
  );
  const count = counts.reduce((sum, own) => sum + own, 0);
  if (count > LIMITS.posts) {
    read.report(
      "out-of-range",
      ["legs"],
      `expected at most ${LIMITS.posts} posts, got ${count}.`,
      "Split the job into guards.",
    );
  }
  return document.legs.map((leg, i): LegDesign => {
    const path = ["legs", i];
    return {
      along: leg.along,
      top: read.length(leg.top, [...path, "top"], "positive"),
      undersides: undersidesOf(leg, rails, [...path, "undersides"], read),
      posts: postsOf(leg, document.stair.risers, [...path, "posts"], read),
      ...(leg.along === "stair" ? {} : levelEnd(leg, path, read)),
    };
  });
}
