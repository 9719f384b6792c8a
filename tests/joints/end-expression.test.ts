import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Decision } from "../../src/joints/decision.js";
import { endExpression } from "../../src/joints/end-expression.js";
import { compileEnd, endAt } from "../../src/kernel/end-compile.js";
import { pointToParent, type Vec3 } from "../../src/kernel/index.js";
import { post, RAD, rail, TUBE42, TUBE60 } from "./models.js";

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Where fibres of a member end, in the layout. */
function endsOf(decision: Decision, members: Parameters<typeof endExpression>[2], end: 0 | 1): Vec3[] {
  const m = members.get("P")!;
  const made = compileEnd(endExpression(decision, m, members), end === 1 ? 1 : -1, m.section.region);
  if (!made.end) throw new Error(made.diagnostics.map((d) => d.message).join());
  const compiled = made.end;
  return [0, 50, 100, 170, 240, 310].map((phi) => {
    const [u, v] = [21.2 * Math.cos(phi * RAD), 21.2 * Math.sin(phi * RAD)];
    return pointToParent(m.frame, [u, v, compiled.dir * endAt(compiled, u, v).out]);
  });
}

const tilt = fc.double({ min: -50, max: 50, noNaN: true });

describe("endExpression", () => {
  it("puts a flat cut on its plane of the layout, whichever way the member stands (definition)", () => {
    fc.assert(
      fc.property(tilt, tilt, fc.constantFrom(0 as const, 1 as const), (a, b, end) => {
        const p = post("P", [100, 200, 0], [100 + 600 * Math.sin(a * RAD), 200, 600 * Math.cos(a * RAD)], {
          up: [0, 1, 0],
        });
        const normal: Vec3 = [Math.sin(b * RAD) * 0.6, 0.8 * Math.sin(b * RAD), Math.cos(b * RAD)];
        fc.pre(Math.abs(dot(normal, p.frame.z)) > 0.1);
        const point: Vec3 = [130, 190, 500];
        const flat: Decision = {
          kind: "flat",
          joint: "J",
          onto: ["X"],
          point,
          normal,
          miter: false,
          step: 0,
        };
        for (const q of endsOf(flat, new Map([["P", p]]), end)) {
          expect(Math.abs(dot(sub(q, point), normal))).toBeLessThan(1e-9);
        }
        expect(endExpression(flat, p, new Map())).toMatchObject({ source: { joint: "J", onto: "X" } });
      }),
    );
  });

  it("puts a cope on the header's skin, a gap away (second route: distance from the header's axis)", () => {
    fc.assert(
      fc.property(
        tilt,
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (a, beside, gap) => {
          const d: Vec3 = [Math.cos(a * RAD), 0, Math.sin(a * RAD)];
          const r = rail(
            "R",
            [-500 * d[0], beside, 700 - 500 * d[2]],
            [500 * d[0], beside, 700 + 500 * d[2]],
            { section: TUBE60 },
          );
          const p = post("P", [0, 0, 0], [0, 0, 700], { section: TUBE42 });
          const members = new Map([r, p].map((m) => [m.id, m]));
          const skin: Decision = {
            kind: "skin",
            joint: "J",
            onto: ["R"],
            gap,
            shoulder: "refuse",
            combine: { by: "min" },
          };
          for (const q of endsOf(skin, members, 1)) {
            const w = sub(q, [0, beside, 700]);
            const away = sub(w, [d[0] * dot(w, d), d[1] * dot(w, d), d[2] * dot(w, d)]);
            expect(Math.hypot(...away)).toBeCloseTo(30.15 + gap, 8);
            // Under the rail, not over it.
            expect(q[2]).toBeLessThan(700 + q[0] * Math.tan(a * RAD));
          }
        },
      ),
    );
  });

  it("joins two headers by the decision's min or max", () => {
    const headers = [rail("A", [-500, 0, 600], [500, 0, 600]), rail("B", [-500, 0, 660], [500, 0, 660])];
    const members = new Map([...headers, post("P", [0, 0, 0], [0, 0, 600])].map((m) => [m.id, m]));
    const skin = { kind: "skin", joint: "J", onto: ["A", "B"], gap: 0, shoulder: "refuse" } as const;
    const lowest = (by: "min" | "max") =>
      Math.max(...endsOf({ ...skin, combine: { by } }, members, 1).map((p) => p[2]));
    expect(lowest("max") - lowest("min")).toBeCloseTo(60, 9);
  });
});
