/**
 * Channel, with parallel or tapered flanges, rolled with root fillets and, where the flanges taper, rounded toes.
 *
 * The member's axis runs through the middle of the box `width` x `depth`, as in every bar here and in ISO 16739 (IFC,
 * IfcUShapeProfileDef): the back of the web stands at −width/2, the flanges reach towards +u, the outer faces, which a shop lays
 * out to, stand at ±depth/2. `sectionProperties` gives the centroid.
 *
 * @packageDocumentation
 */
import type { Section } from "../section.js";
import { badSection, defaultRadius, requireRadiusUpTo, requireSizes, shortSize, sizesOf } from "./checks.js";
import { cornerAt, filletedLoop } from "./filleted-loop.js";
import type { SectionNaming } from "./round.js";

/** Sizes of a channel, millimetres and degrees. */
export interface ChannelBarInput extends SectionNaming {
  /** Flanges along u, over the web's back. */
  readonly width: number;
  /** Web along v, over both flanges. */
  readonly depth: number;
  /** Thickness of the web; below the width. */
  readonly web: number;
  /** Thickness of each flange; below half the depth. */
  readonly flange: number;
  /** Slope of the flanges' insides, degrees, 0 to below 45; default 0. DIN 1026-1: atan(0.08) = 4.574; ASTM A6: atan(1/6) = 9.462. */
  readonly taper?: number;
  /** Where a tapered flange has the thickness `flange`, from its toe; default half the width (DIN 1026-1 up to 300 mm deep). */
  readonly flangeAt?: number;
  /** Fillets between web and flanges: 0, or from 0.001 mm; default the flange. */
  readonly rootRadius?: number;
  /** Rounding of the toes, inside: 0, or from 0.001 mm to the toe; default 0 on parallel flanges, half the root radius on tapered ones. */
  readonly toeRadius?: number;
}

/**
 * A channel; `-u` is the back of the web, `top` and `bottom` the flanges' outsides, `inner -u`, `inner top` and `inner bottom` the
 * insides of the same, `+u` the toes; `corner` and `inner corner` are the toes' roundings and the root fillets.
 *
 * @throws RakewrightError `bad-section` for sizes that are no channel, a radius above 0 and below 0.001 mm, or radii that do not
 *   fit on a flange or between the flanges
 * @example
 * channelBar({ width: 50, depth: 100, web: 5, flange: 8.5, rootRadius: 9 }).name; // channel 50 x 100 x 5 x 8.5
 */
export function channelBar(input: ChannelBarInput): Section {
  const { width, depth, web, flange, taper = 0, flangeAt = width / 2 } = input;
  requireSizes("Channel", { width, depth, web, flange, flangeAt });
  if (!(taper >= 0 && taper < 45)) {
    badSection(`Channel: expected a taper from 0 to below 45 deg, got ${taper}.`, "ASTM A6 has 9.46.", {
      taper,
    });
  }
  requireBelow("web", web, width, "the width");
  requireBelow("flangeAt", flangeAt, width, "the width");
  const slope = taper === 0 ? 0 : Math.tan((taper * Math.PI) / 180);
  const toe = flange - slope * flangeAt;
  const heel = flange + slope * (width - web - flangeAt);
  requireBelow("taper times flangeAt", slope * flangeAt, flange, "the flange");
  requireBelow("flange at the web", heel, depth / 2, "half the depth");
  // A rounding takes r·tan(τ/2) of each side, and its corner turns by a quarter less the taper.
  const back = Math.tan((Math.PI / 2 - Math.atan(slope)) / 2);
  const room = Math.min((width - web) * Math.hypot(1, slope), depth / 2 - heel);
  const rootRadius = input.rootRadius ?? defaultRadius(Math.min(flange, room / 2));
  const toeRadius =
    input.toeRadius ?? (slope === 0 ? 0 : defaultRadius(Math.min(rootRadius / 2, toe / back)));
  requireRadiusUpTo("Channel", { toeRadius }, toe / back, "the toe");
  const along = ((width - web) * Math.hypot(1, slope)) / back - toeRadius;
  requireRadiusUpTo(
    "Channel",
    { rootRadius },
    Math.min(along, (depth / 2 - heel) / back),
    "what the toe leaves of the flange, or half the depth between the flanges",
  );
  const [a, b] = [width / 2, depth / 2];
  const drawn = slope === 0 ? {} : { taper, flangeAt };
  return {
    name:
      input.name ??
      `channel ${sizesOf(width, depth, web, flange)}${slope === 0 ? "" : ` taper ${shortSize(taper)} deg`}`,
    shape: { kind: "channel", width, depth, web, flange, ...drawn, rootRadius, toeRadius },
    region: {
      outer: filletedLoop([
        cornerAt(-a, -b, 0, "corner", "bottom"),
        cornerAt(a, -b, 0, "corner", "+u"),
        cornerAt(a, toe - b, toeRadius, "corner", "inner bottom"),
        cornerAt(web - a, heel - b, rootRadius, "inner corner", "inner -u"),
        cornerAt(web - a, b - heel, rootRadius, "inner corner", "inner top"),
        cornerAt(a, b - toe, toeRadius, "corner", "+u"),
        cornerAt(a, b, 0, "corner", "top"),
        cornerAt(-a, b, 0, "corner", "-u"),
      ]),
      holes: [],
    },
    source: input.source ?? "as given",
  };
}

function requireBelow(name: string, size: number, limit: number, what: string): void {
  if (size < limit) return;
  badSection(
    `Channel: expected ${name} below ${shortSize(limit)} mm, ${what}, got ${shortSize(size)}.`,
    "Check the sizes against each other.",
    { size, limit },
  );
}
