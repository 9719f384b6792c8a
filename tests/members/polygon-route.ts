/**
 * A second route to section properties that shares no formula with src: arcs become fine polylines, moments come from
 * the shoelace sums of the polygon, and the plastic modulus from clipping the polygon at a line (Sutherland-Hodgman) and
 * halving. Error falls with the square of the number of chords.
 */
import type { Loop, Region } from "../../src/kernel/region.js";

type Point = readonly [number, number];

function polygonOf(loop: Loop, chords: number): Point[] {
  return loop.flatMap((side): Point[] => {
    if (side.kind === "line") return [side.from];
    return Array.from({ length: chords }, (_, i): Point => {
      const angle = side.start + (side.sweep * i) / chords;
      return [side.centre[0] + side.radius * Math.cos(angle), side.centre[1] + side.radius * Math.sin(angle)];
    });
  });
}

function sums(polygon: readonly Point[]): {
  a: number;
  sx: number;
  sy: number;
  ix: number;
  iy: number;
  ixy: number;
} {
  const total = { a: 0, sx: 0, sy: 0, ix: 0, iy: 0, ixy: 0 };
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    const c = x1 * y2 - x2 * y1;
    total.a += c / 2;
    total.sx += (c * (y1 + y2)) / 6;
    total.sy += (c * (x1 + x2)) / 6;
    total.ix += (c * (y1 * y1 + y1 * y2 + y2 * y2)) / 12;
    total.iy += (c * (x1 * x1 + x1 * x2 + x2 * x2)) / 12;
    total.ixy += (c * (x1 * y2 + 2 * x1 * y1 + 2 * x2 * y2 + x2 * y1)) / 24;
  });
  return total;
}

function clipAbove(polygon: readonly Point[], y: number): Point[] {
  return polygon.flatMap((p, i): Point[] => {
    const q = polygon[(i + 1) % polygon.length]!;
    const cut: Point[] =
      p[1] > y !== q[1] > y ? [[p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]), y]] : [];
    return p[1] > y ? [p, ...cut] : cut;
  });
}

/** Properties of a region by polygons of `chords` chords an arc. */
export function polygonProperties(region: Region, chords = 2000) {
  const polygons = [region.outer, ...region.holes].map((loop) => polygonOf(loop, chords));
  const add = (list: readonly Point[][]) =>
    list.map(sums).reduce((s, t) => ({
      a: s.a + t.a,
      sx: s.sx + t.sx,
      sy: s.sy + t.sy,
      ix: s.ix + t.ix,
      iy: s.iy + t.iy,
      ixy: s.ixy + t.ixy,
    }));
  const t = add(polygons);
  const plastic = (turned: readonly Point[][]): number => {
    const whole = add(turned);
    const ys = turned.flat().map((p) => p[1]);
    let [low, high] = [Math.min(...ys), Math.max(...ys)];
    for (let i = 0; i < 50; i += 1) {
      const middle = (low + high) / 2;
      if (add(turned.map((p) => clipAbove(p, middle))).a > whole.a / 2) low = middle;
      else high = middle;
    }
    const above = add(turned.map((p) => clipAbove(p, low)));
    return above.sx - low * above.a - (whole.sx - above.sx - low * (whole.a - above.a));
  };
  const [cx, cy] = [t.sy / t.a, t.sx / t.a];
  return {
    area: t.a,
    centroid: [cx, cy] as const,
    ix: t.ix - t.a * cy * cy,
    iy: t.iy - t.a * cx * cx,
    ixy: t.ixy - t.a * cx * cy,
    wPlasticX: plastic(polygons),
    wPlasticY: plastic(polygons.map((polygon) => polygon.map(([x, y]): Point => [-y, x]))),
  };
}
