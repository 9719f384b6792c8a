/**
 * Random ends over the whole documented domain (DEVELOPERS.md, "What every end may be"): the places where surfaces line
 * up, touch or nearly do are drawn on purpose, since chance would never find them.
 *
 * A case is known by a seed and a number: the same two give the same case on every machine.
 */
import type { Bore, Vec3 } from "../../src/kernel/index.js";
import {
  type EndCase,
  type HeaderCase,
  halfWidth,
  type JointCase,
  type SectionCase,
  SQUARE,
} from "../support/joint-case.js";
import { type Random, randomFrom } from "../support/random.js";
import { type HeaderWish, headerOver, mirrored, raised, reachOf } from "../support/random-cases.js";
import { boreThrough, type Profile, profileIn, underCorner } from "./extras.js";

/** Limits of the domain. Degrees and millimetres. */
export const DOMAIN = {
  /** Between branch and header. */
  leastAngle: 15,
  /** Of a flat cut, from square. */
  mostTilt: 60,
  /** Of a round section's diameter and of a rectangle's sides. */
  sizes: [12, 80],
  mostGap: 3,
  /** Contacts in one end, nested as `min` and `max`. */
  mostContacts: 3,
} as const;

const RAD = Math.PI / 180;

/** How an end is made, with how many of a hundred cases have it at their high end. */
const KINDS = {
  "equal round": 15,
  "nearly equal round": 13,
  "wider round": 7,
  "rect header": 10,
  "equal rect header": 7,
  shoulders: 4,
  plane: 3,
  crest: 6,
  valley: 6,
  "nearest of two": 7,
  "farthest of two": 6,
  "header and plane": 4,
  "farther of header and plane": 2,
  "narrow header and plane": 3,
  "three planes": 2,
  "nearest of three": 2,
  nested: 3,
} as const;
export type EndKind = keyof typeof KINDS;

const TABLE = Object.entries(KINDS).flatMap(([kind, n]) => Array<EndKind>(n).fill(kind as EndKind));
export const END_KINDS = Object.keys(KINDS) as EndKind[];

/** A joint to be solved, and what it is an example of. */
export interface FuzzCase {
  readonly seed: number;
  readonly number: number;
  readonly joint: JointCase;
  /** Radians by which the whole bar is turned about its axis before it is solved. */
  readonly turn: number;
  /** Direction and radians by which the whole model is turned before its joints are solved. */
  readonly pose: { readonly axis: Vec3; readonly angle: number };
  /** In place of the section's own region. */
  readonly profile?: Profile;
  /** A hole to be drilled. */
  readonly drill?: Bore;
  readonly kinds: readonly EndKind[];
  readonly tags: readonly string[];
}

/** 10⁻ᵏ for a k from 1 to 12. */
const tiny = (random: Random): number => 10 ** -Math.floor(random.between(1, 13));

function sectionFor(random: Random, shape: "round" | "rect"): SectionCase {
  const [least, most] = DOMAIN.sizes;
  const hollow = random.chance(0.7);
  const size = () => random.pick([random.pick([21.3, 33.7, 42.4, 48.3, 60.3]), random.between(least, most)]);
  if (shape === "round") {
    const radius = size() / 2;
    const wall = radius * random.pick([0.1, 0.15, random.between(0.06, 0.7)]);
    return {
      outer: { kind: "round", radius },
      ...(hollow && { hole: { kind: "round" as const, radius: radius - wall } }),
    };
  }
  const side = () => random.pick([random.pick([20, 38.1, 40, 50]), random.between(15, most)]);
  const width = side();
  const depth = random.chance(0.5) ? width : side();
  const small = Math.min(width, depth);
  const wall = small * random.between(0.06, 0.3);
  const corner = Math.min(random.pick([0, wall, 2 * wall, random.between(0.1, 9)]), 0.45 * small);
  const sharp = random.chance(0.2);
  // A sharp bore in a round corner leaves a wall there only where the corner is small.
  const inner =
    sharp && Math.SQRT2 * wall - (Math.SQRT2 - 1) * corner > wall / 2 ? 0 : Math.max(0, corner - wall);
  return {
    outer: { kind: "rect", width, depth, corner },
    ...(hollow && {
      hole: {
        kind: "rect" as const,
        width: width - 2 * wall,
        depth: depth - 2 * wall,
        corner: inner < 0.01 ? 0 : inner,
      },
    }),
  };
}

const turnFor = (random: Random): number => {
  const quarter = 90 * Math.floor(random.between(0, 4));
  return random.pick([
    random.between(0, 360),
    random.between(0, 360),
    quarter,
    random.pick([quarter + 45, quarter + (random.pick([-1, 1]) * tiny(random)) / RAD]),
  ]);
};

const angleFor = (random: Random): number =>
  random.pick([
    90,
    random.between(DOMAIN.leastAngle, 90),
    random.between(DOMAIN.leastAngle, 90),
    random.pick([45, 30, 60, 90 - tiny(random), random.between(30, 90)]),
  ]);

interface Drawing {
  readonly random: Random;
  readonly section: SectionCase;
  readonly tags: Set<string>;
}

const hit = (header: HeaderCase): EndCase => ({ kind: "hit", header });

/** A header that covers the branch, its axis at height z. */
function header(d: Drawing, more: Partial<HeaderWish> = {}, z = 0): HeaderCase {
  const { random, section, tags } = d;
  const equal = more.equal ?? random.chance(0.15);
  const offset = random.chance(0.35) ? random.between(-0.6, 0.6) : 0;
  const wish: HeaderWish = {
    shape: random.chance(0.3) ? "rect" : "round",
    angle: angleFor(random),
    turn: turnFor(random),
    gap: random.chance(0.25) ? random.between(0.2, DOMAIN.mostGap) : 0,
    offset,
    ...more,
    equal,
  };
  const aligned = wish.shape === "rect" && !equal && random.chance(0.25) ? alignedCorner(d, wish) : {};
  const made = headerOver(random, section.outer, z, { ...wish, ...aligned });
  if (made.outline.kind === "rect") tags.add("rect header");
  if (equal && made.outline.kind === "round" && section.outer.kind === "round" && !wish.spare && !wish.offset)
    tags.add("equal diameters");
  if (made.gap > 0) tags.add("gap");
  if (wish.offset) tags.add("skew axes");
  return made;
}

/** A flat side of the header that ends just where the bore of the branch does, or 10⁻ᵏ mm beside. */
function alignedCorner(d: Drawing, wish: HeaderWish): Partial<HeaderWish> {
  const { section, random } = d;
  if (!section.hole) return {};
  const [x, y] = [Math.sin(wish.turn * RAD), -Math.cos(wish.turn * RAD)];
  const [outer, inner] = [halfWidth(section.outer, x, y), halfWidth(section.hole, x, y)];
  const times = 1.05;
  const beside = random.chance(0.5) ? 0 : random.pick([-1, 1]) * tiny(random);
  const corner = (outer * times - inner + beside) / (2 * outer * times);
  if (corner > 0.24) return {};
  d.tags.add("flat side ends at the bore");
  return { gap: 0, offset: 0, roll: random.pick([0, 90]) === 0 ? 0 : 180, times, corner };
}

const planeAt = (random: Random, height: number, mostTilt: number): EndCase => {
  const tilt = Math.tan(random.pick([0, random.between(0, mostTilt), random.between(0, mostTilt)]) * RAD);
  const way = turnFor(random) * RAD;
  return { kind: "plane", point: [0, 0, height], normal: [tilt * Math.cos(way), tilt * Math.sin(way), 1] };
};

/** Two headers whose axes lie in one plane with the branch, as mitred rails over a post. */
function inOnePlane(d: Drawing): EndCase[] {
  const { random } = d;
  const turn = turnFor(random);
  const offset = random.chance(0.2) ? random.between(-0.3, 0.3) : 0;
  const same = { turn, offset, gap: 0, shape: "round" as const, equal: random.chance(0.4) };
  const first = header(d, { ...same, angle: random.between(30, 85) });
  const level = random.chance(0.5) ? 90 : random.between(30, 85);
  const second = header(d, { ...same, angle: level, turn: level === 90 ? turn : turn + 180 });
  if (random.chance(0.3)) return [first, second].map(hit);
  return [first, { ...second, outline: first.outline, at: first.at }].map(hit);
}

const two = (d: Drawing, equal?: boolean): EndCase[] => {
  const { random, tags } = d;
  const sized = equal === undefined ? {} : { equal };
  const first = header(d, { ...sized });
  const apart = random.chance(0.3) ? 0 : random.between(-8, 8);
  const second = header(d, { ...sized }, apart);
  tags.add("skew axes");
  return [hit(first), hit(second)];
};

function endOf(d: Drawing, kind: EndKind, number: number): EndCase {
  const { random, tags } = d;
  const nearby = -random.between(0.4, 1) * reachOf(d.section.outer);
  switch (kind) {
    case "equal round":
      return hit(header(d, { shape: "round", equal: true, gap: 0, offset: 0 }));
    case "nearly equal round": {
      const k = 1 + (number % 12);
      tags.add(`R - r = 1e-${k}`);
      return hit(header(d, { shape: "round", equal: true, gap: 0, offset: 0, spare: 10 ** -k }));
    }
    case "wider round":
      return hit(header(d, { shape: "round" }));
    case "rect header":
      return hit(header(d, { shape: "rect" }));
    case "equal rect header": {
      const roll = random.pick([0, 0, 90, random.between(0, 360), tiny(random) / RAD]);
      const offset = random.chance(0.2) ? random.between(-0.3, 0.3) : 0;
      const spare = random.chance(0.3) ? tiny(random) : 0;
      return hit(header(d, { shape: "rect", equal: true, roll, offset, spare }));
    }
    case "shoulders": {
      const narrow = header(d, { shape: "round", equal: false, times: random.between(0.6, 0.98), offset: 0 });
      return hit({ ...narrow, shoulder: true });
    }
    case "plane":
      return planeAt(random, 0, DOMAIN.mostTilt);
    case "crest":
      return { kind: "min", of: inOnePlane(d) };
    case "valley":
      return { kind: "max", of: inOnePlane(d) };
    case "nearest of two":
      return { kind: "min", of: two(d) };
    case "farthest of two":
      return { kind: "max", of: two(d) };
    case "header and plane":
      return { kind: "min", of: [hit(header(d)), planeAt(random, nearby, 30)] };
    case "farther of header and plane":
      return { kind: "max", of: [hit(header(d)), planeAt(random, nearby, 30)] };
    case "narrow header and plane": {
      // Closed by the plane through the header's widest line, or one nearer.
      const narrow = header(d, { shape: "round", equal: false, times: random.between(0.5, 0.98), gap: 0 });
      const [ax, ay, az] = narrow.axis;
      const below = random.pick([0, 0, tiny(random), random.between(0, 3)]);
      const point: Vec3 = [narrow.at[0], narrow.at[1], narrow.at[2] - below];
      return {
        kind: "min",
        of: [hit(narrow), { kind: "plane", point, normal: [-az * ax, -az * ay, 1 - az * az] }],
      };
    }
    case "three planes": {
      tags.add("three contacts");
      return {
        kind: "min",
        of: [0, 1, 2].map(() => planeAt(random, random.pick([0, random.between(-3, 3)]), 45)),
      };
    }
    case "nearest of three":
      tags.add("three contacts");
      return { kind: "min", of: [...two(d), planeAt(random, nearby, 30)] };
    case "nested": {
      tags.add("three contacts");
      const [first, second] = two(d);
      const third = random.chance(0.5) ? hit(header(d)) : planeAt(random, nearby, 30);
      const [outer, inner] = random.pick([
        ["min", "max"],
        ["max", "min"],
      ] as const);
      return { kind: outer, of: [third, { kind: inner, of: [first!, second!] }] };
    }
  }
}

/** Axes at random, for turning the model. */
const poseFor = (random: Random): FuzzCase["pose"] => {
  const z = random.between(-1, 1);
  const a = random.between(0, 2 * Math.PI);
  const r = Math.sqrt(1 - z * z);
  return { axis: [r * Math.cos(a), r * Math.sin(a), z], angle: random.between(0, 2 * Math.PI) };
};

/** Shares of cases that have something besides. */
const SHARES = { corner: 0.04, profile: 0.04, drill: 0.06 } as const;

/** The random case with a number. */
export function fuzzCase(seed: number, number: number): FuzzCase {
  const random = randomFrom(Math.imul(seed, 0x9e3779b1) + Math.imul(number, 0x85ebca6b));
  // 37 and 100 have no common factor: every hundred numbers see each place of the table once, well mixed.
  const kind = TABLE[(number * 37) % 100]!;
  const tubes = kind === "equal round" || kind === "nearly equal round";
  const section = sectionFor(random, tubes || random.chance(0.6) ? "round" : "rect");
  const tags = new Set<string>(section.outer.kind === "rect" ? ["rect branch"] : []);
  const d: Drawing = { random, section, tags };
  const drawn = endOf(d, kind, Math.floor(number / 100));
  const more = randomFrom(Math.imul(seed, 0xc2b2ae35) + Math.imul(number, 0x27d4eb2f));
  const corner = more.chance(SHARES.corner);
  if (corner) tags.add("plan corner");
  const high = raised(corner ? underCorner(more, section.outer) : drawn, section.outer);
  const both = random.chance(0.38);
  const other = random.pick(TABLE);
  const low = both
    ? mirrored(raised(endOf(d, other, Math.floor(random.between(0, 12))), section.outer))
    : SQUARE;
  if (both && kind !== "plane" && other !== "plane") tags.add("both ends coped");
  const turn = random.pick([0, 0, random.between(0, 2 * Math.PI)]);
  const profile = more.chance(SHARES.profile) ? profileIn(more, section.outer) : undefined;
  if (profile) tags.add("section not convex");
  const drill = !profile && more.chance(SHARES.drill) ? boreThrough(more, section) : undefined;
  if (drill) tags.add("bore");
  const kinds = both ? [kind, other] : [kind];
  const name = `${seed}/${number} ${kinds.join(" + ")}`;
  return {
    seed,
    number,
    joint: { name, section, ends: [low, high] },
    turn,
    pose: poseFor(random),
    ...(profile && { profile }),
    ...(drill && { drill }),
    kinds,
    tags: [...tags],
  };
}
