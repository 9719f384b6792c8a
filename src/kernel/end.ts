/**
 * End expressions: the shape that closes a bar at one end.
 *
 * An end is a function of the place (u, v) in the section: how far the material goes outwards there. It is built from
 * contacts, `plane` and `hit` (the first point of a header's skin that a fibre meets going outwards), by `min` (the
 * nearest contact stops the fibre), `max` (the farthest one does) and `select` (each of two mitred headers counts only on
 * its own side of the miter plane). What lies beyond the first contact falls off, as at a saw, a torch or a notcher.
 *
 * @packageDocumentation
 */
import type { Skin } from "./skin.js";
import type { Vec3 } from "./vec.js";

/** Which decision made a contact: kept as provenance on every face it makes. */
export interface ContactSource {
  /** Id of the joint or the name of the rule that decided. */
  readonly joint: string;
  /** Id of the member or named thing cut against; empty for a free cut. */
  readonly onto: string;
}

/** Everything outwards of a plane falls off. */
export interface PlaneContact {
  readonly kind: "plane";
  readonly point: Vec3;
  /** Normal of the cut, any length above zero, either sense; not square to the bar's axis. */
  readonly normal: Vec3;
  readonly source: ContactSource;
}

/** Everything beyond the first hit on a header's skin falls off. */
export interface HitContact {
  readonly kind: "hit";
  readonly skin: Skin;
  readonly source: ContactSource;
}

/** The nearest of several contacts. */
export interface MinEnd {
  readonly kind: "min";
  readonly of: readonly EndExpression[];
}

/** The farthest of several contacts. */
export interface MaxEnd {
  readonly kind: "max";
  readonly of: readonly EndExpression[];
}

/**
 * Two mitred headers. A hit on the first counts only behind the miter plane, one on the second only before it; where both
 * count the nearer stops the fibre, where neither does nothing closes it.
 */
export interface SelectEnd {
  readonly kind: "select";
  /** The plane the two are mitred in; its normal, any length above zero, points from the first header to the second. */
  readonly plane: { readonly point: Vec3; readonly normal: Vec3 };
  readonly of: readonly [EndExpression, EndExpression];
}

/** An end of a bar, in the bar's own frame (axis along +z; end 0 looks to −z, end 1 to +z). */
export type EndExpression = PlaneContact | HitContact | MinEnd | MaxEnd | SelectEnd;
