/**
 * A design document as one shop builds it: what the design leaves to the shop is filled in from the shop file.
 *
 * That is the root gap alone. A gap that the design states stays.
 *
 * @packageDocumentation
 */
import type { Shop } from "./shop.js";

/** Digits after the point of a millimetre: far below what any machine works to, and never written with an exponent. */
const DECIMALS = 6;

/**
 * The document with the shop's fit gap where it has no `gap` of its own.
 *
 * @param document - parsed JSON of any shape; what is no object comes back as it is
 * @param shop - its `fitGap`, mm; 0 changes nothing
 * @returns a new document, or the same one where nothing is to be filled in
 * @example
 * designInShop({ job: "Kiln room" }, { fitGap: 1.5875 }); // { job: "Kiln room", gap: "1.5875 mm" }
 */
export function designInShop(document: unknown, { fitGap }: Pick<Shop, "fitGap">): unknown {
  if (fitGap === 0 || typeof document !== "object" || document === null || Array.isArray(document))
    return document;
  if (Object.hasOwn(document, "gap")) return document;
  return { ...document, gap: `${Number(fitGap.toFixed(DECIMALS))} mm` };
}
