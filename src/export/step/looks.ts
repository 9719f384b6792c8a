/**
 * Colours of solids: one style for each colour, sRGB as given, and one list of all that is styled.
 *
 * @packageDocumentation
 */
import { real, refs } from "./part21.js";
import type { Contexts } from "./schema.js";
import type { Sink } from "./sink.js";

/** Red, green and blue, each 0 to 1, sRGB. */
export type Colour = readonly [number, number, number];

/** Writes styles as they are asked for. */
export class Looks {
  private readonly styles = new Map<string, number>();
  private readonly styled: number[] = [];

  constructor(
    private readonly sink: Sink,
    private readonly contexts: Contexts,
  ) {}

  /** Gives a solid a colour. */
  paint(solid: number, colour: Colour): void {
    this.styled.push(this.sink.put(`STYLED_ITEM('',(#${this.styleOf(colour)}),#${solid})`));
  }

  /** Writes the list; nothing where nothing has a colour. */
  finish(): void {
    if (this.styled.length === 0) return;
    this.sink.put(
      `MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',${refs(this.styled)},#${this.contexts.geometry})`,
    );
  }

  private styleOf(colour: Colour): number {
    const key = colour.map(real).join(",");
    const known = this.styles.get(key);
    if (known !== undefined) return known;
    const { sink } = this;
    const rgb = sink.put(`COLOUR_RGB('',${key})`);
    const fill = sink.put(`FILL_AREA_STYLE_COLOUR('',#${rgb})`);
    const area = sink.put(`FILL_AREA_STYLE('',(#${fill}))`);
    const surface = sink.put(`SURFACE_STYLE_FILL_AREA(#${area})`);
    const side = sink.put(`SURFACE_SIDE_STYLE('',(#${surface}))`);
    const usage = sink.put(`SURFACE_STYLE_USAGE(.BOTH.,#${side})`);
    const style = sink.put(`PRESENTATION_STYLE_ASSIGNMENT((#${usage}))`);
    this.styles.set(key, style);
    return style;
  }
}
