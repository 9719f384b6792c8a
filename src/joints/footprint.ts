/**
 * Does the header reach under the whole branch? Branches are cut to untrimmed skins, so this is asked afterwards.
 *
 * Points of the branch's cut, taken just inside its outline, are carried into the header's frame; the header's own ends say
 * whether it has material there.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { insidePoint } from "../kernel/end-boundary.js";
import { type CompiledEnd, outAt } from "../kernel/end-compile.js";
import { endRange } from "../kernel/end-range.js";
import { pointToLocal, pointToParent } from "../kernel/frame.js";
import { reachOf } from "../kernel/region-extent.js";
import { STEP_MM } from "../kernel/tolerance.js";
import { dot, sub, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";

/** A member with its compiled ends; null where an end could not be compiled. */
export interface Compiled {
  readonly member: Member;
  readonly ends: readonly [CompiledEnd | null, CompiledEnd | null];
}

const STATIONS = 12;

/** A header with the stretch along its axis that it is sure to fill over all its section. */
interface Filled {
  readonly header: Compiled;
  readonly from: number;
  readonly to: number;
}

function filled(header: Compiled): Filled {
  const radius = reachOf(header.member.section.region.outer);
  const [low, high] = header.ends;
  return {
    header,
    from: low ? -endRange(low, radius).least : Number.NEGATIVE_INFINITY,
    to: high ? endRange(high, radius).least : Number.POSITIVE_INFINITY,
  };
}

/** How far a point is past the header's ends along its axis, millimetres; 0 when the header reaches it. */
function pastEnds({ header, from, to }: Filled, p: Vec3): number {
  const { frame } = header.member;
  const along = dot(sub(p, frame.origin), frame.z);
  if (along > from && along < to) return 0;
  const [u, v, s] = pointToLocal(frame, p);
  const [low, high] = header.ends;
  const past = (end: CompiledEnd | null, outwards: number): number => {
    if (!end) return 0;
    const out = outAt(end, u, v);
    return Number.isFinite(out) ? outwards - out : 0;
  };
  return Math.max(0, past(low, -s), past(high, s));
}

/** A diagnostic when the branch's footprint runs past the ends of every header it is cut to. */
export function footprintProblem(
  branch: Compiled,
  end: 0 | 1,
  headers: readonly Compiled[],
): Diagnostic | null {
  const compiled = branch.ends[end];
  if (!compiled || headers.length === 0) return null;
  const { member } = branch;
  const filling = headers.map(filled);
  let worst = 0;
  let at: Vec3 = member.from;
  for (const segment of member.section.region.outer) {
    for (let k = 0; k < STATIONS; k++) {
      const [u, v] = insidePoint(segment, k / STATIONS);
      const out = outAt(compiled, u, v);
      if (!Number.isFinite(out)) continue;
      const p = pointToParent(member.frame, [u, v, compiled.dir * out]);
      let past = Number.POSITIVE_INFINITY;
      for (const header of filling) past = Math.min(past, pastEnds(header, p));
      if (past > worst) [worst, at] = [past, p];
    }
  }
  if (worst <= STEP_MM) return null;
  const names = headers.map((h) => h.member.id);
  return diagnostic({
    code: "header-ends-inside-footprint",
    members: [member.id, ...names],
    end,
    point: at,
    message: `${names.join(" and ")} ${names.length > 1 ? "end" : "ends"} ${worst.toFixed(3)} mm inside the footprint of ${member.id}.`,
    hint: "Let the header run on past the branch, move the branch in, or cut the branch to a plane.",
    values: { past: worst },
  });
}
