/**
 * What a survey is measured from: coordinates that are known and not adjusted.
 *
 * Usual datum: the lower floor is at height 0 (without a reading to it, the lowest nosing is), the lowest nosing at 0 along;
 * on a landing the corner named first is the origin and the second one lies on its x axis.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { type Coordinate, type CoordinateName, coordinatesOf, nameOf, type Place } from "./reading.js";

/** A coordinate that is known. */
export interface FixedCoordinate extends Coordinate {
  /** mm. */
  readonly value: number;
}

/** In plain words: `height of nosing 3`. */
export function sayCoordinate(of: Coordinate): string {
  const point =
    of.point === 0 ? "the floor" : typeof of.point === "number" ? `nosing ${of.point}` : `corner ${of.point}`;
  if (typeof of.point === "string") return `${of.axis} of ${point}`;
  return `${of.axis === "z" ? "height" : "place along"} of ${point}`;
}

/** Every coordinate the places speak of, each once: nosings by number, then corners as they are named. */
export function coordinatesIn(places: readonly Place[]): Coordinate[] {
  const found = new Map<CoordinateName, Coordinate>();
  for (const own of places.flatMap(coordinatesOf)) if (!found.has(nameOf(own))) found.set(nameOf(own), own);
  const all = [...found.values()];
  const nosings = all.filter((own) => typeof own.point === "number");
  const byNumber = (a: Coordinate, b: Coordinate) =>
    Number(a.point) - Number(b.point) || (a.axis < b.axis ? -1 : 1);
  return [...nosings.sort(byNumber), ...all.filter((own) => typeof own.point === "string")];
}

/**
 * The datum that is taken when none is given.
 *
 * @param places - what is read
 * @returns the coordinates that are 0
 * @example usualDatum([{ kind: "rise", from: 0, to: 1 }]); // [{ axis: "z", point: 0, value: 0 }]
 */
export function usualDatum(places: readonly Place[]): FixedCoordinate[] {
  const all = coordinatesIn(places);
  const [z, x] = [
    all.find((own) => own.axis === "z"),
    all.find((own) => typeof own.point === "number" && own.axis === "x"),
  ];
  const corners = [...new Set(all.map((own) => own.point).filter((own) => typeof own === "string"))];
  const [first, second] = corners;
  const fixed = [z, x].filter((own) => own !== undefined);
  if (first !== undefined) fixed.push({ axis: "x", point: first }, { axis: "y", point: first });
  if (second !== undefined) fixed.push({ axis: "y", point: second });
  return fixed.map((own) => ({ ...own, value: 0 }));
}

/** What is wrong with a datum: values that are none, or two for one coordinate. */
export function checkFixed(fixed: readonly FixedCoordinate[]): Diagnostic[] {
  const seen = new Map<CoordinateName, number>();
  const out: Diagnostic[] = [];
  fixed.forEach((own, i) => {
    const path = `fixed[${i}]`;
    const before = seen.get(nameOf(own));
    if (!Number.isFinite(own.value)) {
      out.push(
        diagnostic({
          code: "survey-bad-datum",
          path,
          message: `Survey: expected the ${sayCoordinate(own)} in millimetres, got ${own.value}.`,
          hint: "Give a number, 0 at the datum itself.",
        }),
      );
    } else if (before !== undefined && before !== own.value) {
      out.push(
        diagnostic({
          code: "survey-two-datums",
          path,
          message: `Survey: the ${sayCoordinate(own)} is said to be ${before} mm and ${own.value} mm.`,
          hint: "Say it once; give what is only measured as a reading with its uncertainty.",
          values: { first: before, second: own.value },
        }),
      );
    }
    seen.set(nameOf(own), own.value);
  });
  return out;
}

/** Coordinates that no chain of readings ties to a known one. */
export function withoutDatum(places: readonly Place[], fixed: readonly FixedCoordinate[]): Coordinate[] {
  const reached = new Set(fixed.map(nameOf));
  const groups = places.map(coordinatesOf);
  for (let grown = true; grown; ) {
    grown = false;
    for (const group of groups) {
      const names = group.map(nameOf);
      if (!names.some((own) => reached.has(own)) || names.every((own) => reached.has(own))) continue;
      for (const own of names) reached.add(own);
      grown = true;
    }
  }
  return coordinatesIn(places).filter((own) => !reached.has(nameOf(own)));
}
