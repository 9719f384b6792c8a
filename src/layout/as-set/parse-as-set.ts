/**
 * Reads an as-set document against the design it was measured on: JSON of every shape in, an `AsSet` in millimetres or the
 * reasons why not.
 *
 * Never throws, whatever the JSON. First the shape (zod), then words and ranges, then whether the posts, legs and pieces are the
 * design's and can stand where they are said to.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import { diagnostic, hasErrors, type Result } from "../../kernel/diagnostic.js";
import type { Design } from "../document/design.js";
import { type Reader, readerOf } from "../document/reader.js";
import { asSetSchema } from "../document/schema/as-set-schema.js";
import { checkAgainst } from "../document/schema/check-shape.js";
import { nearestName } from "../document/schema/path-text.js";
import { placesOf } from "../places.js";
import { readingSigma } from "../survey/reading-sigma.js";
import type { AsSet, AsSetLeg } from "./as-set.js";
import { type AsSetInput, MADE_WORDS } from "./as-set-input.js";
import { checkStanding } from "./check-standing.js";
import { type LoadPieces, madePieces } from "./made.js";
import { measuredPosts } from "./measured-posts.js";

/** What messages call the document, and the keys that a misspelt one is compared with. */
const DOCUMENT = {
  name: "The as-set document",
  keys: [
    ...[
      "$schema",
      "version",
      "job",
      "unit",
      "tape",
      "posts",
      "legs",
      "made",
      "post",
      "stage",
      "x",
      "behindNosing",
    ],
    ...["at", "base", "lean", "leanAcross", "across", "sigma", "sigmaLean", "leg", "length", "piece", "from"],
    ...["features", "set", ...MADE_WORDS],
  ],
};

/** Level legs by the name the document may give them: their id, and in a pair the id with a guard's suffix. */
function legsOf(document: AsSetInput, design: Design, read: Reader): AsSetLeg[] {
  const suffixes = design.side === "both" ? ["", "-L", "-R"] : [""];
  const level = design.legs.filter((leg) => leg.along !== "stair").map((leg) => leg.id);
  const names = level.flatMap((id) => suffixes.map((suffix) => `${id}${suffix}`));
  const seen = new Set<string>();
  return (document.legs ?? []).flatMap(({ leg, length, sigma }, i): AsSetLeg[] => {
    const mm = read.length(length, ["legs", i, "length"], "positive");
    const own =
      sigma === undefined
        ? readingSigma({ kind: "run", from: 0, to: 1 }, mm, document.tape)
        : read.length(sigma, ["legs", i, "sigma"], "not-negative");
    if (!names.includes(leg)) {
      const flight = design.legs.some(({ id, along }) => id === leg && along === "stair");
      const near = nearestName(leg, names);
      const message = `expected a level leg of the design (${names.join(", ") || "none"}), got ${leg}${flight ? ", a flight" : ""}.`;
      const hint = flight
        ? "A flight is measured by its nosings, in the design or a survey."
        : near === undefined
          ? "Correct the leg's id."
          : `Did you mean ${near}?`;
      read.report("unknown-leg", ["legs", i, "leg"], message, hint);
      return [];
    }
    const covered = level.includes(leg) ? suffixes.map((suffix) => `${leg}${suffix}`) : [leg];
    const clash = covered.some((name) => seen.has(name));
    for (const name of covered) seen.add(name);
    if (clash) {
      const message = `expected each leg once, got ${leg} again.`;
      read.report("measured-twice", ["legs", i, "leg"], message, "Keep the reading that is right.");
      return [];
    }
    return [{ leg, length: mm, sigma: own, path: `legs[${i}]` }];
  });
}

function otherJob(document: AsSetInput, design: Design, read: Reader): void {
  if (document.job === undefined || document.job === design.job) return;
  read.diagnostics.push(
    diagnostic({
      code: "other-job",
      severity: "warning",
      path: "job",
      message: `job: expected the design's job (${design.job || "none"}), got ${document.job}: is this the measurement of another stair?`,
      hint: "Use the as-set file of this job, or correct its name.",
    }),
  );
}

function resolve(document: AsSetInput, design: Design, load: LoadPieces | undefined): Result<AsSet> {
  const read = readerOf(document, document.unit, {});
  otherJob(document, design, read);
  const legs = legsOf(document, design, read);
  const places = placesOf(design, undefined, { posts: [], legs, made: [] });
  const posts = measuredPosts(document, places, read);
  const made = madePieces(document.made ?? [], load, read);
  const value: AsSet = { posts, legs, made };
  if (!hasErrors(read.diagnostics)) read.diagnostics.push(...checkStanding(places, value));
  const { diagnostics } = read;
  return hasErrors(diagnostics) ? { ok: false, diagnostics } : { ok: true, value, diagnostics };
}

/**
 * Reads an as-set document.
 *
 * @param json - parsed JSON of any shape
 * @param design - from `parseDesign`: the guard that it was measured on
 * @param load - reads the pieces of an earlier build by what `from` says; without one a document may list no made pieces
 * @returns what stands, or diagnostics: those of reading a document (`wrong-type`, `unknown-key`, `bad-value`, `out-of-range`,
 *   `missing`, `bad-length`), `unknown-post`, `unknown-leg`, `measured-twice`, `two-places`, `no-such-place`, `lean-too-far`,
 *   `set-past-leg`, `set-out-of-order`, `made-without-pieces`, `unknown-piece`, `no-such-end`, `piece-not-sound`, and as warnings
 *   `other-job`, `set-far-off`
 * @example
 * ```ts
 * const read = parseAsSet({ version: 1, unit: "in", posts: [{ post: "P1", x: "-124 7/16", lean: 0.2 }] }, design);
 * if (read.ok) layOut(design, shop, read.value);
 * ```
 */
export function parseAsSet(
  json: unknown,
  design: Design,
  load?: (from: string) => Result<readonly Piece[]>,
): Result<AsSet> {
  const checked = checkAgainst(asSetSchema, json, DOCUMENT);
  return checked.ok ? resolve(checked.value, design, load) : checked;
}
