/**
 * What the shop file says to whoever cuts: tape, seams, finish. Lines of the cut list's head.
 *
 * @packageDocumentation
 */
import { formatLength } from "../kernel/length.js";
import type { Shop } from "../layout/document/shop.js";
import { tapeError } from "../layout/tape.js";
import { type FigureStyle, figure } from "./figure.js";
import { wrap } from "./wrap.js";

/**
 * The lines.
 *
 * @param shop - from `parseShop`
 * @param longest - longest blank of the list, mm; 0 when there is none
 * @param style - unit and fraction of the paper
 */
export function shopText(shop: Shop, longest: number, style: FigureStyle): string[] {
  return [
    ...(shop.name === "" ? [] : wrap("Shop     ", shop.name.replace(/\p{Cc}+/gu, " "))),
    ...(longest > 0 ? wrap("Tape     ", tapeText(shop, longest, style)) : []),
    ...seamLines(shop),
    ...finishLines(shop),
  ];
}

function tapeText({ tape }: Shop, longest: number, style: FigureStyle): string {
  const off = tapeError(longest, tape).toFixed(1);
  return `class ${tape}: may itself be off by ${off} mm either way at the longest blank, ${figure(longest, style)} (2014/32/EU, MI-008)`;
}

function seamLines({ seam: { rails, posts } }: Shop): string[] {
  const turned = [
    ...(rails === "any" ? [] : [`${rails.toUpperCase()} on what lies`]),
    ...(posts === "any" ? [] : [`${posts.toUpperCase()} on what stands`]),
  ];
  return turned.length === 0
    ? []
    : wrap("Seams    ", `the weld seam of a tube is turned ${turned.join(", ")}`);
}

function finishLines({ finish: { kind, thickness } }: Shop): string[] {
  if (thickness === 0) return [];
  const say = (mm: number): string =>
    `${formatLength(mm, { unit: "mm", decimals: 2 })} (${formatLength(mm, { unit: "in", decimals: 4 })})`;
  return wrap(
    "Finish   ",
    `${kind}, ${say(thickness)} on each surface: a hole loses ${say(2 * thickness)} of its diameter to it, and` +
      " as much again to the finish of what goes through. NOT in any figure below.",
  );
}
