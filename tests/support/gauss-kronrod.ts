/**
 * Adaptive Gauss-Kronrod quadrature (7 and 15 points) for functions with square roots at their ends.
 *
 * Nodes and weights: QUADPACK's QK15 (Piessens et al. 1983), from memory and checked by polynomials in
 * oracle-quadrature.test.ts. The variable is x = a + (b − a)·sin²θ: a square root at either end becomes smooth.
 */
export const NODES = [
  0.991455371120812639, 0.949107912342758525, 0.864864423359769073, 0.741531185599394440, 0.586087235467691130,
  0.405845151377397167, 0.207784955007898468, 0,
];
export const KRONROD = [
  0.0229353220105292250, 0.0630920926299785533, 0.104790010322250184, 0.140653259715525919, 0.169004726639267903,
  0.190350578064785410, 0.204432940075298892, 0.209482141084727828,
];
export const GAUSS = [0, 0.129484966168869693, 0, 0.279705391489276668, 0, 0.381830050505118945, 0, 0.417959183673469388];

const DEEPEST = 44;

interface Panel {
  readonly value: number;
  readonly error: number;
  readonly size: number;
}

function panel(f: (x: number) => number, a: number, b: number): Panel {
  const [c, h] = [(a + b) / 2, (b - a) / 2];
  const ys: number[] = [];
  const ws: number[] = [];
  let [kronrod, gauss, size] = [0, 0, 0];
  for (let i = 0; i < 8; i++) {
    for (const sign of i === 7 ? [1] : [1, -1]) {
      const y = f(c + sign * h * NODES[i]!);
      ys.push(y);
      ws.push(KRONROD[i]!);
      kronrod += KRONROD[i]! * y;
      gauss += GAUSS[i]! * y;
      size += KRONROD[i]! * Math.abs(y);
    }
  }
  const spread = ys.reduce((sum, y, i) => sum + ws[i]! * Math.abs(y - kronrod / 2), 0);
  // QUADPACK's estimate: the difference of the two rules says far too much once they converge.
  const raw = Math.abs(kronrod - gauss);
  const error = spread > 0 ? spread * Math.min(1, (200 * (raw / spread)) ** 1.5) : raw;
  return { value: kronrod * h, error: error * Math.abs(h), size: size * Math.abs(h) };
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
    if (whole.error <= Math.max(within, 2e-16 * whole.size) || depth >= DEEPEST) return whole.value;
    const mid = (lo + hi) / 2;
    const [left, right] = [panel(g, lo, mid), panel(g, mid, hi)];
    return refine(lo, mid, left, depth + 1) + refine(mid, hi, right, depth + 1);
  };
  return refine(0, Math.PI / 2, panel(g, 0, Math.PI / 2), 0);
}
