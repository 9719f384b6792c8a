/**
 * The guard of `pottery-studio.json` scripted in code: members placed by hand with the library's own formulas, joints
 * left to the solver's rules where they can be. Invented data; sizes in inches turned to millimetres.
 *
 * Run it after a build with any TypeScript runner; it prints one line a piece.
 */
import {
  breakPoint,
  type Joint,
  type Member,
  member,
  nosingLine,
  rectTube,
  roundTube,
  solveJoints,
  type Vec3,
} from "../src/index.js";

const inch = (value: number) => value * 25.4;
const line = nosingLine({ risers: 13, floorToFloor: inch(98 + 5 / 16), going: inch(10 + 5 / 8) });
const pitch = (line.pitch * Math.PI) / 180;
const height = inch(42);

const rail = roundTube({ od: inch(1.9), wall: inch(0.145) });
const post = rectTube({ width: inch(1.5), depth: inch(1.5), wall: inch(0.12) });
const endPost = rectTube({ width: inch(2), depth: inch(2), wall: inch(0.188) });
const low = rectTube({ width: inch(1), depth: inch(1), wall: inch(0.12) });

/** The break of the axes: half the depth below the top edges, so that much of tan(θ/2) past the nosing. */
function breakNode(): Vec3 {
  const found = breakPoint({ heightRake: height, heightLevel: height, pitch: line.pitch, depth: inch(1.9) });
  return [found.kind === "at" ? found.midDepth : 0, 0, height - inch(0.95)];
}

/** A point of a raking line `above` the nosing line, measured plumb. */
const onRake = (x: number, above: number): Vec3 => [x, 0, above + x * Math.tan(pitch)];

/** Members of the guard, in the order of the design document's layout. */
export function potteryStudioMembers(): Member[] {
  const railAxis = height - inch(0.95) / Math.cos(pitch);
  const lowAxis = inch(0.5) + inch(0.5) / Math.cos(pitch);
  const foot = line.nosings[0]?.x ?? 0;
  const node = breakNode();
  const end: Vec3 = [inch(96.75 - 0.375), 0, node[2]];
  const stair = [1, 4, 7, 10].map((tread) => {
    const nosing = line.nosings[tread - 1];
    return { x: (nosing?.x ?? 0) + inch(3), z: nosing?.z ?? 0 };
  });
  const posts = [...stair, ...[3, 33.25, 63.5, 93.75].map((at) => ({ x: inch(at), z: 0 }))];
  const rails = [
    member({ id: "R1", section: rail, from: onRake(foot, railAxis), to: node, role: "top-rail" }),
    member({ id: "R2", section: rail, from: node, to: end, role: "top-rail" }),
  ];
  const bays = posts.slice(1).map((to, i) => {
    const fromX = posts[i]?.x ?? 0;
    const at = (x: number): Vec3 => (i < 4 ? onRake(x, lowAxis) : [x, 0, inch(2.5)]);
    return member({ id: `B${i + 1}`, section: low, from: at(fromX), to: at(to.x), role: "rail" });
  });
  const uprights = posts.map(({ x, z }, i) => {
    const top: Vec3 = i < 4 ? onRake(x, railAxis) : [x, 0, node[2]];
    const section = [0, 4, 7].includes(i) ? endPost : post;
    return member({ id: `P${i + 1}`, section, from: [x, 0, z + inch(0.375)], to: top, role: "post" });
  });
  return [...rails, ...bays, ...uprights];
}

/** What the rules cannot know: a plumb foot, and 2 in posts under a 1.900 in rail. */
export function potteryStudioJoints(): Joint[] {
  const wide = [
    ["P1", "R1"],
    ["P5", "R2"],
    ["P8", "R2"],
  ] as const;
  return [
    { kind: "cut", id: "foot", end: { member: "R1", end: 0 }, cut: { type: "plumb" } },
    ...wide.map(([id, onto]): Joint => {
      return {
        kind: "cope",
        id: `${id}-top`,
        end: { member: id, end: 1 },
        onto: [onto],
        shoulder: "midline",
      };
    }),
  ];
}

const { pieces, diagnostics } = solveJoints({
  members: potteryStudioMembers(),
  joints: potteryStudioJoints(),
});
for (const piece of pieces) {
  console.log(`${piece.mark}  ${piece.section.name}  blank ${piece.lengths.blank.value.toFixed(2)} mm`);
}
for (const found of diagnostics) console.log(`${found.severity} ${found.code}: ${found.message}`);
