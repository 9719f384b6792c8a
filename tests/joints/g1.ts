/**
 * Fixture G1: one guard with everything in it, of the invented pottery studio.
 *
 * A level foot, a rake (slope 0.7) and a level landing carry three rails; the rails go round a plan corner on a round
 * post that stands through; the guard ends past its last post. A bar passes through two posts, the corner post is
 * drilled from two sides and stands on a base plate, and a frame of equal square tube stands beside it. Layout millimetres, top nosing at the origin.
 */
import type { Joint } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, member, plate, rectTube, roundBar, roundTube } from "../../src/members/index.js";

const TOP = roundTube({ od: 48.3, wall: 3.2 });
const LOWER = roundTube({ od: 33.7, wall: 3 });
const POST = roundTube({ od: 42.4, wall: 3.2 });
const CORNER = roundTube({ od: 60.3, wall: 3.6 });
const FRAME = rectTube({ width: 40, depth: 40, wall: 3, outerRadius: 6, innerRadius: 3 });
const BAR = roundBar({ od: 12 });

const SLOPE = 0.7;
const FLOOR = -1750;
const TOP_HEIGHT = 950;
const LOWER_HEIGHTS = [650, 350];

/** Level of the walking surface under the guard: floor, nosing line, landing. */
const ground = (x: number): number => Math.max(FLOOR, Math.min(0, SLOPE * x));
const over = (x: number, y: number, height: number): Vec3 => [x, y, ground(x) + height];

const rail = (id: string, from: Vec3, to: Vec3, section = LOWER): Member =>
  member({ id, section, role: section === TOP ? "top-rail" : "rail", from, to });
const post = (id: string, x: number, y: number, height = TOP_HEIGHT, section = POST): Member =>
  member({ id, section, role: "post", from: over(x, y, 0), to: over(x, y, height) });

const topRails = [
  rail("T1", over(-3000, 0, TOP_HEIGHT), over(-2500, 0, TOP_HEIGHT), TOP),
  rail("T2", over(-2500, 0, TOP_HEIGHT), over(0, 0, TOP_HEIGHT), TOP),
  rail("T3", over(0, 0, TOP_HEIGHT), over(1500, 0, TOP_HEIGHT), TOP),
  rail("T4", over(1500, 0, TOP_HEIGHT), over(1500, 1200, TOP_HEIGHT), TOP),
];

const posts = [
  post("P0", -3000, 0),
  post("P1", -2500, 0),
  post("P2", -1250, 0),
  post("P3", 0, 0),
  post("P4", 1500, 0, TOP_HEIGHT + 120, CORNER),
  post("P5", 1500, 1200),
];

/** Two lower rails per bay, each dying into the posts on both sides. */
const lowerRails = LOWER_HEIGHTS.flatMap((height, row) =>
  [-3000, -2500, -1250, 0]
    .map((x, bay) =>
      rail(`L${row}${bay}`, over(x, 0, height), over([-2500, -1250, 0, 1500][bay] as number, 0, height)),
    )
    .concat(rail(`L${row}4`, over(1500, 0, height), over(1500, 1200, height))),
);

/** A square frame of equal tube on the landing. */
const frame = [
  post("F1", 2500, 0, 900, FRAME),
  post("F2", 3300, 0, 900, FRAME),
  ...[250, 700].map((z, k) =>
    member({ id: `FR${k}`, section: FRAME, role: "rail", from: [2500, 0, z], to: [3300, 0, z] }),
  ),
];

/** A bar that passes through the corner post and the end post. */
const bar = member({ id: "B", section: BAR, role: "rail", from: [1500, -80, 150], to: [1500, 1280, 150] });

/** Under the corner post. */
const base = plate({
  id: "BP4",
  outline: { width: 120, depth: 120, cornerRadius: 10 },
  thickness: 10,
  holes: [-44, 44].flatMap((u) => [-44, 44].map((v) => ({ at: [u, v] as const, diameter: 13 }))),
  at: [1500, 0, 0],
  normal: [0, 0, 1],
});

export const G1: { readonly members: readonly Member[]; readonly joints: readonly Joint[] } = {
  members: [...topRails, ...posts, ...lowerRails, ...frame, bar, base],
  joints: [
    { kind: "cut", id: "foot of P4", end: { member: "P4", end: 0 }, cut: { type: "face" }, onto: "BP4" },
    ...["P4", "P5"].map(
      (id): Joint => ({ kind: "through", id: `B through ${id}`, bar: "B", member: id, clearance: 0.5 }),
    ),
    ...[250, 500].map(
      (z): Joint => ({
        kind: "bore",
        id: `X${z}`,
        member: "P4",
        at: [1500, 0, z],
        direction: [1, 0, 0],
        diameter: 7,
        through: "both",
      }),
    ),
    {
      kind: "bore",
      id: "Y550",
      member: "P4",
      at: [1500, 0, 550],
      direction: [0, 1, 0],
      diameter: 7,
      through: "both",
    },
  ],
};
