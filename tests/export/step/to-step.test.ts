/** What a STEP file says, read back by a reader that shares no code with the writer. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type NamedSolid, stepChunks, toStep } from "../../../src/export/index.js";
import { joined } from "../../../src/export/step/to-step.js";
import { solidOf } from "../../../src/joints/index.js";
import {
  CAUTION,
  evaluate,
  type Frame,
  massProperties,
  RakewrightError,
  type Solid,
} from "../../../src/kernel/index.js";
import { buildGuard } from "../../../src/layout/index.js";
import { barOf, rod, solidFor, square, tube } from "../../support/bars.js";
import { occurrencesOf, unitOf } from "../../support/part21/assembly.js";
import { lookAtBrep } from "../../support/part21/brep.js";
import type { Graph } from "../../support/part21/graph.js";
import { parsePart21 } from "../../support/part21/parse.js";
import { readStep } from "../../support/part21/read.js";

const plain = (length: number, od = 42.4): Solid => solidFor(barOf(tube(od, 3.2), square(), square(length)));
const at = (x: number): Frame => ({ origin: [x, 0, 0], x: [0, 0.6, 0.8], y: [1, 0, 0], z: [0, 0.8, -0.6] });

function read(items: readonly NamedSolid[], options = {}): { readonly text: string; readonly graph: Graph } {
  const made = toStep(items, options);
  if (!made.ok) throw new Error(made.diagnostics[0]?.message);
  const { faults, graph } = readStep(made.value);
  expect(faults).toEqual([]);
  return { text: made.value, graph: graph as Graph };
}

/** Everything a guard's document leads to. */
const guard = buildGuard(JSON.parse(readFileSync("examples/pottery-studio.json", "utf8")));
const pieces = guard.pieces.map((piece): NamedSolid => {
  const solid = solidOf(piece);
  if (!solid.ok) throw new Error(piece.mark);
  return { name: piece.mark, solid: solid.value, frame: piece.frame, material: piece.material };
});

describe("the example's guard", () => {
  for (const schema of ["AP214", "AP242"] as const) {
    for (const unit of ["mm", "in"] as const) {
      it(`is sound in ${schema} and ${unit}: every solid closed, on its surfaces, of the exact volume`, () => {
        const { graph } = read(pieces, { schema, unit });
        const size = unitOf(graph);
        expect(size).toBe(unit === "mm" ? 1 : 25.4);
        const found = occurrencesOf(graph);
        expect(found.map((o) => o.name)).toEqual(pieces.map((p) => p.name));
        expect(new Set(found.map((o) => o.material))).toEqual(new Set(["mild-steel"]));
        const looks = new Map(graph.all("MANIFOLD_SOLID_BREP").map(({ id }) => [id, lookAtBrep(graph, id)]));
        found.forEach(({ solid, place }, i) => {
          const look = looks.get(solid)!;
          expect(look.faults).toEqual([]);
          for (const off of [look.gap, look.offSurface, look.offVertex, look.jump])
            expect(off * size).toBeLessThan(2e-6);
          const { volume } = massProperties(pieces[i]!.solid);
          expect((look.volume * size ** 3) / volume).toBeCloseTo(1, 8);
          const frame = pieces[i]!.frame!;
          expect(place!.o.map((x) => x * size)).toEqual(frame.origin.map((x) => expect.closeTo(x, 9)));
          expect(place!.x).toEqual(frame.x.map((x) => expect.closeTo(x, 12)));
          expect(place!.z).toEqual(frame.z.map((x) => expect.closeTo(x, 12)));
        });
      });
    }
  }

  it("writes what is alike once: the middle posts are one part, the left and right hand are two", () => {
    const { graph } = read(pieces);
    const parts = new Map<number, string[]>();
    for (const o of occurrencesOf(graph)) parts.set(o.solid, [...(parts.get(o.solid) ?? []), o.name]);
    expect([...parts.values()]).toContainEqual(["P2", "P3", "P4"]);
    expect(graph.all("MANIFOLD_SOLID_BREP").length).toBe(parts.size);
    expect(graph.all("PRODUCT").length).toBe(parts.size + 1);
  });
});

describe("parts and pieces", () => {
  it("are shared below a millionth of a millimetre, and not above it", () => {
    const count = (by: number): number =>
      read([
        { name: "A", solid: plain(500), frame: at(0) },
        { name: "B", solid: plain(500 + by), frame: at(1) },
      ]).graph.all("MANIFOLD_SOLID_BREP").length;
    expect([count(0), count(5e-7), count(3e-6), count(1)]).toEqual([1, 1, 2, 2]);
  });

  it("are apart where a colour, a material or the part's name is", () => {
    const solid = plain(300);
    const items = [
      {},
      {},
      { colour: [1, 0, 0] as const },
      { material: "stainless" },
      { part: "post" },
      { part: "post" },
    ];
    const { graph } = read(items.map((more, i) => ({ name: `P${i}`, solid, frame: at(i), ...more })));
    expect(occurrencesOf(graph).map((o) => o.part)).toEqual(["P0", "P0", "P2", "P3", "post", "post"]);
    expect(graph.all("MANIFOLD_SOLID_BREP").length).toBe(4);
  });

  it("have ids of their own even where names repeat", () => {
    const { graph } = read(
      [
        { name: "P1", solid: plain(100), frame: at(0) },
        { name: "P1", solid: plain(200), frame: at(1) },
        { name: "P1-2", solid: plain(300), frame: at(2) },
      ],
      { name: "P1" },
    );
    const ids = graph.all("PRODUCT").map(({ id }) => graph.text(id, 0));
    expect(new Set(ids).size).toBe(4);
    expect(
      graph
        .all("PRODUCT")
        .map(({ id }) => graph.text(id, 1))
        .sort(),
    ).toEqual(["P1", "P1", "P1", "P1-2"]);
  });

  it("carry names of any letters", () => {
    const names = ["Pfosten Süd 3", "柱 №7", "5/8\" 'left' \\X2\\", "🔩"];
    const { graph } = read(
      names.map((name, i) => ({ name, solid: plain(100 + i), frame: at(i) })),
      { name: "Atelier «é»" },
    );
    expect(occurrencesOf(graph).map((o) => o.name)).toEqual(names);
    expect(graph.all("PRODUCT").map(({ id }) => graph.text(id, 1))).toContain("Atelier «é»");
  });

  it("keep their colours", () => {
    const { graph } = read([
      { name: "A", solid: plain(100), frame: at(0), colour: [0.25, 0.5, 1] },
      { name: "B", solid: plain(200), frame: at(1), colour: [0.25, 0.5, 1] },
      { name: "C", solid: plain(300), frame: at(2) },
    ]);
    expect(occurrencesOf(graph).map((o) => o.colour)).toEqual([[0.25, 0.5, 1], [0.25, 0.5, 1], null]);
    expect(graph.all("COLOUR_RGB").length).toBe(1);
  });

  it("a single piece without a frame is a part, not an assembly", () => {
    const { graph } = read([{ name: "P1", solid: plain(100) }]);
    expect(graph.all("NEXT_ASSEMBLY_USAGE_OCCURRENCE")).toEqual([]);
    expect(occurrencesOf(graph)).toMatchObject([{ name: "P1", place: null }]);
    expect(
      read([
        { name: "P1", solid: plain(100) },
        { name: "P2", solid: plain(100) },
      ]).graph.all("NEXT_ASSEMBLY_USAGE_OCCURRENCE").length,
    ).toBe(2);
  });

  it("know where each face came from", () => {
    const { graph } = read([{ name: "P1", solid: plain(100) }]);
    const faces = graph.all("ADVANCED_FACE").map(({ id }) => graph.text(id, 0));
    expect(faces.filter((f) => f === "side wall").length).toBe(2);
    expect(faces.filter((f) => /^end [01] to H1$/.test(f)).length).toBe(2);
  });
});

describe("the header", () => {
  it("names schema, basis and caution, and has no clock", () => {
    const { header } = parsePart21(
      read([{ name: "A", solid: plain(100) }], { basis: "as-set", generator: "me 1" }).text,
    );
    const texts = JSON.stringify(header);
    expect(texts).toContain(CAUTION);
    expect(texts).toContain("measured as set");
    expect(texts).toContain("AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }");
    expect(header[1]?.args[1]).toEqual({ kind: "string", value: "" });
    const dated = read([{ name: "A", solid: plain(100) }], {
      timestamp: "2026-01-02T03:04:05",
      schema: "AP242",
    }).text;
    expect(dated).toContain("'2026-01-02T03:04:05'");
    expect(dated).toContain("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }");
    expect(dated).toContain("Sizes as designed, not measured on site.");
  });
});

describe("chunks", () => {
  it("join to the same text, and ask for one piece at a time", () => {
    let [asked, most] = [0, 0];
    function* some(): Generator<NamedSolid> {
      for (let i = 0; i < 60; i++) {
        asked++;
        yield { name: `P${i}`, solid: plain(100 + i), frame: at(i) };
      }
    }
    const chunks: string[] = [];
    const waiting: number[] = [];
    for (const chunk of stepChunks(some())) {
      waiting.push(asked);
      most = Math.max(most, chunk.length);
      chunks.push(chunk);
    }
    expect(chunks.length).toBeGreaterThan(8);
    expect(most).toBeLessThan(1 << 18);
    expect(new Set(waiting).size).toBeGreaterThan(5);
    const whole = toStep([...some()]);
    expect(whole.ok && whole.value).toBe(chunks.join(""));
  });
});

describe("a text longer than an engine can hold", () => {
  it("is refused before it is too long, and says how to write it", () => {
    let asked = 0;
    function* endless(): Generator<string> {
      for (;;) {
        asked++;
        yield "x".repeat(100);
      }
    }
    expect(() => joined(endless(), 1050)).toThrow(/step-too-long.*stepChunks/);
    expect(asked).toBe(11);
    expect(joined(["ab", "c"], 3)).toBe("abc");
  });
});

describe("what cannot be written", () => {
  const good = plain(100);
  const codes = (items: readonly NamedSolid[]): readonly string[] => {
    const made = toStep(items);
    expect(made.ok).toBe(false);
    for (const d of made.diagnostics) expect(d.message + d.hint).not.toBe("");
    return made.diagnostics.map((d) => `${d.code} ${d.members.join()}`);
  };

  it("is refused by name, with nothing handed back", () => {
    expect(codes([])).toEqual(["nothing-to-write "]);
    expect(codes([{ name: "A", solid: good, colour: [0, 2, 0] }])).toEqual(["colour-out-of-range A"]);
    expect(codes([{ name: "A", solid: good, colour: [0, Number.NaN, 0] }])).toEqual([
      "colour-out-of-range A",
    ]);
    const open: Solid = { ...good, faces: good.faces.slice(1) };
    expect(codes([{ name: "B", solid: open }])).toEqual(["edge-not-used-twice B"]);
    const lost: Solid = {
      ...good,
      vertices: good.vertices.map((v, i) => (i === 0 ? [Number.NaN, v[1], v[2]] : v)),
    };
    expect(codes([{ name: "C", solid: lost }])).toEqual(["not-finite C"]);
    expect(
      codes([{ name: "D", solid: good, frame: { ...at(0), origin: [0, Number.POSITIVE_INFINITY, 0] } }]),
    ).toEqual(["not-finite D"]);
  });

  it("stops a stream with the same code", () => {
    const open: Solid = { ...good, faces: good.faces.slice(1) };
    expect(() => [...stepChunks([{ name: "B", solid: open }])]).toThrow(RakewrightError);
  });
});

/** The same solid with a vertex more on one of its edges, at a share of it. */
function parted(solid: Solid, edge: number, share: number): Solid {
  const { curve, t0, t1, from, to } = solid.edges[edge]!;
  const [t, middle, added] = [t0 + share * (t1 - t0), solid.vertices.length, solid.edges.length];
  const both = (forward: boolean) =>
    forward
      ? [
          { edge, forward },
          { edge: added, forward },
        ]
      : [
          { edge: added, forward },
          { edge, forward },
        ];
  return {
    vertices: [...solid.vertices, evaluate(curve, t)],
    edges: [
      ...solid.edges.map((e, i) => (i === edge ? { curve, t0, t1: t, from, to: middle } : e)),
      { curve, t0: t, t1, from: middle, to },
    ],
    faces: solid.faces.map((face) => ({
      ...face,
      loops: face.loops.map((loop) => loop.flatMap((use) => (use.edge === edge ? both(use.forward) : [use]))),
    })),
  };
}

describe("edges too short to see", () => {
  const solid = solidFor(barOf(rod(20), square(), square(50)));
  const whole = solid.edges.findIndex((e) => e.curve.kind === "conic");
  // Half a turn of a circle of radius 10: 31.4 mm.
  it.each([
    [1e-6 / 31.4, 0],
    [1 - 1e-6 / 31.4, 0],
    [1e-4 / 31.4, 1],
    [0.5, 1],
  ])("at a share %d of a half circle leave %d edge more", (share, more) => {
    const { graph } = read([{ name: "A", solid: parted(solid, whole, share) }]);
    const look = lookAtBrep(graph, graph.all("MANIFOLD_SOLID_BREP")[0]!.id);
    expect(look.faults).toEqual([]);
    expect(look.edges).toBe(solid.edges.length + more);
    expect(look.offVertex).toBeLessThan(2e-6);
    expect(look.volume).toBeCloseTo(Math.PI * 100 * 50, 3);
  });
});
