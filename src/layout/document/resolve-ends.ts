/**
 * Reads how the guard's ends are finished, how its rail breaks and how it turns.
 *
 * @packageDocumentation
 */
import { DEFAULTS } from "./defaults.js";
import type { BreakDesign, EndDesign, LegDesign, TurnDesign } from "./design.js";
import type { EndInput, LegBreakInput, LengthInput, TurnInput } from "./design-input.js";
import type { Reader } from "./reader.js";
import { resolveFlange } from "./resolve-foot.js";
import { type ReadPlan, turnOrSurvey } from "./resolve-plan.js";
import { ownPost } from "./resolve-posts.js";
import type { DocumentPath } from "./schema/path-text.js";

type Along = LegDesign["along"];

function lengthOr(
  input: LengthInput | undefined,
  fallback: number,
  path: DocumentPath,
  read: Reader,
): number {
  return input === undefined ? fallback : read.length(input, path, "not-negative");
}

/** An end. */
export function resolveEnd(end: EndInput | undefined, path: DocumentPath, read: Reader): EndDesign {
  const plate = () => ({
    endPlate:
      end?.type === "free" ? 0 : lengthOr(end?.endPlate, DEFAULTS.endPlate, [...path, "endPlate"], read),
    plate: resolveFlange(end?.type === "free" ? undefined : end?.plate, [...path, "plate"], read),
  });
  if (end?.type === "wall") return { type: "wall", ...plate() };
  if (end?.type === "return") {
    if (end.to === "post" && end.down === undefined) {
      const message = "expected how far down the return goes, got nothing.";
      read.report("missing", [...path, "down"], message, "Add `down`, between the centrelines.");
    }
    const overhang = read.length(end.overhang, [...path, "overhang"], "positive");
    const down = end.down === undefined ? 0 : read.length(end.down, [...path, "down"], "positive");
    return { type: "return", to: end.to, overhang, down, ...plate() };
  }
  return {
    type: "free",
    overhang: lengthOr(end?.overhang, DEFAULTS.freeOverhang, [...path, "overhang"], read),
    cap: lengthOr(end?.cap, DEFAULTS.cap, [...path, "cap"], read),
  };
}

/** A break, and whether one can be there at all. */
export function resolveBreak(
  written: LegBreakInput | undefined,
  legs: { readonly before: Along | undefined; readonly own: Along; readonly turned: boolean },
  path: DocumentPath,
  read: Reader,
): BreakDesign {
  if (written === undefined) return { type: "meet", at: 0 };
  const type = typeof written === "string" ? written : written.type;
  const at = typeof written === "string" ? undefined : written.at;
  if (legs.before === undefined || legs.turned) {
    const why = legs.turned ? "the guard turns in plan there" : "no leg comes before it";
    const message = `expected no break because ${why}, got ${type}.`;
    read.report("no-break-here", path, message, "Leave `break` out here.");
  } else if (type === "riser" && !(legs.before === "stair" && legs.own !== "stair")) {
    const message =
      "expected a break over a riser face only where a flight ends at a landing, got one elsewhere.";
    read.report("no-break-here", path, message, "Use `meet` or `drop` here.");
  } else if (type === "compromise" && legs.before !== "stair" && legs.own !== "stair") {
    const message = "expected a compromise only beside a flight, got one between level legs.";
    read.report("no-break-here", path, message, "Use `drop`, or one height for both legs.");
  }
  if (at !== undefined && type !== "drop") {
    read.report(
      "bad-value",
      [...path, "at"],
      `expected \`at\` only with a drop, got it with ${type}.`,
      "Remove it.",
    );
  }
  return { type, at: at === undefined ? 0 : read.length(at, [...path, "at"], "any") };
}

/** Least turn that is one, degrees; below it two legs are in line. */
const LEAST_TURN = 0.5;

/** A plan turn. */
export function resolveTurn(
  turn: TurnInput,
  path: DocumentPath,
  read: Reader,
  plan: ReadPlan | undefined,
): TurnDesign {
  const corner = turn.corner ?? "post";
  const angle = turnOrSurvey(turn.angle, plan, [...path, "angle"], read);
  if (Math.abs(angle) < LEAST_TURN) {
    read.report(
      "out-of-range",
      [...path, "angle"],
      `expected a turn of at least ${LEAST_TURN} degrees either way, got ${angle}.`,
      "Leave `turn` out where the guard goes straight on.",
      { angle },
    );
  }
  const past = lengthOr(turn.past, 0, [...path, "past"], read);
  const before = lengthOr(turn.before, 0, [...path, "before"], read);
  const only = (["above", "cap", "id", "section", "foot"] as const).filter((key) => turn[key] !== undefined);
  if (corner !== "post" && only.length > 0) {
    const message = `expected ${only.map((key) => `\`${key}\``).join(", ")} only with a corner post, got a corner of type ${corner}.`;
    read.report("bad-value", path, message, 'Remove them, or make it `"corner": "post"`.');
  }
  const cap = lengthOr(turn.cap, DEFAULTS.cap, [...path, "cap"], read);
  const above = lengthOr(turn.above, DEFAULTS.cornerAbove, [...path, "above"], read);
  if (cap > above) {
    const message = `expected room for the cap above the rails, got a cap of ${cap} mm in ${above} mm.`;
    read.report("out-of-range", [...path, "cap"], message, "Raise `above`: the cap stands within it.");
  }
  const base = { angle, corner, past, before };
  return corner === "post" ? { ...base, post: { ...ownPost(turn, path, read), above, cap } } : base;
}
