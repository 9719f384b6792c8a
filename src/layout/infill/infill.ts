/**
 * Fills the openings between the rails with what the design asks for.
 *
 * @packageDocumentation
 */

import type { RailDesign } from "../document/design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import type { Bay } from "../rails/bay.js";
import type { RailPath } from "../rails/rail-path.js";
import { underTopRail } from "./boundary.js";
import { infillBars } from "./infill-bars.js";
import { withoutRail } from "./infill-findings.js";
import { infillLines, isLines } from "./infill-lines.js";
import { infillPanels } from "./infill-panels.js";
import { allOf, type InfillPart, onlyFindings } from "./infill-part.js";
import { type Opening, openings } from "./opening.js";

function filled(place: Place, opening: Opening): InfillPart {
  const { design, rows } = opening;
  if (rows.length === 0) return onlyFindings([withoutRail(opening)]);
  return allOf(
    rows.map((row): InfillPart => {
      if (design.type === "bars") return infillBars(place, opening, row, design);
      if (design.type === "panel") return infillPanels(place, opening, row, design);
      // Bars along the rails run on from bay to bay: all openings have them at once.
      return onlyFindings([]);
    }),
  );
}

/** The infill of one guard: `posts` and `bays` are those that were built. */
export function infill(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
  bays: readonly Bay[],
): InfillPart {
  const open = openings(place, posts, bays, underTopRail(place, rail, path));
  return allOf([
    ...open.map((opening) => filled(place, opening)),
    infillLines(place, path, open.filter(isLines)),
  ]);
}
