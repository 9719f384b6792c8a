/**
 * How high is the block that a top rail is laid on, post by post?
 *
 * A stop is a flat, level block clamped to the side of a post, centred on it and as wide along the guard as the shop says, by
 * default as the post; the rail is laid on it beside the post's top, scribed and cut. It stands on no tread: its height is
 * told from the tread under that post and from the post's own lower end. Under a raking rail its downhill corner carries, so
 * it stands lower than the rail's underside at the post's middle by half its width times the slope (trade geometry). A corner
 * post carries nothing: its rails end against it. x along the guard, heights from the top nosing; millimetres, degrees.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../kernel/tolerance.js";
import type { Member } from "../members/member.js";
import type { RailDesign } from "./document/design.js";
import type { Place } from "./part.js";
import type { PlacedPost } from "./posts/place-posts.js";
import { axisX, postAxis } from "./posts/post-line.js";
import { edgeZ, type RailPath, type RailRun } from "./rails/rail-path.js";
import { railId } from "./rails/top-rails.js";
import type { Site } from "./site/site.js";

/** One stop under one rail. */
export interface StopReport {
  /** Mark of its post, and the leg and tread this stands on. */
  readonly post: string;
  readonly leg: string;
  readonly tread?: number;
  /** Along the guard. */
  readonly width: number;
  /** Where the rail touches it: x and height. */
  readonly x: number;
  readonly z: number;
  /** Which corner of it carries the rail; `face` where they are parallel. */
  readonly touches: "downhill" | "uphill" | "face";
  /** Plumb from the tread, landing or floor under the post to the top of the stop. */
  readonly aboveBase: number;
  /** The same from the lower end of the post's tube, which is the top of its plate where it has a base plate. */
  readonly aboveFoot: number;
  readonly foot: PlacedPost["foot"]["type"];
}

/** One top rail as it is laid: the stops under it, from the foot upward. */
export interface LaidRailReport {
  readonly id: string;
  readonly mark: string;
  /** From level, + rising uphill. */
  readonly slope: number;
  readonly stops: readonly StopReport[];
  /** Along its underside: what reaches out before the first and past the last place it is carried at; 0 without stops. */
  readonly past: readonly [number, number];
}

/** One member of a run: its underside runs from x to x. */
interface Stretch {
  readonly run: RailRun;
  readonly member: Member;
  readonly from: number;
  readonly to: number;
}

/** The members of a run: one, or several where it is spliced. */
function stretches(place: Place, rail: RailDesign, run: RailRun, members: readonly Member[]): Stretch[] {
  const [start, end] = run.x.underside;
  const joints = run.splices.map((own) => own.x);
  return [start, ...joints].flatMap((from, i): Stretch[] => {
    const to = joints[i] ?? end;
    const id = railId(place, run, rail, (from + to) / 2);
    const member = members.find((own) => own.id === id);
    return member === undefined ? [] : [{ run, member, from, to }];
  });
}

function stopUnder(site: Site, { run, from, to }: Stretch, post: PlacedPost, width: number): StopReport[] {
  const { slope, reach } = run;
  const { p, q } = postAxis(site, post);
  // A post that leans has its stop where the rail meets it, not over its foot.
  const centre = axisX(site, post, { reach, slope, z0: edgeZ(run, "underside", 0) });
  const [low, high] = [Math.max(from, centre - width / 2), Math.min(to, centre + width / 2)];
  if (post.corner !== undefined || post.reach !== run.reach || high - low <= STATION_MM) return [];
  const x = run.slope > 0 ? low : run.slope < 0 ? high : (low + high) / 2;
  const z = edgeZ(run, "underside", x);
  return [
    {
      ...{ post: post.mark, leg: post.leg },
      ...(post.tread === undefined ? {} : { tread: post.tread }),
      ...{ width, x, z, touches: run.slope > 0 ? "downhill" : run.slope < 0 ? "uphill" : "face" },
      ...{
        aboveBase: z - post.baseZ,
        aboveFoot: (z - post.footZ) * Math.hypot(1, p, q),
        foot: post.foot.type,
      },
    },
  ];
}

/**
 * Every top rail on its stops.
 *
 * @param members - those that were built
 * @returns one entry a rail, from the foot upward; a rail that stands over no post has no stops
 */
export function laidRails(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
  members: readonly Member[],
): LaidRailReport[] {
  return path.runs
    .flatMap((run) => stretches(place, rail, run, members))
    .map((own): LaidRailReport => {
      const { run, member, from, to } = own;
      const stops = posts.flatMap((post) =>
        stopUnder(place.site, own, post, place.shop?.stop.width ?? post.extent.depth),
      );
      const secant = Math.hypot(1, run.slope);
      const [first, last] = [stops[0], stops.at(-1)];
      return {
        id: member.id,
        mark: member.mark ?? member.id,
        slope: (Math.atan(run.slope) * 180) / Math.PI,
        stops,
        past: first && last ? [(first.x - from) * secant, (to - last.x) * secant] : [0, 0],
      };
    });
}
