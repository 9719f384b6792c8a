/** Quintic splines: they hold polynomials of degree five exactly, and miss a sine by the sixth power of the span. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitSpline, type Track } from "../../../src/export/step/fit.js";
import { type Curved, interpolate, type Spline, splineAt } from "../../../src/export/step/spline.js";
import { STEP_FIT_MM } from "../../../src/kernel/tolerance.js";

/** The spline at t by de Boor's own triangle, on the full knot vector: another way than the recurrence of the basis. */
function deBoor({ knots, points, size }: Spline, t: number): number[] {
  const [first, last] = [knots[0]!, knots[knots.length - 1]!];
  const full = [...Array(5).fill(first), ...knots, ...Array(5).fill(last)] as number[];
  let k = 5;
  while (k < full.length - 7 && t >= full[k + 1]!) k++;
  const d = Array.from({ length: 6 }, (_, j) => [...points.slice((k - 5 + j) * size, (k - 4 + j) * size)]);
  for (let r = 1; r <= 5; r++) {
    for (let j = 5; j >= r; j--) {
      const low = full[j + k - 5]!;
      const share = (t - low) / (full[j + 1 + k - r]! - low);
      d[j] = d[j]!.map((x, i) => (1 - share) * d[j - 1]![i]! + share * x);
    }
  }
  return d[5]!;
}

const wave: Curved = (t, out) => {
  out[0] = Math.cos(t + 0.3);
  out[1] = Math.sin(t + 0.3);
};
const even = (spans: number, to: number): number[] =>
  Array.from({ length: spans + 1 }, (_, i) => (to * i) / spans);

function worst(spline: Spline, curve: Curved): number {
  const [exact, made] = [new Float64Array(spline.size), new Float64Array(spline.size)];
  let most = 0;
  for (let span = 0; span < spline.knots.length - 1; span++) {
    for (let k = 0; k <= 40; k++) {
      const t = spline.knots[span]! + ((spline.knots[span + 1]! - spline.knots[span]!) * k) / 40;
      curve(t, exact);
      splineAt(spline, span, t, made);
      most = Math.max(most, Math.hypot(...exact.map((x, i) => x - made[i]!)));
    }
  }
  return most;
}

describe("interpolate", () => {
  it("holds any polynomial of degree five, on any knots", () => {
    const steps = fc.array(fc.double({ min: 0.05, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 });
    const terms = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(steps, terms, (long, c) => {
        const whole = long.reduce((a, b) => a + b, 0);
        let at = 0;
        const knots = [0, ...long.map((x) => (at += x / whole))];
        const curve: Curved = (t, out) => {
          out[0] = c.reduceRight((sum, x) => sum * t + x, 0);
        };
        expect(worst(interpolate(knots, 1, curve), curve)).toBeLessThan(1e-11);
      }),
    );
  });

  it("is the spline that de Boor's triangle finds", () => {
    const spline = interpolate([0, 0.2, 0.9, 1.1, 2, 3], 2, wave);
    const made = new Float64Array(2);
    for (const [span, t] of [
      [0, 0.1],
      [1, 0.2],
      [1, 0.7],
      [2, 1],
      [4, 2.9],
      [4, 3],
    ] as const) {
      splineAt(spline, span, t, made);
      const [u, v] = deBoor(spline, t);
      expect(made[0]).toBeCloseTo(u!, 13);
      expect(made[1]).toBeCloseTo(v!, 13);
    }
  });

  it("misses a circle of radius one by less than 1.1e-4 of the sixth power of the span, and no less than a fifth", () => {
    for (const spans of [4, 8, 16, 32]) {
      const constant = worst(interpolate(even(spans, Math.PI), 2, wave), wave) / (Math.PI / spans) ** 6;
      expect(constant).toBeLessThan(1.1e-4);
      expect(constant).toBeGreaterThan(2e-5);
    }
  });
});

/** √(a + 2 sin²(t/2)): what a saddle has where the two tubes are equal but for a. */
const root =
  (a: number): Curved =>
  (t, out) => {
    out[0] = t;
    out[1] = 40 * Math.sqrt(a + 2 * Math.sin(t / 2) ** 2);
  };
const trackOf = (at: Curved): Track => ({
  size: 2,
  at,
  miss: (a, b) => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!),
  miss2: (a, b) => (a[0]! - b[0]!) ** 2 + (a[1]! - b[1]!) ** 2,
});

/** What a file promises: spans are looked at in three places, and may miss by somewhat more between them. */
const MOST_MM = 1e-6;

describe("fitSpline", () => {
  it.each([1, 1e-2, 1e-4, 1e-8, 1e-12])("keeps the tolerance where brackets are nearly zero: %d", (a) => {
    const spline = fitSpline(0, Math.PI, 8, trackOf(root(a)));
    expect(spline).not.toBeNull();
    // Between the places that are looked at a span may miss by a little more.
    expect(worst(spline!, root(a))).toBeLessThan(MOST_MM);
    expect(spline!.knots.length).toBeLessThan(150);
  });

  it("needs no more spans than a circle asks for", () => {
    const circle: Curved = (t, out) => {
      out[0] = 20 * Math.cos(t);
      out[1] = 20 * Math.sin(t);
    };
    const spline = fitSpline(0, Math.PI, 2, trackOf(circle));
    expect(worst(spline!, circle)).toBeLessThan(MOST_MM);
    // 20 · 1.1e-4 · h⁶ = the tolerance.
    const asked = Math.PI / (STEP_FIT_MM / (20 * 1.1e-4)) ** (1 / 6);
    expect(spline!.knots.length - 1).toBeLessThan(1.3 * asked);
  });

  it("says so when a curve jumps", () => {
    const jump: Curved = (t, out) => {
      out[0] = t;
      out[1] = t < 1 ? 0 : 1;
    };
    expect(fitSpline(0, Math.PI, 4, trackOf(jump))).toBeNull();
  });
});
