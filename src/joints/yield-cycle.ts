/**
 * Does any member yield, by way of others, to itself at one node?
 *
 * An end that is shaped to a member yields to it. If that member's end at the same place yields in turn, and so on round
 * to the first, each is cut to what is not there and the joint stands open. Two ends are at one place when their points
 * are no farther apart than the two sections reach; members that rest on one another in a ring, each away from the next
 * one's end, are no cycle. Depth first, each end looked at once.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { reachOf } from "../kernel/region-extent.js";
import { distance } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { type Decision, endKey } from "./decision.js";
import { endPoint } from "./nodes.js";

interface End {
  readonly member: Member;
  readonly end: 0 | 1;
}

/** One finding per cycle, its members in the order in which they yield. */
export function yieldCycles(
  byEnd: ReadonlyMap<string, Decision>,
  members: ReadonlyMap<string, Member>,
): Diagnostic[] {
  const key = ({ member, end }: End): string => endKey({ member: member.id, end });
  const next = (from: End): End[] => {
    const decision = byEnd.get(key(from));
    if (decision?.kind !== "skin") return [];
    return decision.onto.flatMap((id) => {
      const member = members.get(id);
      return member === undefined
        ? []
        : ([0, 1] as const).map((end) => ({ member, end })).filter((to) => together(from, to));
    });
  };
  const done = new Set<string>();
  const found: Diagnostic[] = [];
  const walk = (at: End, path: readonly End[]): void => {
    const known = path.findIndex((e) => key(e) === key(at));
    if (known >= 0) found.push(cycle(path.slice(known), byEnd));
    if (known >= 0 || done.has(key(at))) return;
    for (const to of next(at)) walk(to, [...path, at]);
    done.add(key(at));
  };
  for (const member of members.values()) {
    for (const end of [0, 1] as const) walk({ member, end }, []);
  }
  return found;
}

function together(a: End, b: End): boolean {
  const reach = reachOf(a.member.section.region.outer) + reachOf(b.member.section.region.outer);
  return distance(endPoint(a.member, a.end), endPoint(b.member, b.end)) <= reach;
}

function cycle(ends: readonly End[], byEnd: ReadonlyMap<string, Decision>): Diagnostic {
  const ids = ends.map((e) => e.member.id);
  const [{ member, end }] = ends as [End];
  const joint = byEnd.get(endKey({ member: member.id, end }))?.joint;
  return diagnostic({
    code: "yield-cycle",
    members: ids,
    ...(joint === undefined ? {} : { joint }),
    end,
    point: endPoint(member, end),
    message: `${[...ids, ids[0]].join(" is cut to ")} at one node: none of them goes on.`,
    hint: "Let one of them go on: leave out the joint that cuts it, or cut it to a plane.",
    values: { members: ids.length },
  });
}
