/**
 * A post under a break: do its two rails make a crest or a valley over it?
 *
 * Seen along the post, outwards, each rail leaves the break to one side, rising or falling. If the two fall away the break
 * is a crest and the nearest rail stops each fibre (min); if they rise it is a valley and the farthest does (max). This
 * holds where the post's axis lies in the rails' plane and the rails lie on opposite sides of it.
 *
 * @packageDocumentation
 */
import { OFF_BREAK_SINE, PARALLEL_SINE } from "../kernel/tolerance.js";
import { addScaled, cross, dot, length, normalize, scale, type Vec3 } from "../kernel/vec.js";

/** How two rails stand over a post. */
export type BreakOver = "crest" | "valley" | "straight" | "off-plane" | "one-side";

/**
 * @param post - outward direction of the post at the break, unit
 * @param first - direction in which the first rail leaves the break, unit
 * @param second - direction in which the second rail leaves the break, unit
 */
export function breakOver(post: Vec3, first: Vec3, second: Vec3): BreakOver {
  const normal = cross(first, second);
  const sine = length(normal);
  if (sine > PARALLEL_SINE && Math.abs(dot(normal, post)) > OFF_BREAK_SINE * sine) return "off-plane";
  const side = (d: Vec3): Vec3 => addScaled(d, post, -dot(d, post));
  const [a, b] = [side(first), side(second)];
  if (length(a) < PARALLEL_SINE || length(b) < PARALLEL_SINE || dot(a, b) >= 0) return "one-side";
  if (sine <= PARALLEL_SINE) return "straight";
  const slope = dot(first, post) / length(a) + dot(second, post) / length(b);
  return slope < 0 ? "crest" : "valley";
}

/** Unit direction of `d` square to `post`; the zero vector when they are parallel. */
export function acrossPost(post: Vec3, d: Vec3): Vec3 {
  const a = addScaled(d, post, -dot(d, post));
  return length(a) < PARALLEL_SINE ? scale(a, 0) : normalize(a);
}
