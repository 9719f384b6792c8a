/**
 * Which members meet by design: at a node, on a span, or in a joint that names both.
 *
 * @packageDocumentation
 */
import { namesOf } from "./explicit.js";
import type { Joint } from "./joint.js";
import type { Meeting } from "./nodes.js";

/** Tells of two members whether they meet. */
export function metPairs(
  meetings: readonly Meeting[],
  joints: readonly Joint[],
): (a: string, b: string) => boolean {
  const mates = new Map<string, Set<string>>();
  const add = (a: string, b: string): void => {
    const set = mates.get(a);
    if (set) set.add(b);
    else mates.set(a, new Set([b]));
  };
  for (const { end, ends, spans } of meetings) {
    for (const other of ends) add(end.member, other.member);
    for (const span of spans) add(end.member, span);
  }
  for (const joint of joints) {
    const [first = "", ...others] = namesOf(joint);
    for (const other of others) add(first, other);
  }
  return (a, b) => mates.get(a)?.has(b) === true || mates.get(b)?.has(a) === true;
}
