/**
 * The volume of a trimmed bar by Open CASCADE Technology (npm replicad-opencascadejs, a general B-rep kernel).
 *
 * The branch is a prism; each header is a prism too, and what lies beyond it is a half space behind the header's widest
 * line. Boolean cuts make the joint. A `max` of two contacts is counted by inclusion and exclusion, so no union is asked
 * for. OCCT's adaptive integration is asked for 1e-9 (its default one errs by up to 1e-6 beside a tangency); its
 * intersections carry 1e-7 mm, so figures of equal tubes may differ by some 1e-8 of the volume.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import init, { type OpenCascadeInstance, type TopoDS_Shape } from "replicad-opencascadejs";
import { type Bore, type Loop, pointOn, type Vec2, type Vec3 } from "../../src/kernel/index.js";
import {
  cross3,
  dot3,
  type EndCase,
  grown,
  type HeaderCase,
  type JointCase,
  type Outline,
  type SectionCase,
  unit3,
} from "./joint-case.js";

const FAR = 1500;

export interface Occt {
  /** Volume of the case in mm³. */
  readonly volume: (c: JointCase) => number;
  /** Volume of a bar over any outline of lines and arcs, counter-clockwise, without holes, between two ends. */
  readonly volumeOver: (outline: Loop, ends: JointCase["ends"]) => number;
  /** Volume of a square-ended bar from z = 0 to `length` with round holes drilled right through, in mm³. */
  readonly drilled: (section: SectionCase, length: number, bores: readonly Bore[]) => number;
  /** Volume that two bars have in common, in mm³. */
  readonly common: (a: StandingBar, b: StandingBar) => number;
}

/** A bar where it stands, square at both ends but for whole headers cut out of it and what is past planes. */
export interface StandingBar {
  readonly section: SectionCase;
  readonly at: Vec3;
  readonly x: Vec3;
  readonly z: Vec3;
  readonly length: number;
  readonly headers: readonly HeaderCase[];
  /** The normal points to what falls off. */
  readonly planes: readonly { readonly point: Vec3; readonly normal: Vec3 }[];
}

export async function loadOcct(): Promise<Occt> {
  const entry = createRequire(import.meta.url).resolve("replicad-opencascadejs");
  const wasmBinary = readFileSync(join(dirname(entry), "replicad_single.wasm"));
  const oc = await init({ wasmBinary });
  return {
    volume: (c) => volumeOf(oc, c),
    volumeOver: (outline, ends) => volumeOver(oc, outline, ends),
    drilled: (s, length, bores) => drilledVolume(oc, s, length, bores),
    common: (a, b) => commonOf(oc, a, b),
  };
}

const along = (p: Vec3, d: Vec3, k: number): Vec3 => [p[0] + k * d[0], p[1] + k * d[1], p[2] + k * d[2]];

interface Stand {
  readonly at: Vec3;
  readonly x: Vec3;
  readonly z: Vec3;
}

function builders(oc: OpenCascadeInstance) {
  const point = (p: Vec3) => new oc.gp_Pnt(p[0], p[1], p[2]);
  const direction = (d: Vec3) => new oc.gp_Dir(d[0], d[1], d[2]);
  const axes = (at: Vec3, z: Vec3, x: Vec3) => new oc.gp_Ax2(point(at), direction(z), direction(x));

  /** A prism over an outline, from `at` along z. */
  const prism = (o: Outline, { at, x, z }: Stand, length: number): TopoDS_Shape => {
    if (o.kind === "round") return new oc.BRepPrimAPI_MakeCylinder(axes(at, z, x), o.radius, length).Shape();
    const y = cross3(z, x);
    const place = (u: number, v: number): Vec3 => along(along(at, x, u), y, v);
    const [a, b, c] = [o.width / 2, o.depth / 2, o.corner];
    const wire = new oc.BRepBuilderAPI_MakeWire();
    const line = (p: Vec3, q: Vec3) => {
      if (Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > 1e-9) {
        wire.Add(new oc.BRepBuilderAPI_MakeEdge(point(p), point(q)).Edge());
      }
    };
    const arc = (u: number, v: number, quarter: number) => {
      if (c === 0) return;
      const circle = new oc.gp_Circ(axes(place(u, v), z, x), c);
      const start = (quarter * Math.PI) / 2;
      wire.Add(new oc.BRepBuilderAPI_MakeEdge(circle, start, start + Math.PI / 2).Edge());
    };
    line(place(a, c - b), place(a, b - c));
    arc(a - c, b - c, 0);
    line(place(a - c, b), place(c - a, b));
    arc(c - a, b - c, 1);
    line(place(-a, b - c), place(-a, c - b));
    arc(c - a, c - b, 2);
    line(place(c - a, -b), place(a - c, -b));
    arc(a - c, c - b, 3);
    const face = new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
    const sweep = new oc.gp_Vec(z[0] * length, z[1] * length, z[2] * length);
    return new oc.BRepPrimAPI_MakePrism(face, sweep).Shape();
  };

  /** A prism over any loop of lines and arcs, from `at` along z. */
  const prismOver = (loop: Loop, { at, x, z }: Stand, length: number): TopoDS_Shape => {
    const y = cross3(z, x);
    const place = ([u, v]: Vec2): Vec3 => along(along(at, x, u), y, v);
    const wire = new oc.BRepBuilderAPI_MakeWire();
    for (const side of loop) {
      const [from, to] = [place(pointOn(side, 0)), place(pointOn(side, 1))];
      if (side.kind === "line") {
        wire.Add(new oc.BRepBuilderAPI_MakeEdge(point(from), point(to)).Edge());
        continue;
      }
      // A circle about −z runs clockwise.
      const sense = Math.sign(side.sweep);
      const pole: Vec3 = [z[0] * sense, z[1] * sense, z[2] * sense];
      const circle = new oc.gp_Circ(axes(place(side.centre), pole, x), side.radius);
      const start = sense * side.start;
      wire.Add(new oc.BRepBuilderAPI_MakeEdge(circle, start, start + Math.abs(side.sweep)).Edge());
    }
    const face = new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
    const sweep = new oc.gp_Vec(z[0] * length, z[1] * length, z[2] * length);
    return new oc.BRepPrimAPI_MakePrism(face, sweep).Shape();
  };

  /** A box that is everything beyond a plane, as far as matters here. */
  const beyond = (p: Vec3, normal: Vec3): TopoDS_Shape => {
    const z = unit3(normal);
    const x = unit3(cross3(z, Math.abs(z[0]) < 0.8 ? [1, 0, 0] : [0, 1, 0]));
    const y = cross3(z, x);
    const corner = along(along(p, x, -FAR), y, -FAR);
    return new oc.BRepPrimAPI_MakeBox(axes(corner, z, x), 2 * FAR, 2 * FAR, FAR).Shape();
  };

  const cut = (a: TopoDS_Shape, b: TopoDS_Shape): TopoDS_Shape => {
    const operation = new oc.BRepAlgoAPI_Cut(a, b, new oc.Message_ProgressRange());
    operation.Build(new oc.Message_ProgressRange());
    return operation.Shape();
  };

  const volume = (shape: TopoDS_Shape): number => {
    const properties = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(shape, properties, 1e-9, false, false);
    return properties.Mass();
  };
  return { prism, prismOver, beyond, cut, volume };
}

type Builders = ReturnType<typeof builders>;

/** The plane through the two widest lines of a header, and the direction in which things lie behind it. */
function widest(h: HeaderCase, dir: 1 | -1): { readonly point: Vec3; readonly normal: Vec3 } {
  const d: Vec3 = [0, 0, dir];
  const n = unit3(cross3(h.axis, d));
  const o = grown(h.outline, h.gap);
  if (o.kind === "round") return { point: h.at, normal: cross3(n, h.axis) };
  const y = cross3(h.axis, h.across);
  const [nx, ny] = [dot3(n, h.across), dot3(n, y)];
  const side = (s: number) => (Math.abs(s) < 1e-12 ? 0 : Math.sign(s));
  const u = side(nx) * (o.width / 2 - o.corner) + o.corner * nx;
  const v = side(ny) * (o.depth / 2 - o.corner) + o.corner * ny;
  // The outline is the same turned half round, so the line through this corner and the axis joins both.
  const chord = unit3(along(along([0, 0, 0], h.across, u), y, v));
  return { point: h.at, normal: cross3(chord, h.axis) };
}

/** The shape with everything from an end's contacts outwards cut away; `max` must not be in it. */
function trimmed(b: Builders, shape: TopoDS_Shape, e: EndCase, dir: 1 | -1): TopoDS_Shape {
  if (e.kind === "plane") {
    const k = dir * Math.sign(e.normal[2]);
    return b.cut(shape, b.beyond(e.point, [e.normal[0] * k, e.normal[1] * k, e.normal[2] * k]));
  }
  if (e.kind === "min") return e.of.reduce((s, x) => trimmed(b, s, x, dir), shape);
  if (e.kind === "max") throw new Error("A max is counted, not cut.");
  if (e.kind === "select") {
    // The miter's middle lies deep inside the headers; nothing of the branch is wanted past it.
    const near = b.cut(shape, b.beyond(e.point, [0, 0, dir]));
    const [x, y, z] = e.normal;
    const wholes = e.of.map(({ header: { at, axis, across, outline, gap } }) =>
      b.prism(grown(outline, gap), { at: along(at, axis, -FAR / 2), x: across, z: axis }, FAR),
    ) as [TopoDS_Shape, TopoDS_Shape];
    const first = b.cut(wholes[0], b.beyond(e.point, e.normal));
    const second = b.cut(wholes[1], b.beyond(e.point, [-x, -y, -z]));
    return b.cut(b.cut(near, first), second);
  }
  const { point, normal } = widest(e.header, dir);
  const k = normal[2] * dir > 0 ? 1 : -1;
  const near = b.cut(shape, b.beyond(point, [normal[0] * k, normal[1] * k, normal[2] * k]));
  const { axis, across, at, outline, gap } = e.header;
  return b.cut(
    near,
    b.prism(grown(outline, gap), { at: along(at, axis, -FAR / 2), x: across, z: axis }, FAR),
  );
}

const isFlat = (e: EndCase): boolean =>
  e.kind === "plane" && e.normal[0] === 0 && e.normal[1] === 0 && e.point[2] === 0;

function volumeOf(oc: OpenCascadeInstance, c: JointCase): number {
  const b = builders(oc);
  const [stand, length] = standOf(c.ends);
  const solid = b.prism(c.section.outer, stand, length);
  return volumeBetween(
    b,
    c.section.hole ? b.cut(solid, b.prism(c.section.hole, stand, length)) : solid,
    c.ends,
  );
}

function volumeOver(oc: OpenCascadeInstance, outline: Loop, ends: JointCase["ends"]): number {
  const b = builders(oc);
  return volumeBetween(b, b.prismOver(outline, ...standOf(ends)), ends);
}

/** Where an untrimmed branch starts, and how long it is. */
function standOf([low]: JointCase["ends"]): [Stand, number] {
  const from = isFlat(low) ? 0 : -FAR / 3;
  return [{ at: [0, 0, from], x: [1, 0, 0], z: [0, 0, 1] }, FAR / 3 - from];
}

function volumeBetween(b: Builders, branch: TopoDS_Shape, [low, high]: JointCase["ends"]): number {
  const start = isFlat(low) ? branch : trimmed(b, branch, low, -1);
  if (high.kind !== "max") return b.volume(trimmed(b, start, high, 1));
  const [first, second] = high.of as [EndCase, EndCase];
  const one = trimmed(b, start, first, 1);
  const both = trimmed(b, one, second, 1);
  return b.volume(one) + b.volume(trimmed(b, start, second, 1)) - b.volume(both);
}

function drilledVolume(
  oc: OpenCascadeInstance,
  section: SectionCase,
  length: number,
  bores: readonly Bore[],
): number {
  const b = builders(oc);
  const stand: Stand = { at: [0, 0, 0], x: [1, 0, 0], z: [0, 0, 1] };
  const solid = b.prism(section.outer, stand, length);
  const bar = section.hole ? b.cut(solid, b.prism(section.hole, stand, length)) : solid;
  const drills = bores.map((bore) => {
    const z = unit3(bore.direction);
    const x = unit3(cross3(z, Math.abs(z[0]) < 0.8 ? [1, 0, 0] : [0, 1, 0]));
    return b.prism(
      { kind: "round", radius: bore.diameter / 2 },
      { at: along(bore.point, z, -FAR), x, z },
      2 * FAR,
    );
  });
  return b.volume(drills.reduce(b.cut, bar));
}

function commonOf(oc: OpenCascadeInstance, first: StandingBar, second: StandingBar): number {
  const b = builders(oc);
  const shapeOf = ({ section, headers, planes, length, ...stand }: StandingBar): TopoDS_Shape => {
    const outer = b.prism(section.outer, stand, length);
    const bar = section.hole ? b.cut(outer, b.prism(section.hole, stand, length)) : outer;
    const notched = headers.reduce((shape, { axis, across, at, outline, gap }) => {
      const whole = { at: along(at, axis, -FAR / 2), x: across, z: axis };
      return b.cut(shape, b.prism(grown(outline, gap), whole, FAR));
    }, bar);
    return planes.reduce((shape, { point, normal }) => b.cut(shape, b.beyond(point, normal)), notched);
  };
  const operation = new oc.BRepAlgoAPI_Common(
    shapeOf(first),
    shapeOf(second),
    new oc.Message_ProgressRange(),
  );
  operation.Build(new oc.Message_ProgressRange());
  return b.volume(operation.Shape());
}
