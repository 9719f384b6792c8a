/**
 * What is known of a rail against closed forms: σ_L² = (X/L)² σX² + (Z/L)² σZ², σ_θ² = ((Z σX)² + (X σZ)²)/L⁴ (first-order
 * propagation, JCGM 100:2008, 5.1.2), by the worked cases i01 and i02 of shared/shop-cases.json; and against sums of
 * independent readings.
 */
import { describe, expect, it } from "vitest";
import { cutOrScribe } from "../../../src/checks/index.js";
import { DEFAULT_SHOP, readingSigma } from "../../../src/layout/index.js";
import { shopCase } from "../cases.js";
import { built, designOf, document, knownOf, nosingsOf, survey, UNEVEN } from "./fit-designs.js";

/** A rail over two nosings only, from the one plumb to a wall over the other: its length is the slope between them. */
function slope(id: string) {
  const own = shopCase(id);
  const { run, rise, sigma_run, sigma_rise } = own.inputs as Record<string, number>;
  const read = survey([
    { id: "F", kind: "rise", from: 0, to: 1, value: 200, sigma: 1 },
    { id: "X", kind: "run", from: 1, to: 2, value: run!, sigma: sigma_run! },
    { id: "Z", kind: "rise", from: 1, to: 2, value: rise!, sigma: sigma_rise! },
  ]);
  const loose = document((one) => {
    one.stair = { nosings: nosingsOf(read) };
    one.rails = [{ role: "top", section: "rail" }];
    one.legs = [
      {
        ...{ along: "stair", top: 950, posts: { onTreads: [1], behindNosing: 80 } },
        end: { type: "wall", endPlate: 0 },
      },
    ];
  });
  const design = designOf(loose, read);
  const guard = built(design);
  return { own, design, guard, known: knownOf({ design }, guard).get("stair-top")! };
}

describe.each(["i01", "i02"])("shop case %s", (id) => {
  const { own, design, guard, known } = slope(id);

  it("has the rail's length and its uncertainty", () => {
    own.near("length", guard.pieces.find((piece) => piece.id === "stair-top")!.lengths.axis!.value);
    // Central differences of 1 mm: (1/4162)² of the slope, 6e-8; the case is given to 1e-8 of its own.
    expect(Math.abs(known.sigmaLength - own.expected.sigma_length!)).toBeLessThan(1e-6);
    expect(Math.abs(known.ends[1].sigmaAngle - own.expected.sigma_theta_deg!)).toBeLessThan(1e-7);
  });

  it("leaves two sigma long at a wall nobody has measured, and says what the angle does over 48.3 mm", () => {
    const fits = cutOrScribe({ design }, guard, { gap: 1.5, k: 2 });
    expect(fits.ok).toBe(true);
    if (!fits.ok) return;
    const end = fits.value.find((one) => one.piece === "stair-top" && one.end === 1)!;
    expect(end.decision).toBe("scribe");
    expect(Math.abs(end.leaveLong - own.expected.leave_long_2sigma!)).toBeLessThan(1e-5);
    expect(Math.abs(end.angleOverDepth! - own.expected.cope_gap_48mm_from_angle!)).toBeLessThan(1e-7);
  });
});

describe("a stair with three nosings on its line of least greatest miss", () => {
  it("has its rail's length between the outer two, and their uncertainty alone", () => {
    // Over the chord of the outer two all stand high, nosing 4 most, by 14 mm: these three carry the line (Chebyshev), and
    // still do when one of them is a few millimetres elsewhere.
    const heights = [190, 385, 575, 772, 953, 1143, 1326];
    const nosings = heights.map((height, i) => ({ run: 270 * i, height }));
    const design = designOf(
      document((one) => {
        one.stair = { nosings };
        one.legs = [one.legs[0]];
        one.legs[0].posts.onTreads = [1, 4];
      }),
    );
    const known = knownOf({ design }).get("stair-top")!;
    const [X, Z] = [6 * 270, 1326 - 190];
    const L = Math.hypot(X, Z);
    const s = (value: number) => readingSigma({ kind: "distance", to: 1 }, value);
    const sX = s(X);
    const sZ = Math.hypot(s(190), s(1326));
    expect(Math.abs(known.sigmaLength - Math.hypot((X / L) * sX, (Z / L) * sZ))).toBeLessThan(1e-6);
    expect(known.mostly).toBe("the run of nosing 7");
    const class1 = knownOf({ design, shop: { ...DEFAULT_SHOP, tape: "I" } }).get("stair-top")!;
    expect(class1.sigmaLength).toBeLessThan(known.sigmaLength);
  });
});

describe("independent readings", () => {
  const design = designOf(document());
  const known = knownOf({ design });

  it("of one length: a landing's rail that hangs on the steps by its break alone knows its length by one tape", () => {
    const level = designOf(
      document((one) => {
        // Nosings on a line with the top one: the break stays where it is when heights are equal, so only the tape counts.
        one.stair = { nosings: UNEVEN.slice(0, 2) };
        one.legs[0].posts.onTreads = [1];
      }),
    );
    const rail = knownOf({ design: level }).get("landing-top")!;
    const tape = readingSigma({ kind: "distance", to: 1 }, 2000);
    // Two nosings: z0 = 0, the axis breaks (d/2) tan(θ/2) over the landing, which moves by less than 0.05 mm for 1 mm of riser.
    expect(rail.sigmaLength).toBeGreaterThan(tape);
    expect(rail.sigmaLength - tape).toBeLessThan(0.01);
    expect(rail.mostly).toBe("the length of the landing");
  });

  it("that a piece does not hang on do nothing to it", () => {
    for (const id of ["bay-5-low", "landing-post-2"])
      expect(known.get(id)!.sigmaLength, id).toBeLessThan(1e-3);
    expect(known.get("bay-5-low")!.onCountedSteps).toBe(false);
  });
});
