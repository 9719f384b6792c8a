/**
 * Is each reading one that can be taken? A number, above zero, between two places that have what it measures.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { fromOf, type Place, type Reading } from "./reading.js";

const FLOOR_KINDS: readonly Place["kind"][] = ["rise", "height"];
const LANDING_KINDS: readonly Place["kind"][] = ["side", "diagonal", "corner", "offset"];

/** What is wrong with the places, in words, or nothing. */
function wrongPlaces(own: Place): { got: string; expected: string } | undefined {
  const [from, to] = [fromOf(own), own.to];
  const got = `from ${from} to ${to}`;
  if (LANDING_KINDS.includes(own.kind)) {
    const names = "at" in own ? [own.at, from, to] : [from, to];
    const sound = names.every((name) => typeof name === "string" && name !== "");
    if (sound && new Set(names).size === names.length) return undefined;
    return { got, expected: "corners with names, all different" };
  }
  const floor = FLOOR_KINDS.includes(own.kind) ? 0 : 1;
  const whole = (n: number | string) => typeof n === "number" && Number.isInteger(n) && n >= floor;
  if (whole(from) && whole(to) && from < to) return undefined;
  return {
    got,
    expected:
      floor === 0
        ? "from a lower to a higher nosing, 0 for the floor"
        : "from a lower to a higher nosing; the floor has no nosing to measure from",
  };
}

function wrongNumbers(own: Reading): { got: string; expected: string; code: string } | undefined {
  const least = own.kind === "level" ? own.value >= 0 : own.value > 0;
  const most = own.kind === "level" ? 90 : own.kind === "corner" ? 180 : Number.POSITIVE_INFINITY;
  if (!(least && own.value < most)) {
    const expected =
      own.kind === "level"
        ? "0 or more and less than 90 degrees, up from the lower nosing"
        : own.kind === "corner"
          ? "more than 0 and less than 180 degrees"
          : "more than 0 mm";
    return { code: "survey-bad-value", got: `${own.value}`, expected };
  }
  if (own.sigma !== undefined && !(own.sigma > 0 && own.sigma < Number.POSITIVE_INFINITY)) {
    return { code: "survey-bad-sigma", got: `${own.sigma}`, expected: "a standard uncertainty above 0" };
  }
  return undefined;
}

const HINTS: Readonly<Record<string, string>> = {
  "survey-bad-value":
    "Look at the paper again: a riser is taped up, a going uphill, both as positive numbers.",
  "survey-bad-sigma": "Give what two readings of the same thing usually differ by, or leave it out.",
};

/** What is wrong with the readings one by one; empty when they can be adjusted. */
export function checkReadings(readings: readonly Reading[]): Diagnostic[] {
  if (readings.length === 0) {
    return [
      diagnostic({
        code: "survey-empty",
        message: "Survey: expected at least one reading, got none.",
        hint: "Tape the total rise, each riser, each going, and the slope from the lowest to the top nosing.",
      }),
    ];
  }
  const seen = new Set<string>();
  const out: Diagnostic[] = [];
  readings.forEach((own, i) => {
    const at = { path: `readings[${i}]`, members: [own.id] };
    if (own.id === "" || seen.has(own.id)) {
      out.push(
        diagnostic({
          ...at,
          code: "survey-same-id",
          message: `Survey: expected a name of its own for each reading, got "${own.id}"${own.id === "" ? "" : " twice"}.`,
          hint: "Number the readings as they stand on the paper.",
        }),
      );
    }
    seen.add(own.id);
    const places = wrongPlaces(own);
    if (places) {
      out.push(
        diagnostic({
          ...at,
          code: "survey-bad-place",
          message: `Reading ${own.id} (${own.kind}): expected ${places.expected}, got ${places.got}.`,
          hint: "Nosings are counted from 1, the lowest; the landing's edge is the last one.",
        }),
      );
    }
    const numbers = wrongNumbers(own);
    if (numbers) {
      out.push(
        diagnostic({
          ...at,
          code: numbers.code,
          message: `Reading ${own.id} (${own.kind}): expected ${numbers.expected}, got ${numbers.got}.`,
          hint: HINTS[numbers.code] as string,
          values: { value: own.value },
        }),
      );
    }
  });
  return out;
}
