/**
 * Where is a top rail cut in two and joined again over an inner sleeve?
 *
 * At stations of a leg: both pieces cut square, the sleeve reaching the same into each. A splice keeps clear of the posts, of
 * breaks and corners by its sleeve's reach. Slip fit: clear all round between sleeve and rail. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";
import { type Member, member } from "../../members/member.js";
import type { Section, SectionShape } from "../../members/section.js";
import type { RailDesign } from "../document/design.js";
import { at, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, postAxis } from "../posts/post-line.js";
import { sayLength } from "../say-length.js";
import type { PlacedSplice } from "./placed-splice.js";
import { edgeZ, type RailPath, type RailRun } from "./rail-path.js";

/** Inner half sizes of a hollow section, or outer ones of a sleeve; undefined where the shape has no closed form here. */
function halfSizes(shape: SectionShape, inner: boolean): readonly [number, number] | undefined {
  const wall = inner && "wall" in shape ? shape.wall : 0;
  if (inner && !("wall" in shape)) return undefined;
  if (shape.kind === "round-tube" || shape.kind === "round-bar") {
    return [shape.od / 2 - wall, shape.od / 2 - wall];
  }
  if (shape.kind !== "rect-tube" && shape.kind !== "rect-bar") return undefined;
  return [shape.width / 2 - wall, shape.depth / 2 - wall];
}

const isRound = ({ kind }: SectionShape): boolean => kind === "round-tube" || kind === "round-bar";

/** Clear all round between a sleeve and the rail it slides into; undefined where they are not of one shape. */
export function sleeveClearance(rail: Section, sleeve: Section): number | undefined {
  if (isRound(rail.shape) !== isRound(sleeve.shape)) return undefined;
  const [hole, plug] = [halfSizes(rail.shape, true), halfSizes(sleeve.shape, false)];
  if (hole === undefined || plug === undefined) return undefined;
  return Math.min(hole[0] - plug[0], hole[1] - plug[1]);
}

function finding(splice: PlacedSplice, code: string, what: string, hint: string, by: number): Diagnostic {
  const message = `${splice.path}: ${what}`;
  return diagnostic({ code, path: splice.path, message, hint, values: { by } });
}

/** What is wrong with a splice on its run. */
function checkSplice(
  place: Place,
  splice: PlacedSplice,
  run: RailRun,
  rail: RailDesign,
  posts: readonly PlacedPost[],
): Diagnostic[] {
  const { shop } = place;
  const { reach, sleeve } = splice.design;
  const plan = reach / Math.hypot(1, run.slope);
  const starts = Object.values(run.x).map(([from]) => from);
  const stops = Object.values(run.x).map(([, to]) => to);
  const past = Math.max(Math.max(...starts) + plan - splice.x, splice.x + plan - Math.min(...stops));
  const clear = sleeveClearance(rail.section, sleeve);
  // Half the diametral slip fit, and a coat on the rail's inside and on the sleeve.
  const wanted = shop === undefined ? 0 : shop.slipFit / 2 + 2 * shop.finish.thickness;
  const near = posts
    .filter((post) => post.reach === run.reach)
    .map((post) => {
      const x = crossX(postAxis(place.site, post), { slope: run.slope, z0: run.z0.axis });
      return { post, by: post.extent.depth / 2 + plan - Math.abs(x - splice.x) };
    })
    .filter(({ by }) => by > 0);
  const message = (by: number, what: string) => `expected ${what}, got ${sayLength(by)} too near.`;
  return [
    ...(past > 0
      ? [
          finding(
            splice,
            "splice-past-run",
            message(past, `a splice inside the ${run.leg.id}'s straight rail by its sleeve's reach`),
            "Move the splice away from the end, the break or the corner.",
            past,
          ),
        ]
      : []),
    ...near.map(({ post, by }) =>
      finding(
        splice,
        "splice-at-post",
        message(by, `a sleeve clear of post ${post.mark}`),
        "Move the splice between two posts.",
        by,
      ),
    ),
    ...(clear !== undefined && (clear <= 0 || clear < wanted - STATION_MM)
      ? [
          finding(
            splice,
            "sleeve-too-wide",
            `expected a sleeve (${sleeve.name}) that slides into the rail (${rail.section.name}), with ${sayLength(wanted)} clear all round, got ${sayLength(clear)}.`,
            "Use a smaller sleeve, or a rail with a thinner wall.",
            wanted - clear,
          ),
        ]
      : []),
  ];
}

/** Sleeves of a rail, the square cuts of the pieces beside them, and what is wrong. */
export function spliceParts(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
  idAt: (run: RailRun, x: number) => string,
): Part {
  const members: Member[] = [];
  const joints: Joint[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const run of path.runs) {
    for (const splice of run.splices) {
      diagnostics.push(...checkSplice(place, splice, run, rail, posts));
      const plan = splice.design.reach / Math.hypot(1, run.slope);
      const point = (x: number): Vec3 => at(place, run.reach, x, edgeZ(run, "axis", x));
      const [lower, upper] = [idAt(run, splice.x - plan), idAt(run, splice.x + plan)];
      const cut = { type: "square" } as const;
      joints.push(
        { kind: "cut", id: `${lower}-splice`, end: { member: lower, end: 1 }, cut, onto: "splice" },
        { kind: "cut", id: `${upper}-splice-start`, end: { member: upper, end: 0 }, cut, onto: "splice" },
      );
      const id = `${upper}-sleeve`;
      for (const end of [0, 1] as const) {
        joints.push({ kind: "cut", id: `${id}-${end}`, end: { member: id, end }, cut });
      }
      members.push(
        member({
          ...{ id, mark: `SL${members.length + 1}${place.suffix}`, role: "other" },
          ...{ section: splice.design.sleeve, material: place.design.material },
          from: point(splice.x - plan),
          to: point(splice.x + plan),
        }),
      );
    }
  }
  const known = place.site.legs.map(({ leg }) => leg.id);
  place.design.splices.forEach((own, i) => {
    if (known.includes(own.leg)) return;
    const message = `splices[${i}]: expected a leg of the guard (${known.join(", ")}), got ${own.leg}.`;
    const hint = "Correct the leg's id.";
    diagnostics.push(diagnostic({ code: "unknown-leg", path: `splices[${i}].leg`, message, hint }));
  });
  return { members, joints, diagnostics };
}
