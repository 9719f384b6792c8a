/**
 * Members that yield to one another at one node, two by two or in a ring; and rings that rest on one another, which do not.
 */
import { describe, expect, it } from "vitest";
import type { CopeJoint } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { rail, solve } from "./models.js";

const cope = (member: string, end: 0 | 1, onto: string): CopeJoint => ({
  ...{ kind: "cope", id: `${member}-${onto}`, end: { member, end }, onto: [onto] },
});
const cycles = (...[members, joints]: Parameters<typeof solve>): readonly (readonly string[])[] =>
  solve(members, joints)
    .diagnostics.filter((d) => d.code === "yield-cycle")
    .map((d) => d.members);

const out = (id: string, to: Vec3) => rail(id, [0, 0, 0], to, { role: "rail" });

describe("yieldCycles", () => {
  const [a, b, c] = [out("A", [900, 0, 0]), out("B", [0, 900, 0]), out("C", [0, 0, 900])];

  it("finds two that are cut to each other, and says who and where", () => {
    const joints = [cope("A", 0, "B"), cope("B", 0, "A")];
    expect(cycles([a, b], joints)).toEqual([["A", "B"]]);
    const found = solve([a, b], joints).diagnostics.find((d) => d.code === "yield-cycle");
    expect(found).toMatchObject({ severity: "error", joint: "A-B", end: 0, point: [0, 0, 0] });
    expect(found?.message).toBe("A is cut to B is cut to A at one node: none of them goes on.");
  });

  it("finds a ring of three once, whatever the order of the members", () => {
    const joints = [cope("A", 0, "B"), cope("B", 0, "C"), cope("C", 0, "A")];
    expect(cycles([a, b, c], joints).map((m) => [...m].sort())).toEqual([["A", "B", "C"]]);
    expect(cycles([c, a, b], joints).map((m) => [...m].sort())).toEqual([["A", "B", "C"]]);
  });

  it("finds none where one of them goes on", () => {
    expect(cycles([a, b, c], [cope("A", 0, "B"), cope("B", 0, "C"), cope("A", 1, "C")])).toEqual([]);
  });

  it("finds none in four members that rest on one another round an opening, each away from the next one's end", () => {
    const ring = [
      rail("A", [0, 0, 0], [700, 0, 0]),
      rail("B", [500, -200, 0], [500, 500, 0]),
      rail("C", [700, 300, 0], [0, 300, 0]),
      rail("D", [200, 500, 0], [200, -200, 0]),
    ];
    const joints = [cope("A", 0, "D"), cope("B", 0, "A"), cope("C", 0, "B"), cope("D", 0, "C")];
    expect(cycles(ring, joints)).toEqual([]);
  });
});
