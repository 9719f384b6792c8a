/**
 * Three hundred pieces with ends of every kind, most of them beside a tangency on purpose: each one closed valid solid of the exact
 * volume to Open CASCADE's reader, and on its surfaces, vertices and pcurves to ours. Drilled posts the same.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { toStep } from "../../../src/export/index.js";
import { evaluate, massProperties, type Solid, solidOfBar } from "../../../src/kernel/index.js";
import { fuzzCase } from "../../fuzz/domain.js";
import { barOf, onRound, solidFor, square, tube } from "../../support/bars.js";
import { barOf as barOfCase } from "../../support/joint-case.js";
import { lookAtBrep } from "../../support/part21/brep.js";
import { curveOf } from "../../support/part21/curves.js";
import type { Graph } from "../../support/part21/graph.js";
import { readStep } from "../../support/part21/read.js";
import { loadStepReader, type StepReader } from "../../support/step-occt.js";

/** mm: curve in space against curve on a surface, at the same parameter. */
const GAP_MM = 2e-6;
/** mm: a spline against the exact saddle, at the same parameter. */
const FIT_MM = 1e-6;
const COUNT = 300;
const SEED = 5;

let reader: StepReader;
beforeAll(async () => {
  reader = await loadStepReader();
}, 60_000);

function textOf(solid: Solid): string {
  const made = toStep([{ name: "A", solid }]);
  if (!made.ok) throw new Error(made.diagnostics[0]?.message);
  return made.value;
}

/** Everything that is asked of one solid's file; the edges that were written are those of the solid, in its order. */
function look(solid: Solid): readonly string[] {
  const text = textOf(solid);
  const { faults, graph } = readStep(text);
  if (!graph) return faults;
  const out = [...faults];
  const { volume } = massProperties(solid);
  const found = lookAtBrep(graph, graph.all("MANIFOLD_SOLID_BREP")[0]!.id);
  out.push(...found.faults);
  for (const key of ["gap", "offSurface", "offVertex", "jump"] as const)
    if (!(found[key] <= GAP_MM)) out.push(`${key}: ${found[key]}`);
  if (!(Math.abs(found.volume / volume - 1) < 1e-7)) out.push(`volume ${found.volume} for ${volume}`);
  out.push(...unlike(solid, graph));
  const [read, ...more] = reader(text) ?? [];
  if (!read || more.length > 0) return [...out, "not one solid"];
  if (!read.valid) out.push("not valid");
  if (!read.closed) out.push("not closed");
  if (read.faces !== solid.faces.length) out.push(`${read.faces} faces for ${solid.faces.length}`);
  if (!(Math.abs(read.volume / volume - 1) < 1e-7)) out.push(`volume ${read.volume} read for ${volume}`);
  return out;
}

/** Splines in space that leave the exact saddle. */
function unlike(solid: Solid, graph: Graph): string[] {
  const written = graph.all("EDGE_CURVE").map(({ id }) => graph.ref(graph.ref(id, 3), 1));
  if (written.length !== solid.edges.length) return [];
  return solid.edges.flatMap(({ curve, t0, t1 }, e) => {
    if (curve.kind !== "saddle") return [];
    const { at } = curveOf(graph, written[e]!);
    let most = 0;
    for (let k = 0; k <= 200; k++) {
      const t = Math.min(t0, t1) + (Math.abs(t1 - t0) * k) / 200;
      most = Math.max(most, Math.hypot(...evaluate(curve, t).map((x, d) => x - at(t)[d]!)));
    }
    return most <= FIT_MM ? [] : [`edge ${e}: ${most} from its saddle`];
  });
}

describe(`${COUNT} random ends`, () => {
  it("are solids to both readers", () => {
    const bad: string[] = [];
    const seen = new Set<string>();
    let made = 0;
    for (let number = 0; number < COUNT; number++) {
      const c = fuzzCase(SEED, number);
      const solid = solidOfBar(barOfCase(c.joint));
      if (!solid.ok) continue;
      made++;
      for (const tag of c.tags) seen.add(tag);
      for (const found of look(solid.value)) bad.push(`${c.joint.name}: ${found}`);
    }
    expect(bad).toEqual([]);
    expect(made).toBeGreaterThan(0.99 * COUNT);
    for (const tag of [
      "equal diameters",
      "rect header",
      "skew axes",
      "three contacts",
      "gap",
      "R - r = 1e-6",
    ])
      expect(seen).toContain(tag);
  }, 240_000);
});

describe("a drilled post", () => {
  const rake = Math.atan(3 / 4);
  const direction = [0, Math.cos(rake), Math.sin(rake)] as const;
  const bar = barOf(tube(42.4, 3.2), square(), onRound(48.3, 1000, 53.13));

  it.each([
    ["ten raking bores through both walls", 10],
    ["none", 0],
  ])("with %s is a solid to both readers", (_, count) => {
    const bores = Array.from({ length: count }, (_, i) => ({
      id: `b${i}`,
      point: [0, 0, 100 + 80 * i] as const,
      direction,
      diameter: 6,
      through: "both" as const,
    }));
    const solid = solidFor({ ...bar, bores });
    expect(look(solid)).toEqual([]);
  });
});
