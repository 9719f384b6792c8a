/**
 * Reads a design document: JSON of every shape in, a `Design` in millimetres or the reasons why not.
 *
 * Never throws, whatever the JSON. First the shape (zod), then the words (lengths, sections, names) and the rules between
 * fields; every finding carries the path of its field.
 *
 * @packageDocumentation
 */
import { hasErrors, type Result } from "../../kernel/diagnostic.js";
import { isMaterialName, MATERIALS } from "../../members/materials.js";
import { DEFAULTS } from "./defaults.js";
import type { Design, SpliceDesign } from "./design.js";
import type { DesignInput } from "./design-input.js";
import { type Reader, readerOf } from "./reader.js";
import { optional, resolveFoot } from "./resolve-foot.js";
import { resolveHandrails } from "./resolve-handrails.js";
import { resolveInfill } from "./resolve-infill.js";
import { resolveLegs } from "./resolve-legs.js";
import { planDesign, resolvePlan } from "./resolve-plan.js";
import { handrailsAlone, resolveRails } from "./resolve-rails.js";
import { resolveSteps } from "./resolve-stair.js";
import { resolveToeBoard } from "./resolve-toe-board.js";
import { checkShape } from "./schema/check-shape.js";
import { got } from "./schema/path-text.js";

/** Where the guard stands across the stair; a guard on both sides needs to know. */
function acrossOf(document: DesignInput, read: Reader): Pick<Design, "width" | "inset"> {
  const { stair, side } = document;
  const across = {
    ...optional("width", stair.width, ["stair"], read),
    ...(stair.inset === undefined
      ? {}
      : { inset: read.length(stair.inset, ["stair", "inset"], "not-negative") }),
  };
  const { width, inset = 0 } = across;
  if (side === "both" && width === undefined) {
    const message = "expected the stair's width because the guard stands on both sides, got nothing.";
    read.report("missing", ["stair", "width"], message, "Add `width` (and `inset`) to the stair.");
  }
  if (width !== undefined && width <= 2 * inset) {
    const message = `expected less than half the width of ${width} mm, got ${inset} mm.`;
    read.report("out-of-range", ["stair", "inset"], message, "Correct the inset or the width.", {
      width,
      inset,
    });
  }
  return across;
}

function splicesOf(document: DesignInput, read: Reader): readonly SpliceDesign[] {
  return (document.splices ?? []).flatMap((own, i): SpliceDesign[] => {
    const path = ["splices", i];
    const sleeve = read.section(own.sleeve, [...path, "sleeve"]);
    const at = read.length(own.at, [...path, "at"], "not-negative");
    const reach = read.length(own.reach, [...path, "reach"], "positive");
    return sleeve === undefined ? [] : [{ leg: own.leg, at, sleeve, reach }];
  });
}

function resolve(document: DesignInput): Result<Design> {
  const read = readerOf(document, document.unit, document.sections);
  const stair = resolveSteps(document.stair, ["stair"], read);
  const rails = resolveRails(document, read);
  const post = document.posts && read.section(document.posts.section, ["posts", "section"]);
  if (document.posts === undefined && !handrailsAlone(document)) {
    read.report("missing", ["posts"], "expected the posts' section, got nothing.", "Add `posts`.");
  }
  const plan = document.plan && resolvePlan(document.plan, ["plan"], read);
  const legs = resolveLegs(document, stair, rails, read, plan);
  const taken = planDesign(
    document,
    legs.map((own) => own.id),
    plan,
  );
  const heavy = document.endPosts && read.section(document.endPosts.section, ["endPosts", "section"]);
  const infill = document.infill && resolveInfill(document.infill, ["infill"], read);
  const rest = {
    version: 1,
    job: document.job,
    unit: document.unit,
    side: document.side,
    material: document.material ?? DEFAULTS.material,
    gap: document.gap === undefined ? DEFAULTS.gap : read.length(document.gap, ["gap"], "not-negative"),
    stair,
    ...(taken && { plan: taken }),
    ...acrossOf(document, read),
    rails,
    ...(document.endPosts && heavy ? { endPosts: { section: heavy, marks: document.endPosts.marks } } : {}),
    foot: resolveFoot(document.foot ?? {}, ["foot"], read),
    ...(infill && { infill }),
    splices: splicesOf(document, read),
    fieldJoints: document.fieldJoints ?? [],
    handrails: resolveHandrails(document, legs, read),
    ...resolveToeBoard(document, legs, read),
    legs,
  } as const;
  if (!isMaterialName(rest.material)) {
    const names = Object.keys(MATERIALS).join(", ");
    read.report(
      "unknown-material",
      ["material"],
      `expected one of ${names}, got ${got(rest.material)}.`,
      "Use a name of the table.",
    );
  }
  const { diagnostics } = read;
  // Handrails alone have no post; what a post would be made of is then never asked.
  const section = post ?? rest.handrails[0]?.section;
  if (section === undefined || hasErrors(diagnostics)) return { ok: false, diagnostics };
  return { ok: true, value: { ...rest, posts: { section } }, diagnostics };
}

/**
 * Reads a design document.
 *
 * @param json - parsed JSON of any shape
 * @returns the design, or diagnostics: `wrong-type`, `missing`, `unknown-key`, `bad-value`, `out-of-range`, `bad-name`,
 *   `bad-length`, `bad-section`, `unknown-section`, `unknown-rail`, `unknown-leg`, `duplicate-id`, `top-rail-count`, `leg-order`, `no-such-tread`, `unknown-material`
 * @example
 * ```ts
 * const read = parseDesign(JSON.parse(text));
 * if (read.ok) layOut(read.value);
 * ```
 */
export function parseDesign(json: unknown): Result<Design> {
  const checked = checkShape(json);
  return checked.ok ? resolve(checked.value) : checked;
}
