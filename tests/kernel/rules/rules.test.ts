/** Each rule against a solid in which exactly that is broken: it says so, with the numbers, and no other rule does. */
import { describe, expect, it } from "vitest";
import type { SaddleCurve } from "../../../src/kernel/curve/saddle.js";
import { curveEnds } from "../../../src/kernel/rules/curve-ends.js";
import { edgeUsedTwice } from "../../../src/kernel/rules/edge-used-twice.js";
import { eulerNumber, eulerOf } from "../../../src/kernel/rules/euler-number.js";
import { faceLoops } from "../../../src/kernel/rules/face-loops.js";
import { finite } from "../../../src/kernel/rules/finite.js";
import { loopsClose } from "../../../src/kernel/rules/loops-close.js";
import { noKink } from "../../../src/kernel/rules/no-kink.js";
import { onSurfaces } from "../../../src/kernel/rules/on-surfaces.js";
import { positiveVolume } from "../../../src/kernel/rules/positive-volume.js";
import { topologyProblems } from "../../../src/kernel/rules/topology.js";
import { validateSolid } from "../../../src/kernel/rules/validate.js";
import type { Solid } from "../../../src/kernel/solid.js";
import { polygonLoop } from "../../../src/members/sections/custom.js";
import { BARS, barOf, onRound, rod, solidFor, square, tube } from "../../support/bars.js";
import { codesOf, insideOutSolid, withEdge, withFace, withVertex } from "../../support/damage.js";

const good = solidFor(barOf(tube(42.4, 3.2), square(), onRound(48.3, 300, 60)));
const saddleAt = good.edges.findIndex((e) => e.curve.kind === "saddle");

it("the solid that gets damaged is good", () => {
  expect(validateSolid(good)).toEqual([]);
});

describe("finite", () => {
  const saddle = good.edges[saddleAt]!.curve as SaddleCurve;
  it.each<[string, string, Solid]>([
    ["vertex", "1", withVertex(good, 2, Number.NaN)],
    [
      "edge",
      "curve.s0",
      withEdge(good, saddleAt, (e) => ({ ...e, curve: { ...saddle, s0: Number.POSITIVE_INFINITY } })),
    ],
    ["edge", "t1", withEdge(good, 3, (e) => ({ ...e, t1: Number.NaN }))],
    [
      "face",
      "surface.frame.x.0",
      withFace(good, 1, (f) => ({
        ...f,
        surface: { ...f.surface, frame: { ...f.surface.frame, x: [Number.NaN, 0, 0] } },
      })),
    ],
  ])("finds a bad number in a %s", (what, at, broken) => {
    const found = finite(broken);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: "not-finite", values: { what } });
    expect(found[0]?.message).toContain(what === "vertex" ? "at 2" : `at ${at}`);
    expect(codesOf(validateSolid(broken))).toEqual(["not-finite"]);
  });
});

describe("curveEnds", () => {
  it("finds a vertex that is off by a hundredth of a micrometre", () => {
    const broken = withVertex(good, good.edges[saddleAt]!.from, 1e-5);
    const found = curveEnds(broken);
    expect(codesOf(validateSolid(broken))).toEqual(["curve-misses-vertex"]);
    // Two stretches of the cope and the upright line meet there.
    expect(found).toHaveLength(3);
    for (const d of found) expect(d.values.miss).toBeCloseTo(1e-5, 9);
  });

  it("finds a parameter that is off", () => {
    const e = good.edges[saddleAt]!;
    const broken = withEdge(good, saddleAt, () => ({ ...e, t1: e.t1 + 1e-6 }));
    expect(curveEnds(broken)).toMatchObject([{ values: { edge: saddleAt, end: "end", vertex: e.to } }]);
  });
});

describe("onSurfaces", () => {
  it("finds a header's face that is a hundredth of a micrometre too large", () => {
    const cope = good.faces.findIndex((f) => f.surface.kind === "cylinder" && f.provenance.from === "end");
    const broken = withFace(good, cope, (f) =>
      f.surface.kind === "cylinder"
        ? { ...f, surface: { ...f.surface, radius: f.surface.radius + 1e-5 } }
        : f,
    );
    expect(codesOf(validateSolid(broken))).toEqual(["edge-off-surface"]);
    const found = onSurfaces(broken);
    expect(found).toHaveLength(4);
    for (const d of found) {
      expect(d.values.face).toBe(cope);
      expect(d.values.off).toBeCloseTo(1e-5, 9);
    }
  });
});

describe("noKink", () => {
  // Walls in line: the outer cope has a kink where it touches the header's silhouette.
  const inLine = solidFor(BARS["off the axis, walls in line"]!);
  const at = inLine.edges.findIndex(({ curve: c }) => c.kind === "saddle" && (c.a0 === 0 || c.b0 === 0));
  const { curve, t0, t1 } = inLine.edges[at]!;
  const kink = [t0, t1].find((t) => {
    const c = curve as SaddleCurve;
    return Math.abs(c.a0 === 0 ? Math.sin((t - c.phiN) / 2) : Math.cos((t - c.phiN) / 2)) < 1e-6;
  })!;

  it("passes an edge up to its kink", () => {
    expect(at).toBeGreaterThanOrEqual(0);
    expect(kink).toBeDefined();
    expect(noKink(inLine)).toEqual([]);
  });

  it("finds an edge that goes on past it, by the curve's own signs", () => {
    const past = kink === t1 ? { t1: t1 + 0.01 * (t1 - t0) } : { t0: t0 - 0.01 * (t1 - t0) };
    expect(noKink(withEdge(inLine, at, (e) => ({ ...e, ...past })))).toMatchObject([
      { code: "edge-spans-kink", values: { edge: at } },
    ]);
  });

  it("finds it by the turn of its points where the signs say nothing", () => {
    const past = kink === t1 ? { t1: t1 + 0.3 * (t1 - t0) } : { t0: t0 - 0.3 * (t1 - t0) };
    const c = curve as SaddleCurve;
    const silent = c.a0 === 0 ? { ...c, a0: Number.MIN_VALUE } : { ...c, b0: Number.MIN_VALUE };
    const found = noKink(withEdge(inLine, at, (e) => ({ ...e, ...past, curve: silent })));
    expect(found).toHaveLength(1);
    expect(found[0]?.values.at).toBeCloseTo(kink, 6);
  });

  it("does not take the tightest smooth bend for a kink", () => {
    const nearly = solidFor(barOf(tube(33.7, 3), square(), onRound(33.7 + 4e-6, 500, 45)));
    expect(nearly.edges.filter((e) => e.curve.kind === "saddle").length).toBeGreaterThan(2);
    expect(noKink(nearly)).toEqual([]);
  });
});

describe("faceLoops", () => {
  it("finds a face that looks the wrong way", () => {
    const broken = withFace(good, 0, (f) => ({ ...f, sense: f.sense === 1 ? -1 : 1 }));
    const found = faceLoops(broken);
    expect(codesOf(found)).toEqual(["loop-runs-wrong"]);
    expect(found.map((d) => [d.values.face, d.values.loop])).toEqual([
      [0, 0],
      [0, 1],
    ]);
    // Square end: the outer circle's area and the bore's, signed (closed form).
    expect(found[0]?.values.area).toBeCloseTo(-Math.PI * 21.2 ** 2, 9);
    expect(found[1]?.values.area).toBeCloseTo(Math.PI * 18 ** 2, 9);
  });

  it("finds a hole that is named first", () => {
    const broken = withFace(good, 1, (f) => ({ ...f, loops: [...f.loops].reverse() }));
    expect(codesOf(validateSolid(broken))).toEqual(["loop-runs-wrong"]);
  });
});

describe("positiveVolume", () => {
  it("finds a solid turned inside out, and nothing else is wrong with it", () => {
    const broken = insideOutSolid(good);
    expect(codesOf(validateSolid(broken))).toEqual(["volume-not-positive"]);
    expect(positiveVolume(broken)[0]?.values.volume).toBeLessThan(0);
  });
});

describe("topology", () => {
  it("finds a missing face by its edges", () => {
    const lost = good.faces[2]!.loops.flat().map((u) => u.edge);
    const found = edgeUsedTwice({ ...good, faces: good.faces.filter((_, k) => k !== 2) });
    expect(found.map((d) => d.values.edge).sort()).toEqual([...lost].sort());
    expect(found.every((d) => (d.values.forward as number) + (d.values.backward as number) === 1)).toBe(true);
  });

  it("finds an edge used twice the same way", () => {
    const broken = withFace(good, 2, (f) => ({
      ...f,
      loops: [[{ ...f.loops[0]![0]!, forward: !f.loops[0]![0]!.forward }, ...f.loops[0]!.slice(1)]],
    }));
    expect(edgeUsedTwice(broken)).toMatchObject([{ code: "edge-not-used-twice" }]);
  });

  it("finds a loop whose edges do not follow each other, and an empty one", () => {
    const shuffled = withFace(good, 2, (f) => ({
      ...f,
      loops: f.loops.map((l) => [l[1]!, l[0]!, ...l.slice(2)]),
    }));
    expect(topologyProblems(shuffled)).toMatchObject([{ code: "loop-open", values: { face: 2, loop: 0 } }]);
    expect(loopsClose(withFace(good, 2, (f) => ({ ...f, loops: [[]] })))).toHaveLength(1);
  });

  // Euler-Poincaré: V − E + F − L = 2 − 2h for h holes through.
  it("has the Euler number of a bar with its holes", () => {
    const hole = (u: number) =>
      [
        ...polygonLoop([
          [u, -5],
          [u + 10, -5],
          [u + 10, 5],
          [u, 5],
        ]),
      ]
        .reverse()
        .map((s) => (s.kind === "line" ? { ...s, from: s.to, to: s.from } : s));
    const outer = polygonLoop([
      [-40, -20],
      [40, -20],
      [40, 20],
      [-40, 20],
    ]);
    for (const holes of [0, 1, 2, 3]) {
      const section = { outer, holes: [-35, -10, 15].slice(0, holes).map(hole) };
      const solid = solidFor(barOf(section, square(), square(100)));
      expect(eulerOf(solid)).toBe(2 - 2 * holes);
      expect(validateSolid(solid)).toEqual([]);
    }
  });

  it("finds an Euler number no closed solid has", () => {
    expect(eulerNumber({ ...good, faces: good.faces.slice(0, -1) })).toMatchObject([
      { code: "euler-number-odd", values: { chi: -1 } },
    ]);
  });

  it("finds two solids in one", () => {
    const rod1 = solidFor(barOf(rod(30), square(), square(100)));
    const [v, e] = [rod1.vertices.length, rod1.edges.length];
    const two: Solid = {
      vertices: [...rod1.vertices, ...rod1.vertices],
      edges: [...rod1.edges, ...rod1.edges.map((x) => ({ ...x, from: x.from + v, to: x.to + v }))],
      faces: [
        ...rod1.faces,
        ...rod1.faces.map((f) => ({
          ...f,
          loops: f.loops.map((l) => l.map((u) => ({ ...u, edge: u.edge + e }))),
        })),
      ],
    };
    expect(topologyProblems(two)).toMatchObject([{ code: "euler-number-odd", values: { chi: 4 } }]);
  });
});
