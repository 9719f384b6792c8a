import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrisMarks, compoundMiter, type SawCut } from "../../src/joints/compound-miter.js";
import { add, cross, dot, normalize, scale, sub, type Vec3 } from "../../src/kernel/vec.js";
import { list, misses, num, record, referenceCase, referenceIds } from "./reference.js";

const RAD = Math.PI / 180;

interface Axes {
  readonly along: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
}

/** Axes of a tube with plumb sides, by cross products with the plumb line. */
function axesOf(azimuth: number, slope: number): Axes {
  const [a, t] = [azimuth * RAD, slope * RAD];
  const along: Vec3 = [Math.cos(t) * Math.cos(a), Math.cos(t) * Math.sin(a), Math.sin(t)];
  const left = normalize(cross([0, 0, 1], along));
  return { along, left, up: cross(along, left) };
}

/** The cut's normal in space, from saw settings: swing about up, then tilt. */
function normalOf(axes: Axes, cut: SawCut): Vec3 {
  const [m, b] = [cut.miter * RAD, cut.bevel * RAD];
  const level = add(scale(axes.along, Math.cos(m)), scale(axes.left, Math.sin(m)));
  return add(scale(level, Math.cos(b)), scale(axes.up, Math.sin(b)));
}

/** Rodrigues' rotation of p about the unit axis k. */
function rotate(p: Vec3, k: Vec3, angle: number): Vec3 {
  const [c, s] = [Math.cos(angle * RAD), Math.sin(angle * RAD)];
  return add(add(scale(p, c), scale(cross(k, p), s)), scale(k, dot(k, p) * (1 - c)));
}

const gap = (a: Vec3, b: Vec3): number => Math.hypot(...sub(a, b));

describe("compoundMiter", () => {
  // Source: shared/shop-cases.json, independent script from the cited formulas.
  it.each(referenceIds("b10-", "b11-", "b14-", "b18-"))("meets the worked corner %s", (id) => {
    const c = referenceCase(id);
    const corner = compoundMiter({
      slopeIn: num(c.inputs, "theta1_deg"),
      slopeOut: num(c.inputs, "theta2_deg"),
      turn: num(c.inputs, "plan_turn_deg"),
    });
    const [tube1, tube2] = [record(c.expected, "tube1"), record(c.expected, "tube2")];
    const arris = record(c.expected, "tube1_arris_1p5sq");
    const marks = arrisMarks(corner.first, 1.5, 1.5);
    const found = misses(c, {
      turn: [corner.turnAngle, num(c.expected, "turn_deg")],
      trueMiter: [corner.trueMiter, num(c.expected, "true_miter_deg")],
      miter1: [corner.first.miter, num(tube1, "miter_deg")],
      bevel1: [corner.first.bevel, num(tube1, "bevel_deg")],
      clock1: [corner.first.clock, num(tube1, "clock_deg")],
      miter2: [corner.second.miter, num(tube2, "miter_deg")],
      bevel2: [corner.second.bevel, num(tube2, "bevel_deg")],
      clock2: [corner.second.clock, num(tube2, "clock_deg")],
      twist: [corner.twist, num(c.expected, "twist_deg")],
      topLeft: [marks.topLeft, num(arris, "top_left")],
      topRight: [marks.topRight, num(arris, "top_right")],
      bottomLeft: [marks.bottomLeft, num(arris, "bottom_left")],
      bottomRight: [marks.bottomRight, num(arris, "bottom_right")],
    });
    expect(found).toEqual([]);
  });

  // Source: shared/published-joints.json, vector geometry at 30 digits. Roll is measured from up towards left.
  it.each(referenceIds("turn3d-"))("meets the published corner %s", (id) => {
    const c = referenceCase(id);
    const [inward, outward] = [record(c.inputs, "incoming"), record(c.inputs, "outgoing")];
    const [slopeIn, slopeOut] = [num(inward, "elevation_deg"), num(outward, "elevation_deg")];
    const turn = num(outward, "azimuth_deg") - num(inward, "azimuth_deg");
    const corner = compoundMiter({ slopeIn, slopeOut, turn });
    const roll = (clock: number) => (clock > 180 - 1e-9 ? -90 : 90 - clock);
    const n = normalOf(axesOf(num(inward, "azimuth_deg"), slopeIn), corner.first);
    const m = normalOf(axesOf(num(outward, "azimuth_deg"), slopeOut), corner.second);
    const expected = list(c.expected, "mitre_normal");
    const found = misses(c, {
      turn: [corner.turnAngle, num(c.expected, "turn_deg")],
      trueMiter: [corner.trueMiter, num(c.expected, "mitre_from_square_deg")],
      roll1: [roll(corner.first.clock), num(c.expected, "roll_in_tube1_deg")],
      roll2: [roll(corner.second.clock), num(c.expected, "roll_in_tube2_deg")],
      ...Object.fromEntries(n.map((x, i) => [`n${i} of first`, [x, expected[i] ?? null] as const])),
      ...Object.fromEntries(m.map((x, i) => [`n${i} of second`, [x, expected[i] ?? null] as const])),
    });
    expect(found).toEqual([]);
  });

  // Source: shared/published-joints.json, compound-angle joinery table: a strip that leans at S from the wall is a level
  // member rolled by 90 − S about its length.
  it.each(referenceIds("compound-mitre-"))("gives the joinery table's angles, rolled: %s", (id) => {
    const c = referenceCase(id);
    const { first, trueMiter } = compoundMiter({
      slopeIn: 0,
      slopeOut: 0,
      turn: 180 - num(c.inputs, "corner_deg"),
    });
    const rolled = (first.clock + 90 - num(c.inputs, "spring_deg")) * RAD;
    const swing = Math.atan(Math.tan(trueMiter * RAD) * Math.cos(rolled)) / RAD;
    const tilt = Math.asin(Math.sin(trueMiter * RAD) * Math.sin(rolled)) / RAD;
    const found = misses(c, {
      swing: [swing, num(c.expected, "mitre_deg")],
      tilt: [tilt, num(c.expected, "bevel_deg")],
    });
    expect(found).toEqual([]);
  });

  it("is a plain 45 on the level, square on the straight, level at a switchback (closed forms)", () => {
    const level = compoundMiter({ slopeIn: 0, slopeOut: 0, turn: 90 });
    expect(level.first.miter).toBeCloseTo(45, 12);
    expect(level.second.miter).toBeCloseTo(-45, 12);
    expect([level.first.bevel, level.second.bevel, level.twist]).toEqual([0, 0, 0]);

    const square = { miter: 0, bevel: 0, clock: 0 };
    const straight = compoundMiter({ slopeIn: 35, slopeOut: 35, turn: 0 });
    expect(straight).toEqual({ turnAngle: 0, trueMiter: 0, first: square, second: square, twist: 0 });

    const back = compoundMiter({ slopeIn: 35, slopeOut: 35, turn: 180 });
    expect(back.turnAngle).toBeCloseTo(110, 12);
    expect(back.first.miter).toBe(0);
    expect(back.first.bevel).toBeCloseTo(55, 12);
    expect(back.twist).toBe(180);
  });

  it("twists by the rake itself at a square corner onto the level, and not at all over a ridge (closed forms)", () => {
    expect(compoundMiter({ slopeIn: 35, slopeOut: 0, turn: 90 }).twist).toBeCloseTo(35, 12);
    expect(compoundMiter({ slopeIn: 30, slopeOut: -30, turn: 90 }).twist).toBe(0);
    expect(compoundMiter({ slopeIn: 30, slopeOut: 10, turn: 0 }).twist).toBe(0);
  });

  it("is the plain miter where only the slope turns (closed form: half the change)", () => {
    const crest = compoundMiter({ slopeIn: 35, slopeOut: 0, turn: 0 });
    expect(crest.first.bevel).toBeCloseTo(-17.5, 12);
    expect(crest.second.bevel).toBeCloseTo(17.5, 12);
    expect([crest.first.miter, crest.second.miter]).toEqual([0, 0]);
  });

  it.each([
    [{ slopeIn: 0, slopeOut: 0, turn: 180 }],
    [{ slopeIn: 0, slopeOut: 0, turn: -180 }],
    [{ slopeIn: 35, slopeOut: -35, turn: 180 }],
  ])("refuses a tube that runs straight back %j", (input) => {
    expect(() => compoundMiter(input)).toThrow(/^no-miter: .*straight back/);
  });

  it.each([
    ["slopeIn", { slopeIn: 90, slopeOut: 0, turn: 0 }],
    ["slopeOut", { slopeIn: 0, slopeOut: Number.NaN, turn: 0 }],
    ["turn", { slopeIn: 0, slopeOut: 0, turn: 181 }],
  ])("names a wrong %s", (field, input) => {
    expect(() => compoundMiter(input)).toThrow(`bad-compound-miter: \`${field}\``);
  });

  it.each([
    ["width", { miter: 0, bevel: 0, clock: 0 }, 0, 40],
    ["depth", { miter: 0, bevel: 0, clock: 0 }, 40, Number.NaN],
    ["cut.miter", { miter: 90, bevel: 0, clock: 0 }, 40, 40],
    ["cut.bevel", { miter: 0, bevel: -90, clock: 0 }, 40, 40],
  ] as const)("names a wrong %s of arris marks", (field, cut, width, depth) => {
    expect(() => arrisMarks(cut, width, depth)).toThrow(`bad-compound-miter: \`${field}\``);
  });

  const slope = fc.double({ min: -75, max: 75, noNaN: true });
  const turn = fc.double({ min: -170, max: 170, noNaN: true });

  it("describes one plane from both sides, half way between the tubes (second route: vectors)", () => {
    fc.assert(
      fc.property(slope, slope, turn, (slopeIn, slopeOut, alpha) => {
        const corner = compoundMiter({ slopeIn, slopeOut, turn: alpha });
        const [first, second] = [axesOf(0, slopeIn), axesOf(alpha, slopeOut)];
        const bisector = normalize(add(first.along, second.along));
        expect(gap(normalOf(first, corner.first), bisector)).toBeLessThan(1e-9);
        expect(gap(normalOf(second, corner.second), bisector)).toBeLessThan(1e-9);
        const tau = Math.acos(Math.min(1, Math.max(-1, dot(first.along, second.along))));
        expect(corner.turnAngle * RAD).toBeCloseTo(tau, 6);
        // Rolled to its clock, the cut is the true miter and nothing else.
        const { miter, bevel, clock } = corner.first;
        expect(Math.tan(corner.trueMiter * RAD) * Math.cos(clock * RAD)).toBeCloseTo(
          Math.tan(miter * RAD),
          6,
        );
        expect(Math.sin(corner.trueMiter * RAD) * Math.sin(clock * RAD)).toBeCloseTo(
          Math.sin(bevel * RAD),
          9,
        );
      }),
    );
  });

  it("brings the four arrises together when the second tube is rolled back by the twist", () => {
    fc.assert(
      fc.property(slope, slope, turn, (slopeIn, slopeOut, alpha) => {
        const corner = compoundMiter({ slopeIn, slopeOut, turn: alpha });
        const [first, second] = [axesOf(0, slopeIn), axesOf(alpha, slopeOut)];
        const n = normalize(add(first.along, second.along));
        const marks = arrisMarks(corner.first, 40, 60);
        const corners = [
          [20, 30, marks.topLeft],
          [-20, 30, marks.topRight],
          [20, -30, marks.bottomLeft],
          [-20, -30, marks.bottomRight],
        ] as const;
        for (const [y, z, offset] of corners) {
          const arris = add(scale(first.left, y), scale(first.up, z));
          const p = add(arris, scale(first.along, offset));
          const size = 1 + Math.abs(offset);
          expect(Math.abs(dot(p, n))).toBeLessThan(1e-9 * size);
          // The mirrored tube: reflection through the cut plane reverses `along`, so its arris runs through p along second.
          const mirrored = sub(arris, scale(n, 2 * dot(arris, n)));
          const plumb = add(scale(second.left, y), scale(second.up, z));
          expect(gap(rotate(mirrored, second.along, corner.twist), plumb)).toBeLessThan(1e-7);
          const across = sub(p, scale(second.along, dot(p, second.along)));
          expect(gap(rotate(plumb, second.along, -corner.twist), across)).toBeLessThan(1e-7 * size);
        }
      }),
    );
  });

  it("turns over in a mirror: miter and twist change sign, bevel and true angles do not", () => {
    fc.assert(
      fc.property(slope, slope, turn, (slopeIn, slopeOut, alpha) => {
        const [left, right] = [alpha, -alpha].map((t) => compoundMiter({ slopeIn, slopeOut, turn: t }));
        expect(right!.first.miter).toBeCloseTo(-left!.first.miter, 10);
        expect(right!.second.miter).toBeCloseTo(-left!.second.miter, 10);
        expect(right!.twist).toBeCloseTo(-left!.twist, 10);
        expect(right!.first.bevel).toBeCloseTo(left!.first.bevel, 10);
        expect(right!.trueMiter).toBeCloseTo(left!.trueMiter, 10);
        const [a, b] = [arrisMarks(left!.first, 40, 60), arrisMarks(right!.first, 40, 60)];
        expect(b.topLeft / Math.max(1, Math.abs(a.topRight))).toBeCloseTo(
          a.topRight / Math.max(1, Math.abs(a.topRight)),
          9,
        );
      }),
    );
  });
});
