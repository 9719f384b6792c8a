/**
 * An earlier solution in hand changes nothing but which pieces are the same objects.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type JointModel, solveJoints } from "../../src/joints/index.js";
import { type Member, member } from "../../src/members/index.js";
import { pieceOf, post, rail, TUBE42, TUBE48 } from "./models.js";

/** A level guard: posts under a rail, a lower rail in each bay. */
function guard(count: number): Member[] {
  const posts = Array.from({ length: count }, (_, i) =>
    post(`P${i}`, [1000 * i + 200, 0, 0], [1000 * i + 200, 0, 900]),
  );
  const bays = posts
    .slice(1)
    .map((_, i) =>
      rail(`L${i}`, [1000 * i + 200, 0, 300], [1000 * i + 1200, 0, 300], { role: "rail", section: TUBE42 }),
    );
  return [rail("R", [0, 0, 900], [1000 * count, 0, 900]), ...posts, ...bays];
}

type Edit = {
  readonly what: "move" | "raise" | "drop" | "swell" | "reorder";
  readonly which: number;
  readonly by: number;
};
const edit: fc.Arbitrary<Edit> = fc.record({
  what: fc.constantFrom(
    "move" as const,
    "raise" as const,
    "drop" as const,
    "swell" as const,
    "reorder" as const,
  ),
  which: fc.nat(30),
  by: fc.constantFrom(0, 0.4, 7, 40),
});

function edited(members: readonly Member[], { what, which, by }: Edit): Member[] {
  const at = which % members.length;
  if (what === "drop") return members.filter((_, i) => i !== at);
  if (what === "reorder") return [...members.slice(at), ...members.slice(0, at)];
  return members.map((m, i) => {
    if (i !== at) return m;
    const { id, role, from, to } = m;
    if (what === "swell")
      return member({ id, role, from, to, section: m.section === TUBE48 ? TUBE42 : TUBE48 });
    const d = what === "move" ? [by, 0, 0] : [0, 0, by];
    const shift = (p: typeof from) => [p[0] + d[0]!, p[1] + d[1]!, p[2] + d[2]!] as const;
    return member({ id, role, section: m.section, from: shift(from), to: shift(to) });
  });
}

describe("previous", () => {
  it("gives what a fresh solve gives, over random edits, and the same objects where nothing changed", () => {
    let [kept, made] = [0, 0];
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        let members = guard(4);
        let previous = solveJoints({ members });
        for (const e of edits) {
          members = edited(members, e);
          const model: JointModel = { members };
          const fresh = solveJoints(model);
          const again = solveJoints({ ...model, previous });
          expect(again).toEqual(fresh);
          const before = new Map(previous.pieces.map((p) => [p.id, p]));
          for (const p of again.pieces) {
            const old = before.get(p.id);
            const same = old !== undefined && JSON.stringify(old) === JSON.stringify(p);
            expect(p === old).toBe(same);
            if (same) kept++;
            else made++;
          }
          previous = again;
        }
      }),
      { numRuns: 40, seed: 20260309 },
    );
    expect(Math.min(kept, made)).toBeGreaterThan(40);
  });

  it("may have been copied from another thread", () => {
    const members = guard(3);
    const previous = structuredClone(solveJoints({ members }));
    const again = solveJoints({ members, previous });
    for (const [i, p] of again.pieces.entries()) expect(p).toBe(previous.pieces[i]);
  });

  it("moving the last post re-cuts its lower rail and nothing else", () => {
    const members = guard(4);
    const previous = solveJoints({ members });
    const again = solveJoints({ members: edited(members, { what: "move", which: 4, by: 40 }), previous });
    const changed = again.pieces.filter((p) => p !== pieceOf(previous, p.id)).map((p) => p.id);
    expect(changed).toEqual(["P3", "L2"]);
  });
});
