/**
 * Are the numbers of the joints asked for, and of the rules, ones the solver can work with?
 *
 * A number that is none, or a gap below nothing, is a programming error: it throws, naming the joint and the field.
 * What a joint asks for that cannot be made of good numbers is a finding instead (see `explicit`). Millimetres.
 *
 * @packageDocumentation
 */
import { argument } from "./argument.js";
import type { Joint, JointRules } from "./joint.js";

const HINT = "Look for a missing input, or a division by nothing, where the joint is made.";

/** Throws `bad-joint` for a number that is not finite, a gap or an overhang below 0, and a node tolerance that is not above 0. */
export function checkJoints(joints: readonly Joint[], rules: Required<JointRules>): void {
  const least = (field: string, value: number, range: { least?: number; above?: number }): void => {
    argument(value, range, { code: "bad-joint", field, unit: " mm", hint: HINT });
  };
  least("rules.nodeTolerance", rules.nodeTolerance, { above: 0 });
  least("rules.gap", rules.gap, { least: 0 });
  least("rules.overhang", rules.overhang, { least: 0 });
  for (const j of joints) {
    if (j.kind === "cope" && j.gap !== undefined) least(`${j.id}.gap`, j.gap, { least: 0 });
    if (j.kind === "through") least(`${j.id}.clearance`, j.clearance, { least: 0 });
    if (j.kind === "bore")
      for (const x of [...j.at, ...j.direction]) least(`${j.id}.at or .direction`, x, {});
    if (j.kind !== "cut") continue;
    for (const x of j.at ?? []) least(`${j.id}.at`, x, {});
    for (const x of j.cut.type === "plane" ? j.cut.normal : []) least(`${j.id}.cut.normal`, x, {});
  }
}
