/**
 * Reads a shop file: JSON of every shape in, a `Shop` in millimetres or the reasons why not.
 *
 * Never throws, whatever the JSON. First the shape (zod), then the words (lengths, sections) and their ranges; every
 * finding carries the path of its field.
 *
 * @packageDocumentation
 */
import { hasErrors, type Result } from "../../kernel/diagnostic.js";
import { parseSection } from "../../members/sections/parse-section.js";
import type { LengthInput } from "./design-input.js";
import { type LengthRange, type Reader, readerOf } from "./reader.js";
import { checkAgainst } from "./schema/check-shape.js";
import { type DocumentPath, pathText } from "./schema/path-text.js";
import { shopSchema } from "./schema/shop-schema.js";
import { type Access, DEFAULT_SHOP, FINISH_MM, type Remnant, type Shop, type ShopInput } from "./shop.js";

/** What messages call the document, and the keys that a misspelt one is compared with. */
const DOCUMENT = {
  name: "The shop file",
  keys: [
    ...[
      "$schema",
      "version",
      "name",
      "unit",
      "kerf",
      "fitGap",
      "saw",
      "drillStep",
      "stockLengths",
      "remnants",
    ],
    ...["tape", "paper", "finish", "slipFit", "seam", "access", "drillChuck", "miter", "bevel", "section"],
    ...["length", "kind", "thickness", "rails", "posts", "door", "corridor", "stair", "longest", "width"],
    ...["height", "from", "to", "diameter", "clearance", "stop", "mostSag"],
  ],
};

/** Reads a length where there is one. */
type Length = (input: LengthInput, path: DocumentPath, range: LengthRange) => number;

function remnantsOf(document: ShopInput, unit: "in" | "mm", read: Reader): readonly Remnant[] {
  return (document.remnants ?? []).flatMap(({ section: words, length }, i) => {
    const mm = read.length(length, ["remnants", i, "length"], "positive");
    const section = parseSection(words, unit, pathText(["remnants", i, "section"]));
    read.diagnostics.push(...section.diagnostics);
    return section.ok ? [{ section: section.value, length: mm }] : [];
  });
}

function accessOf({ access = {} }: ShopInput, length: Length): Access {
  const turn = (key: "corridor" | "stair") => {
    const at = access[key];
    if (!at) return {};
    const { from, to, height } = at;
    const path = ["access", key];
    return {
      [key]: {
        from: length(from, [...path, "from"], "positive"),
        to: length(to, [...path, "to"], "positive"),
        ...(height !== undefined && { height: length(height, [...path, "height"], "positive") }),
      },
    };
  };
  const { door, longest } = access;
  return {
    ...(door && {
      door: {
        width: length(door.width, ["access", "door", "width"], "positive"),
        height: length(door.height, ["access", "door", "height"], "positive"),
      },
    }),
    ...turn("corridor"),
    ...turn("stair"),
    ...(longest !== undefined && { longest: length(longest, ["access", "longest"], "positive") }),
  };
}

function resolve(document: ShopInput): Result<Shop> {
  const D = DEFAULT_SHOP;
  const unit = document.unit ?? D.unit;
  const read = readerOf(document, unit, {});
  const or = (input: LengthInput | undefined, path: DocumentPath, range: LengthRange, fallback: number) =>
    input === undefined ? fallback : read.length(input, path, range);
  const kind = document.finish?.kind ?? D.finish.kind;
  const { diameter, clearance } = document.drillChuck ?? {};
  const stopWidth = document.stop?.width;
  const stock = document.stockLengths?.map((own, i) => read.length(own, ["stockLengths", i], "positive"));
  const thickness = or(document.finish?.thickness, ["finish", "thickness"], "not-negative", FINISH_MM[kind]);
  if (kind === "bare" && thickness > 0) {
    const hint = "Name the finish, or leave the thickness out.";
    const values = { thickness };
    read.report(
      "bad-value",
      ["finish", "thickness"],
      `expected 0 on bare steel, got ${thickness} mm.`,
      hint,
      values,
    );
  }
  const value: Shop = {
    version: 1,
    name: document.name ?? D.name,
    unit,
    kerf: or(document.kerf, ["kerf"], "not-negative", D.kerf),
    fitGap: or(document.fitGap, ["fitGap"], "not-negative", D.fitGap),
    saw: { miter: document.saw?.miter ?? D.saw.miter, bevel: document.saw?.bevel ?? D.saw.bevel },
    drillStep: or(document.drillStep, ["drillStep"], "positive", D.drillStep),
    stockLengths: [...new Set(stock ?? D.stockLengths)].sort((a, b) => a - b),
    remnants: remnantsOf(document, unit, read),
    tape: document.tape ?? D.tape,
    paper: document.paper ?? D.paper,
    finish: { kind, thickness },
    slipFit: or(document.slipFit, ["slipFit"], "not-negative", D.slipFit),
    seam: { rails: document.seam?.rails ?? D.seam.rails, posts: document.seam?.posts ?? D.seam.posts },
    access: accessOf(document, read.length),
    stop: stopWidth === undefined ? {} : { width: read.length(stopWidth, ["stop", "width"], "positive") },
    mostSag: or(document.mostSag, ["mostSag"], "not-negative", D.mostSag),
    drillChuck: {
      diameter: or(diameter, ["drillChuck", "diameter"], "positive", D.drillChuck.diameter),
      clearance: or(clearance, ["drillChuck", "clearance"], "not-negative", D.drillChuck.clearance),
    },
  };
  const { diagnostics } = read;
  return hasErrors(diagnostics) ? { ok: false, diagnostics } : { ok: true, value, diagnostics };
}

/**
 * Reads a shop file.
 *
 * @param json - parsed JSON of any shape
 * @returns the shop with every default filled in, or diagnostics: `wrong-type`, `unknown-key`, `bad-value`, `out-of-range`,
 *   `missing`, `bad-length`, `bad-section`, `unknown-section`
 * @example
 * ```ts
 * const read = parseShop({ unit: "in", kerf: "1/8", stockLengths: ["20 ft"] });
 * if (read.ok) read.value.stockLengths; // [6096]
 * ```
 */
export function parseShop(json: unknown): Result<Shop> {
  const checked = checkAgainst(shopSchema, json, DOCUMENT);
  return checked.ok ? resolve(checked.value) : checked;
}
