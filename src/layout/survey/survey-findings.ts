/**
 * What whoever taped the stair should hear about the adjusted survey.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import type { Adjustment } from "./adjustment.js";

function unchecked(of: Adjustment): Diagnostic[] {
  const ids = of.readings.filter((own) => own.redundancy === 0).map((own) => own.id);
  if (ids.length === 0) return [];
  const all = of.dof === 0;
  return [
    diagnostic({
      code: "survey-unchecked",
      severity: "warning",
      members: ids,
      message: all
        ? "Survey: there are just as many readings as unknowns. No check is possible: a wrong reading would not show."
        : `Survey: nothing checks ${ids.join(", ")}: a wrong reading there would not show.`,
      hint: "Read something that is not needed, best the slope from the lowest to the top nosing and the total rise.",
      values: { dof: of.dof },
    }),
  ];
}

/** How many names a sentence may hold; more readings that could be the wrong one as well are only counted. */
export const MOST_NAMES = 6;

/** What noise may have hidden behind the suspect. */
function maybe(others: readonly string[]): string {
  if (others.length === 0) return "";
  if (others.length > MOST_NAMES)
    return ` It could also be any of ${others.length} others: this is not far above the noise.`;
  return ` It could also be ${others.join(" or ")}: noise of this size can hide which.`;
}

function suspects(of: Adjustment): Diagnostic[] {
  return of.suspects.map(({ ids, alsoLikely, studentised }) => {
    const by = `${Math.abs(studentised).toFixed(1)} times its standard uncertainty`;
    const again = ids.length === 1 ? "Tape it again" : "Tape these again";
    return diagnostic({
      code: "survey-suspect",
      severity: "warning",
      members: [...ids, ...(alsoLikely.length > MOST_NAMES ? [] : alsoLikely)],
      message: `Survey: ${
        ids.length === 1
          ? `${ids[0]} does not agree with the other readings (${by}).`
          : `one of ${ids.join(", ")} is wrong (${by}); they cannot be told apart.`
      }${maybe(alsoLikely)}`,
      hint: `${again}${alsoLikely.length === 0 ? "" : ", then the others"}.`,
      values: { studentised, others: alsoLikely.length },
    });
  });
}

/** Steps that come out level or backwards: nosings are numbered from the lowest uphill. */
function backward(of: Adjustment): Diagnostic[] {
  const nosings = of.points.filter((own) => typeof own.point === "number");
  return (["x", "z"] as const).flatMap((axis) => {
    const along = nosings.filter((own) => own[axis] !== undefined);
    return along.flatMap((own, i) => {
      const before = along[i - 1];
      if (before === undefined) return [];
      const step = (own[axis] as number) - (before[axis] as number);
      if (step > 0) return [];
      const [what, way] = axis === "z" ? ["rise", "higher"] : ["going", "farther along"];
      return [
        diagnostic({
          code: "survey-step-back",
          severity: "warning",
          message: `Survey: expected nosing ${own.point} ${way} than ${before.point === 0 ? "the floor" : `nosing ${before.point}`}, got a ${what} of ${step.toFixed(1)} mm.`,
          hint: "See whether two readings were written in each other's place.",
          values: { step },
        }),
      ];
    });
  });
}

/**
 * Misfit, root mean square over the readings' own uncertainties, beyond which no chance explains it: 10 has odds of 10⁻²² with
 * one redundant reading, and less with more.
 */
const BEYOND_CHANCE = 10;

/** Readings that contradict each other so grossly that no place between them means anything. */
function contradictory({ chi2, dof }: Adjustment): Diagnostic[] {
  const times = dof === 0 ? 0 : Math.sqrt(chi2 / dof);
  if (times <= BEYOND_CHANCE) return [];
  return [
    diagnostic({
      code: "survey-contradictory",
      severity: "warning",
      message: `Survey: expected readings that agree within a few times what they are good for, got ${times.toFixed(0)} times that on average (chi2 ${chi2.toFixed(0)} on ${dof} redundant readings).`,
      hint: "Look for a reading in another unit, of another step, or two in each other's place; tape the suspects again, or leave them out.",
      values: { chi2, dof, times },
    }),
  ];
}

/** Warnings about an adjusted survey: suspects, gross contradictions, steps that go back, readings that nothing checks. */
export function adjustmentFindings(of: Adjustment): Diagnostic[] {
  return [...suspects(of), ...contradictory(of), ...backward(of), ...unchecked(of)];
}
