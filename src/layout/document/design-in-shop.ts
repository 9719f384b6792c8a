/**
 * A design document as one shop builds it: what the design leaves to the shop is filled in from the shop file.
 *
 * That is the root gap, and the class of the tape a survey was taken with. What the design states stays.
 *
 * @packageDocumentation
 */
import type { Shop } from "./shop.js";

/** Digits after the point of a millimetre: far below what any machine works to, and never written with an exponent. */
const DECIMALS = 6;

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The field's object with one more field where it has not got it; whatever else it is comes back as it is. */
function filled(of: Fields, key: string, change: (own: Fields) => Fields): Fields {
  const own = of[key];
  return isObject(own) ? { ...of, [key]: change(own) } : of;
}

/** A holder of steps with the tape's class in its survey. */
function withTape(holder: Fields, tape: Shop["tape"]): Fields {
  return filled(holder, "stair", (stair) => filled(stair, "survey", (survey) => ({ tape, ...survey })));
}

/**
 * The document with the shop's fit gap where it has no `gap` of its own, and its tape where a survey has none.
 *
 * @param document - parsed JSON of any shape; what is no object comes back as it is
 * @param shop - its `fitGap`, mm (0 changes nothing), and its `tape` (absent changes nothing)
 * @returns a new document, or the same one where nothing is to be filled in
 * @example
 * designInShop({ job: "Kiln room" }, { fitGap: 1.5875 }); // { job: "Kiln room", gap: "1.5875 mm" }
 */
export function designInShop(
  document: unknown,
  { fitGap, tape }: Pick<Shop, "fitGap"> & Partial<Pick<Shop, "tape">>,
): unknown {
  if (!isObject(document)) return document;
  const gapped =
    fitGap === 0 || Object.hasOwn(document, "gap")
      ? document
      : { ...document, gap: `${Number(fitGap.toFixed(DECIMALS))} mm` };
  if (tape === undefined) return gapped;
  const { legs } = gapped as { readonly legs?: unknown };
  const taped = withTape(gapped, tape);
  if (!Array.isArray(legs)) return taped;
  return { ...taped, legs: legs.map((leg: unknown) => (isObject(leg) ? withTape(leg, tape) : leg)) };
}
