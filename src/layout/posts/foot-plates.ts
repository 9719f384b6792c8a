/**
 * What the posts stand on as pieces: base plates on treads and floors, plates and packers on the side of a stringer.
 *
 * A base plate is centred under its post and lies on its ground, or as its post was found to lean; the post's lower end is
 * cut to its top face. A side plate stands between the post's inner face and the stringer. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { addScaled, dot, normalize, type Vec3 } from "../../kernel/vec.js";
import { postName } from "../as-set/stance.js";
import type { FootDesign } from "../document/foot-design.js";
import { alongOf, at, inwardOf, joined, type Part, type Place } from "../part.js";
import { sayLength } from "../say-length.js";
import type { PlacedPost } from "./place-posts.js";
import { holesOf, plateOr } from "./plate-or.js";
import { axisPoint, inwardOfAxis, postAxis } from "./post-line.js";

/**
 * Where a base plate lies and which way it faces: up, or square to a landing that slopes. Of a post that was found to lean it
 * leans along: a foot that is cut and welded as designed stands as even as what is under it, and is not to be cut again.
 */
function lieOf(
  place: Place,
  post: PlacedPost,
  thickness: number,
): { readonly at: Vec3; readonly normal: Vec3 } {
  const along = alongOf(place, post.reach);
  const ground = place.site.legs.find(({ leg }) => leg.id === post.leg);
  const slope = ground === undefined || ground.flight !== undefined || post.corner ? 0 : ground.slope;
  const axis = postAxis(place.site, post);
  if (axis.p === 0 && axis.q === 0) {
    return {
      at: at(place, post.reach, post.x, post.baseZ, inwardOfAxis(place, axis, post.footZ)),
      normal: slope === 0 ? [0, 0, 1] : [-along[0] * slope, -along[1] * slope, 1],
    };
  }
  const left: Vec3 = [-along[1], along[0], 0];
  const up = normalize(addScaled(addScaled([0, 0, 1], along, axis.p), left, axis.q));
  const forth = normalize(addScaled(along, up, -dot(along, up)));
  return {
    at: addScaled(axisPoint(place, post, post.footZ), up, -thickness),
    normal: addScaled(up, forth, -slope),
  };
}

function basePlate(place: Place, post: PlacedPost, foot: Extract<FootDesign, { type: "plate" }>): Part {
  const id = `${post.id}-base`;
  const made = plateOr(
    {
      ...{ id, mark: `${post.mark}-BP`, material: place.design.material },
      up: alongOf(place, post.reach),
      outline: {
        width: foot.across ?? 2 * post.extent.halfWidth,
        depth: foot.along ?? post.extent.depth,
        cornerRadius: foot.cornerRadius,
      },
      thickness: foot.thickness,
      holes: holesOf(foot.holes, foot.holes?.across ?? 0, foot.holes?.along ?? 0),
      ...lieOf(place, post, foot.thickness),
    },
    post.path,
  );
  if (made.plate === undefined) return { members: [], joints: [], diagnostics: made.diagnostics };
  const joint: Joint = {
    ...{ kind: "cut", id: `${post.id}-foot`, end: { member: post.id, end: 0 } },
    cut: { type: "face" },
    onto: id,
  };
  return { members: [made.plate], joints: [joint], diagnostics: [] };
}

/** A side plate is plumb, its post is not: how far apart they are at the plate's other edge. */
function standsOff(post: PlacedPost, by: number): Diagnostic[] {
  if (Math.abs(by) <= STATION_MM) return [];
  return [
    diagnostic({
      code: "side-plate-gap",
      severity: "warning",
      path: post.path,
      members: [post.id],
      message: `${postName(post)}: expected its inner face against the whole of its side plate, got it leaning ${sayLength(Math.abs(by))} away over the plate's height.`,
      hint: "Pull the post plumb across the guard, or pack the gap.",
      values: { by: Math.abs(by) },
    }),
  ];
}

function sidePlates(place: Place, post: PlacedPost, foot: Extract<FootDesign, { type: "side" }>): Part {
  const { plate: size, packer } = foot;
  const z = post.lineZ - size.centre;
  const outline = { width: size.along, depth: size.height };
  const holes = holesOf(size.holes, size.holes?.along ?? 0, size.holes?.across ?? 0);
  const sheet = (name: string, mark: string, inward: number, thickness: number) =>
    plateOr(
      {
        ...{ id: `${post.id}-${name}`, mark: `${post.mark}-${mark}`, material: place.design.material },
        ...{ outline, thickness, holes, normal: inwardOf(place, post.reach) },
        at: at(place, post.reach, post.x, z, inward),
      },
      post.path,
    );
  // The plate stands plumb: a post that leans across touches it where it comes out farthest.
  const axis = postAxis(place.site, post);
  const ends = [z - size.height / 2, z + size.height / 2].map((own) => inwardOfAxis(place, axis, own));
  const face = post.extent.halfWidth * Math.hypot(1, axis.q) + Math.max(...ends);
  const made = [
    sheet("side", "SP", face, size.thickness),
    ...(packer > 0 ? [sheet("packer", "PK", face + size.thickness, packer)] : []),
  ];
  return {
    members: made.flatMap((own) => own.plate ?? []),
    joints: [],
    diagnostics: [...made.flatMap((own) => own.diagnostics), ...standsOff(post, axis.q * size.height)],
  };
}

/** Plates and packers of all posts that have been built. */
export function footPlates(place: Place, posts: readonly PlacedPost[]): Part {
  return joined(
    posts.map((post): Part => {
      const { foot } = post;
      if (foot.type === "side") return sidePlates(place, post, foot);
      if (foot.type === "plate" && foot.thickness > 0) return basePlate(place, post, foot);
      return { members: [], joints: [], diagnostics: [] };
    }),
  );
}
