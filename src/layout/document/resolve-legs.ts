/**
 * Reads the legs of a checked document: lengths to millimetres, defaults filled in, order and names checked.
 *
 * @packageDocumentation
 */
import { LIMITS } from "./defaults.js";
import type { LegDesign, RailDesign, StairDesign } from "./design.js";
import type { DesignInput, LegInput } from "./design-input.js";
import type { Reader } from "./reader.js";
import { resolveBreak, resolveEnd, resolveTurn } from "./resolve-ends.js";
import { resolveFoot } from "./resolve-foot.js";
import { resolveInfill } from "./resolve-infill.js";
import { lengthOrSurvey, type ReadPlan } from "./resolve-plan.js";
import { postCount, resolvePosts } from "./resolve-posts.js";
import { handrailsAlone } from "./resolve-rails.js";
import { resolveSteps } from "./resolve-stair.js";
import type { DocumentPath } from "./schema/path-text.js";
import { got } from "./schema/path-text.js";

/** Length of a level leg, needed where something must be measured from its far end. */
function lengthOf(
  leg: Exclude<LegInput, { along: "stair" }>,
  last: boolean,
  path: DocumentPath,
  read: Reader,
  plan: ReadPlan | undefined,
): Pick<LegDesign, "length"> {
  if (leg.length !== undefined)
    return { length: lengthOrSurvey(leg.length, plan, [...path, "length"], read) };
  const wall = (leg.end ?? leg.start)?.type === "wall";
  const why = !last ? "another leg follows" : wall ? "it ends at a wall" : "no post ends it";
  if (!last || wall || postCount(leg) === 0) {
    const message = `expected a length because ${why}, got nothing.`;
    read.report("missing", [...path, "length"], message, "Add `length`.");
  }
  return {};
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

/** Order: a floor first if at all, then flights and landings from a flight on; two flights need something between them. */
function checkOrder(legs: readonly LegInput[], read: Reader): void {
  const names = legs.map((leg) => leg.along);
  const first = names[0] === "floor" ? 1 : 0;
  const sound = names[first] === "stair" && !names.slice(1).includes("floor");
  if (!sound) {
    const message = `expected a floor (if any), then a stair, then landings and flights, got ${names.join(", ")}.`;
    const hint = "Order the legs as one walks up; a stair leg is needed.";
    read.report("leg-order", ["legs"], message, hint);
  }
  legs.forEach((leg, i) => {
    if (leg.along !== "stair" || legs[i - 1]?.along !== "stair") return;
    if (leg.turn?.past !== undefined || leg.turn?.before !== undefined) return;
    const message =
      "expected a landing between two flights, or a turn with room (`past`, `before`), got neither.";
    read.report("leg-order", ["legs", i], message, "Add the landing leg, or the room the corner takes.");
  });
}

function idsOf(legs: readonly LegInput[], read: Reader): string[] {
  const count = new Map<string, number>();
  const taken = new Set<string>();
  return legs.map((leg, i) => {
    const n = (count.get(leg.along) ?? 0) + 1;
    count.set(leg.along, n);
    const id = leg.id ?? (n === 1 ? leg.along : `${leg.along}-${n}`);
    if (taken.has(id.toLowerCase())) {
      const message = `expected an id of its own, got ${id} again.`;
      read.report("duplicate-id", ["legs", i], message, "Give the leg another id.");
    }
    taken.add(id.toLowerCase());
    return id;
  });
}

function endsOf(leg: LegInput, i: number, count: number, path: DocumentPath, read: Reader) {
  const [first, last] = [i === 0, i === count - 1];
  const level = leg.along !== "stair";
  // A floor before the stair has one far end; it may be called its end.
  const backward = first && !last && level;
  const start = backward ? (leg.start ?? leg.end) : leg.start;
  const end = backward ? undefined : leg.end;
  const startKey = backward && leg.start === undefined ? "end" : "start";
  const misplaced = [
    ...(start !== undefined && !first ? [startKey] : []),
    ...(end !== undefined && !last ? ["end"] : []),
    ...(backward && leg.start !== undefined && leg.end !== undefined ? ["end"] : []),
  ];
  for (const key of misplaced) {
    const message = "expected an end only where the guard ends, got one between two legs.";
    read.report("end-between-legs", [...path, key], message, "Move it to the guard's first or last leg.");
  }
  return {
    ...(first && (start !== undefined || backward)
      ? { start: resolveEnd(start, [...path, startKey], read) }
      : {}),
    ...(last && (end !== undefined || level) ? { end: resolveEnd(end, [...path, "end"], read) } : {}),
  };
}

/** Height of the top rail; without a rail there is nothing that stands at one, and no post to carry it. */
function topOf(leg: LegInput, alone: boolean, path: DocumentPath, read: Reader): number {
  if (alone && postCount(leg) > 0) {
    const message = "expected a top rail over posts, got a design with handrails alone.";
    read.report("bad-value", [...path, "posts"], message, "Add a top rail, or remove the posts.");
  }
  if (leg.top !== undefined) return read.length(leg.top, [...path, "top"], "positive");
  if (!alone) {
    const message = "expected the height of the top rail, got nothing.";
    read.report("missing", [...path, "top"], message, "Add `top`.");
  }
  return 0;
}

/** Limits of the rail's height over every nosing. */
function heightsOf(leg: LegInput, path: DocumentPath, read: Reader): Pick<LegDesign, "heights"> {
  if (leg.along !== "stair" || leg.heights === undefined) return {};
  const least = read.length(leg.heights.least, [...path, "least"], "positive");
  const most = read.length(leg.heights.most, [...path, "most"], "positive");
  if (least <= most) return { heights: { least, most } };
  const message = `expected \`least\` not above \`most\`, got ${least} mm and ${most} mm.`;
  read.report("bad-value", path, message, "Exchange them, or correct one.", { least, most });
  return {};
}

function legOf(
  leg: LegInput,
  i: number,
  id: string,
  all: {
    readonly document: DesignInput;
    readonly stair: StairDesign;
    readonly rails: readonly RailDesign[];
    readonly plan: ReadPlan | undefined;
  },
  read: Reader,
): LegDesign {
  const path = ["legs", i];
  const { legs } = all.document;
  const own =
    leg.along === "stair" && leg.stair ? resolveSteps(leg.stair, [...path, "stair"], read) : all.stair;
  const treads = (own.nosings === undefined ? own.risers : own.nosings.length) - 1;
  if (i === 0 && leg.turn !== undefined) {
    const message = "expected a turn between two legs, got one before the first.";
    read.report("turn-before-first", [...path, "turn"], message, "Move it to the leg after the corner.");
  }
  const infill =
    typeof leg.infill === "object" ? resolveInfill(leg.infill, [...path, "infill"], read) : leg.infill;
  const before = legs[i - 1]?.along;
  const turned = leg.turn !== undefined && leg.turn.corner !== "level";
  return {
    id,
    along: leg.along,
    top: topOf(leg, handrailsAlone(all.document), path, read),
    undersides: undersidesOf(leg, all.rails, [...path, "undersides"], read),
    ...resolvePosts(leg, treads, [...path, "posts"], read),
    ...(leg.along === "stair"
      ? { stair: own }
      : lengthOf(leg, i === 0 || i === legs.length - 1, path, read, all.plan)),
    ...heightsOf(leg, [...path, "heights"], read),
    slope: leg.along === "stair" ? 0 : (leg.slope ?? 0),
    break: resolveBreak(leg.break, { before, own: leg.along, turned }, [...path, "break"], read),
    ...(leg.turn === undefined ? {} : { turn: resolveTurn(leg.turn, [...path, "turn"], read, all.plan) }),
    ...endsOf(leg, i, legs.length, path, read),
    ...(leg.foot === undefined ? {} : { foot: resolveFoot(leg.foot, [...path, "foot"], read) }),
    ...(infill && { infill }),
  };
}

/** The legs of a document, read; order and repetition are reported. */
export function resolveLegs(
  document: DesignInput,
  stair: StairDesign,
  rails: readonly RailDesign[],
  read: Reader,
  plan?: ReadPlan,
): LegDesign[] {
  checkOrder(document.legs, read);
  const count = document.legs.reduce((sum, leg) => sum + postCount(leg), 0);
  if (count > LIMITS.posts) {
    const message = `expected at most ${LIMITS.posts} posts, got ${count}.`;
    read.report("out-of-range", ["legs"], message, "Split the job into guards.");
  }
  const ids = idsOf(document.legs, read);
  return document.legs.map((leg, i) =>
    legOf(leg, i, ids[i] ?? leg.along, { document, stair, rails, plan }, read),
  );
}
