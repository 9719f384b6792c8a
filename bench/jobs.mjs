// The jobs, as numbers alone: every contender makes the same tube, at the same chord, from what is written here.
//
// A job's tube stands with its foot at the origin, its axis along +z; the header's axis runs through (0, 0, length) in the
// x-z plane; bores run through the tube's axis in the x-z plane. Millimetres, degrees. Nothing is random.

export const CHORD = 0.05;

/**
 * @typedef {object} Tube
 * @property {number} od
 * @property {number} wall
 *
 * @typedef {object} Job
 * @property {string} name
 * @property {Tube} branch
 * @property {number} length from the foot to the header's axis
 * @property {Tube} header
 * @property {number} angle from the branch's axis up to the header's
 * @property {number} headerTurn of the header about its own axis: which way the corners of a polygon stand
 * @property {number} boreAngle from the branch's axis up to the bores'
 * @property {readonly { z: number, diameter: number }[]} bores
 */

const TUBE_42 = { od: 42.4, wall: 3.2 };
const TUBE_48 = { od: 48.3, wall: 3.2 };
const TUBE_60 = { od: 60.3, wall: 3.6 };

/** Rise over run of the post's rail: 3 in 4, so that its angle from plumb has the cosine 3/5. */
export const RAKE = Math.atan2(3, 4);
const FROM_PLUMB = 90 - (RAKE * 180) / Math.PI;
const BORE = 6;
const BORES = 10;

const plain = { headerTurn: 0, boreAngle: FROM_PLUMB, bores: [] };

/** A 1000 mm tube on an equal tube, square. */
export const J1 = { ...plain, name: "J1", branch: TUBE_42, length: 1000, header: TUBE_42, angle: 90 };

/** The same on a larger tube at 37°. */
export const J2 = { ...plain, name: "J2", branch: TUBE_42, length: 1000, header: TUBE_60, angle: 37 };

/** A post to the underside of its raking rail, drilled ten times at the rake. */
export const POST = {
  ...plain,
  name: "Post",
  branch: TUBE_42,
  length: 1000,
  header: TUBE_48,
  angle: FROM_PLUMB,
  bores: Array.from({ length: BORES }, (_, k) => ({ z: 80 + 90 * k, diameter: BORE })),
};

/** The job with its header turned about its own axis. */
export const turned = (job, headerTurn) => ({ ...job, headerTurn });

/** The fractional parts of multiples of the golden section: even, never repeating, the same on every machine. */
const spread = (k) => (k * 0.6180339887498949) % 1;

export const POSTS_A_ROW = 40;
export const POST_SPACING = 1200;
export const ROW_SPACING = 2000;

/** N posts, every height and every bore in its own place; row and place in the row are where they stand. */
export function posts(count) {
  return Array.from({ length: count }, (_, i) => ({
    ...POST,
    name: `P${i}`,
    row: Math.floor(i / POSTS_A_ROW),
    place: i % POSTS_A_ROW,
    length: 960 + 80 * spread(i + 1),
    bores: POST.bores.map(({ z, diameter }, k) => ({ z: z + 30 * spread(BORES * i + k + 1) - 20, diameter })),
  }));
}

/** Sides of the regular polygon inscribed in a circle that stays within a chord, in whole quarters so that it is symmetric. */
export function segmentsOf(radius, chord = CHORD) {
  return 4 * Math.ceil(Math.PI / Math.acos(1 - chord / radius) / 4);
}

/** Unit direction in the x-z plane at an angle from +z. */
export function directionAt(angle) {
  const a = (angle * Math.PI) / 180;
  return [Math.sin(a), 0, Math.cos(a)];
}

/** How far a polygon's prism has to reach past the tube to cut all of it. */
export function reachOf(job) {
  return (job.branch.od + job.header.od) / Math.sin((job.angle * Math.PI) / 180) + 20;
}
