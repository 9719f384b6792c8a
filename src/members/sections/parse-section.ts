/**
 * What section does a line of trade language mean?
 *
 * `round 1.900 x 0.145`, `square 1-1/2 x 0.120`, `rect 2 x 1 x 0.083` (width x depth x wall), `flat 2 x 3/8`,
 * `round bar 5/8`, `square bar 1/2`, `angle 2 x 2 x 1/4` (width x depth x thickness), `channel 50 x 100 x 5 x 8.5` (width x depth x
 * web x flange), `48.3 x 3.2 mm`, and every name of the tables of standard sections. Each size is tape language; one unit after
 * the last size holds for all of them.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, RakewrightError, type Result } from "../../kernel/diagnostic.js";
import { type LengthUnit, parseLength } from "../../kernel/length.js";
import type { Section } from "../section.js";
import { angleBar } from "./angle.js";
import { channelBar } from "./channel.js";
import { rectBar, rectTube } from "./rect.js";
import { roundBar, roundTube } from "./round.js";
import { findStandardSection, STANDARD_NAMES } from "./standard.js";

/** A kind of section with the sizes it takes, in order. */
interface Kind {
  readonly words: readonly string[];
  readonly sizes: readonly string[];
  readonly build: (mm: readonly number[]) => Section;
}

const at = (mm: readonly number[], i: number): number => mm[i] ?? Number.NaN;

const KINDS: readonly Kind[] = [
  {
    words: ["round bar", "bar round", "rod", "solid round"],
    sizes: ["diameter"],
    build: (mm) => roundBar({ od: at(mm, 0) }),
  },
  {
    words: ["square bar", "bar square", "solid square"],
    sizes: ["side"],
    build: (mm) => rectBar({ width: at(mm, 0), depth: at(mm, 0) }),
  },
  {
    words: ["flat bar", "rect bar", "flat", "bar"],
    sizes: ["width", "depth"],
    build: (mm) => rectBar({ width: at(mm, 0), depth: at(mm, 1) }),
  },
  {
    words: ["round tube", "tube round", "round", "chs", "tube", "pipe", ""],
    sizes: ["outside diameter", "wall"],
    build: (mm) => roundTube({ od: at(mm, 0), wall: at(mm, 1) }),
  },
  {
    words: ["square tube", "tube square", "square", "shs"],
    sizes: ["side", "wall"],
    build: (mm) => rectTube({ width: at(mm, 0), depth: at(mm, 0), wall: at(mm, 1) }),
  },
  {
    words: ["rect tube", "rectangular tube", "rectangular", "rect", "rhs", "hss"],
    sizes: ["width", "depth", "wall"],
    build: (mm) => rectTube({ width: at(mm, 0), depth: at(mm, 1), wall: at(mm, 2) }),
  },
  {
    words: ["angle", "angle bar"],
    sizes: ["width", "depth", "thickness"],
    build: (mm) => angleBar({ width: at(mm, 0), depth: at(mm, 1), thickness: at(mm, 2) }),
  },
  {
    words: ["channel", "channel bar"],
    sizes: ["width", "depth", "web", "flange"],
    build: (mm) => channelBar({ width: at(mm, 0), depth: at(mm, 1), web: at(mm, 2), flange: at(mm, 3) }),
  },
];

const HINT =
  "Write the shape and its sizes, e.g. round 1.900 x 0.145, square 40 x 3 mm, flat 2 x 3/8, round bar 5/8.";
/** How names of the tables start, which no shape's words do. */
const STANDARD_NAME =
  /\b(?:nps|dn|sch|std|xs|en ?10\d{3}|upe|pfc|upn|inch (?:flat|square|round))\b|^[lc] ?\d/;
const UNIT_AT_END = /\d ?([a-z]+\.?|["'″′])$/;

/**
 * Reads a section. Never throws.
 *
 * Sizes without a shape (`48.3 x 3.2`) are read as a round tube, with a note saying so. Radii are the defaults of `rectTube`,
 * `angleBar` and `channelBar`; standard names have their standard's, and sections that need others come from the constructors.
 *
 * @param text - trade language, at most 120 characters
 * @param unit - the document's unit, which sizes without a unit are in
 * @param path - where in the input the text stands, for the diagnostics; default empty
 * @returns the section; otherwise `bad-section`, or `bad-length` for a size that is none
 * @example
 * parseSection("square 1-1/2 x 0.120", "in"); // value.name: square 38.1 x 3.05
 */
export function parseSection(text: string, unit: LengthUnit, path = ""): Result<Section> {
  const fail = (wrong: string, hint = HINT): Result<Section> => ({
    ok: false,
    diagnostics: [
      sectionDiagnostic(`expected a section, got "${text.slice(0, 120)}", ${wrong}.`, hint, path),
    ],
  });
  if (text.length > 120) return fail(`which is ${text.length} characters long`);
  const standard = findStandardSection(text);
  if (standard !== undefined) return { ok: true, value: standard, diagnostics: [] };
  const plain = text.trim().toLowerCase().replace(/\s+/g, " ");
  if (STANDARD_NAME.test(plain)) {
    return fail(
      "which is not in the tables of standard sections",
      `Names of the tables are like ${STANDARD_NAMES}. Other sizes go with a shape's word: angle 50 x 50 x 7.`,
    );
  }
  const [words, sizes] = split(plain);
  const kind = KINDS.find((k) => k.words.includes(words));
  if (kind === undefined) return fail(`whose shape "${words}" is unknown`);
  if (sizes.length !== kind.sizes.length)
    return fail(`with ${sizes.length} sizes where ${kind.sizes.join(" x ")} is needed`);
  const lengths = withUnits(sizes).map((size) => parseLength(size, unit, path));
  const bad = lengths.flatMap((length) => length.diagnostics);
  if (bad.length > 0) return { ok: false, diagnostics: bad };
  if (hasMixedUnits(sizes))
    return fail(
      "where some sizes have a unit and others none",
      "Put a unit after every size, or only after the last.",
    );
  return build(
    kind,
    lengths.map((length) => (length.ok ? length.value : Number.NaN)),
    words === "",
    path,
  );
}

/** The words in front, or behind, and the sizes between crosses. */
function split(plain: string): [string, string[]] {
  const tail = / (bar|tube|flat|round|square|rod|angle|channel)$/.exec(plain);
  const front = tail === null ? plain : plain.slice(0, tail.index);
  const head = /^[a-z ]*/.exec(front)?.[0] ?? "";
  const words = `${head.trim()} ${tail?.[1] ?? ""}`.trim();
  const rest = front.slice(head.length).trim();
  return [words, rest === "" ? [] : rest.split(/ ?(?:x|×|\*|\bby\b) ?/)];
}

/** A unit behind the last size alone holds for all. */
function withUnits(sizes: readonly string[]): readonly string[] {
  const last = UNIT_AT_END.exec(sizes.at(-1) ?? "")?.[1];
  if (last === undefined || sizes.slice(0, -1).some((size) => UNIT_AT_END.test(size))) return sizes;
  return sizes.map((size, i) => (i === sizes.length - 1 ? size : `${size} ${last}`));
}

function hasMixedUnits(sizes: readonly string[]): boolean {
  const marked = withUnits(sizes).filter((size) => UNIT_AT_END.test(size)).length;
  return marked > 0 && marked < sizes.length;
}

function build(kind: Kind, mm: readonly number[], wordless: boolean, path: string): Result<Section> {
  try {
    const value = kind.build(mm);
    const note = sectionDiagnostic(
      `read as a round tube: ${value.name} mm.`,
      "Put the shape in front of the sizes to be sure.",
      path,
    );
    return {
      ok: true,
      value,
      diagnostics: wordless ? [{ ...note, code: "section-assumed", severity: "note" }] : [],
    };
  } catch (error) {
    if (!(error instanceof RakewrightError)) throw error;
    return { ok: false, diagnostics: [{ ...error.diagnostic, path }] };
  }
}

function sectionDiagnostic(what: string, hint: string, path: string): Diagnostic {
  return diagnostic({
    code: "bad-section",
    path,
    message: `${path === "" ? "Section" : path}: ${what}`,
    hint,
  });
}
