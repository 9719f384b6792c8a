// From facets sorted far to near to the paths of an SVG picture: shaded fills with their lines, nothing that is covered.
import { dot, unit } from "./vector.mjs";

/** From the eye's upper left, towards the light; view coordinates. */
const LIGHT = unit([-0.45, 0.75, -0.7]);
const SHADES = 32;
/** Samples per picture unit when asking what is covered. */
const FINE = 2;

/**
 * SVG elements of a picture `width` × `height`.
 *
 * @param facets far to near, view coordinates (mm)
 * @param frame size, decimals, and `place: { scale, x, y }`: picture = (x + scale·right, y − scale·up)
 */
export function paint(facets, { width, height, place, digits = 1 }) {
  const round = (x) => String(Number(x.toFixed(digits)));
  const at = ([x, y]) => `${round(x)} ${round(y)}`;
  const drawn = facets.map((facet) => ({
    ...facet,
    flat: facet.points.map((p) => [place.x + place.scale * p[0], place.y - place.scale * p[1], p[2]]),
  }));
  const canvas = covered(drawn, width, height);
  const colours = new Map();
  const out = [];
  let last;
  const emit = (kind, data) => {
    if (last?.kind === kind) last.data += data;
    else {
      last = { kind, data };
      out.push(last);
    }
  };
  drawn.forEach((facet, i) => {
    const lines = facet.flat.flatMap((a, k) => {
      const b = facet.flat[(k + 1) % facet.flat.length];
      return facet.lines[k] && canvas.shows(a, b) ? [`M${at(a)}L${at(b)}`] : [];
    });
    if (canvas.seen[i] || lines.length > 0) {
      const shade = shadeOf(facet, colours);
      const [start, ...rest] = facet.flat.map(at);
      emit(shade, `M${start}L${rest.join(" ")}z`);
    }
    if (lines.length > 0) emit(facet.body.faint ? "f" : "e", lines.join(""));
  });
  const style = [...colours].map(([key, colour]) => `.${key}{fill:${colour};stroke:${colour}}`).join("");
  const paths = out.map(({ kind, data }) => `<path class="${kind}" d="${data}"/>`).join("\n");
  return { style, paths };
}

function shadeOf({ normal, body }, colours) {
  const light = Math.max(0, dot(normal, LIGHT));
  const level = Math.round((SHADES - 1) * light);
  const { low = 0.5, high = 1.18 } = body.tone ?? {};
  const factor = low + ((high - low) * level) / (SHADES - 1);
  const colour = `#${body.colour.map((c) => hex(c * factor)).join("")}`;
  for (const [key, known] of colours) if (known === colour) return key;
  const key = `c${colours.size}`;
  colours.set(key, colour);
  return key;
}

const hex = (c) =>
  Math.round(255 * Math.min(1, Math.max(0, c)))
    .toString(16)
    .padStart(2, "0");

/** Which facets show at all, and a way to ask the same of a line. */
function covered(facets, width, height) {
  const [w, h] = [Math.ceil(width * FINE), Math.ceil(height * FINE)];
  const top = new Int32Array(w * h).fill(-1);
  const depth = new Float64Array(w * h).fill(Number.POSITIVE_INFINITY);
  facets.forEach((facet, i) => {
    fill(facet.flat, w, h, (pixel, z) => {
      top[pixel] = i;
      depth[pixel] = z;
    });
  });
  const seen = new Uint8Array(facets.length);
  for (const i of top) if (i >= 0) seen[i] = 1;
  const shows = (a, b) => {
    const steps = Math.max(2, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 2));
    for (let k = 0; k <= steps; k++) {
      const [x, y, z] = [0, 1, 2].map((c) => a[c] + (k / steps) * (b[c] - a[c]));
      for (const [dx, dy] of AROUND) {
        const [px, py] = [Math.floor(x * FINE + dx), Math.floor(y * FINE + dy)];
        if (px >= 0 && py >= 0 && px < w && py < h && depth[py * w + px] > z - 2) return true;
      }
    }
    return false;
  };
  return { seen, shows };
}

const AROUND = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].map((dy) => [dx, dy]));

/** Calls back for every sample inside a convex polygon, with the depth there. */
function fill(ring, w, h, set) {
  const points = ring.map(([x, y, z]) => [x * FINE, y * FINE, z]);
  const ys = points.map((p) => p[1]);
  const from = Math.max(0, Math.ceil(Math.min(...ys) - 0.5));
  const to = Math.min(h - 1, Math.floor(Math.max(...ys) - 0.5));
  for (let row = from; row <= to; row++) {
    const y = row + 0.5;
    const hits = [];
    points.forEach((a, k) => {
      const b = points[(k + 1) % points.length];
      if (a[1] <= y === b[1] <= y) return;
      const t = (y - a[1]) / (b[1] - a[1]);
      hits.push([a[0] + t * (b[0] - a[0]), a[2] + t * (b[2] - a[2])]);
    });
    if (hits.length < 2) continue;
    hits.sort((p, q) => p[0] - q[0]);
    const [[x0, z0], [x1, z1]] = [hits[0], hits.at(-1)];
    const right = Math.min(w - 1, Math.floor(x1 - 0.5));
    for (let col = Math.max(0, Math.ceil(x0 - 0.5)); col <= right; col++) {
      const t = x1 > x0 ? (col + 0.5 - x0) / (x1 - x0) : 0;
      set(row * w + col, z0 + t * (z1 - z0));
    }
  }
}
