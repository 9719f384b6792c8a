/**
 * Adaptive Gauss-Kronrod quadrature (7 and 15 points) for functions with square roots at their ends.
 *
 * Nodes and weights: QUADPACK's QK15 (Piessens et al. 1983), from memory and checked by polynomials in
 * oracle-quadrature.test.ts. The variable is x = a + (b − a)·sin²θ: a square root at either end becomes smooth.
 */
export const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
export const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
export const GAUSS = [
  0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0, 0.4179591836734694,
];

const DEEPEST = 44;

interface Panel {
  readonly value: number;
  readonly error: number;
  readonly size: number;
}

function panel(f: (x: number) => number, a: number, b: number): Panel {
  const [c, h] = [(a + b) / 2, (b - a) / 2];
  let [kronrod, gauss, size] = [0, 0, 0];
  for (let i = 0; i < 8; i++) {
    for (const sign of i === 7 ? [1] : [1, -1]) {
      const y = f(c + sign * h * NODES[i]!);
      kronrod += KRONROD[i]! * y;
      gauss += GAUSS[i]! * y;
      size += KRONROD[i]! * Math.abs(y);
    }
  }
  // The plain difference of the two rules: pessimistic on smooth stretches, and not to be fooled by a kink.
  return { value: kronrod * h, error: Math.abs((kronrod - gauss) * h), size: size * Math.abs(h) };
}

/** ∫ f from a to b; `within` is the error each stretch may have beside rounding. */
export function integrate(f: (x: number) => number, a: number, b: number, within: number): number {
  if (!(b > a)) return 0;
  const g = (angle: number): number => {
    const s = Math.sin(angle);
    // Measured from the nearer end, so that nothing is lost beside it.
    const x = s * s < 0.5 ? a + (b - a) * s * s : b - (b - a) * Math.cos(angle) ** 2;
    return f(x) * (b - a) * Math.sin(2 * angle);
  };
  const refine = (lo: number, hi: number, whole: Panel, depth: number): number => {
    if (whole.error <= Math.max(within, 1e-15 * whole.size) || depth >= DEEPEST) return whole.value;
    const mid = (lo + hi) / 2;
    const [left, right] = [panel(g, lo, mid), panel(g, mid, hi)];
    return refine(lo, mid, left, depth + 1) + refine(mid, hi, right, depth + 1);
  };
  return refine(0, Math.PI / 2, panel(g, 0, Math.PI / 2), 0);
}
