/**
 * Exact solids as an ISO 10303-21 file (STEP): true planes and cylinders, one named part for each shape, one named
 * occurrence for each piece.
 *
 * @packageDocumentation
 */
import { RakewrightError, type Result } from "../../kernel/diagnostic.js";
import { type Frame, WORLD } from "../../kernel/frame.js";
import type { Solid } from "../../kernel/solid.js";
import { writeBrep } from "./brep.js";
import { checkSolid } from "./check-solid.js";
import { type Colour, Looks } from "./looks.js";
import { refs, text } from "./part21.js";
import {
  type Part,
  type Product,
  reserveProduct,
  writeCategory,
  writeMaterial,
  writeOccurrence,
  writePart,
  writeProduct,
} from "./product.js";
import { SameParts } from "./same-parts.js";
import {
  type Contexts,
  FOOTER,
  headerText,
  type StepBasis,
  type StepSchema,
  type StepUnit,
  UNIT_MM,
  writeContexts,
} from "./schema.js";
import { Sink } from "./sink.js";

/** One piece to write. */
export interface NamedSolid {
  /** Any text, usually the piece's mark: the name of the occurrence, and of the part unless `part` says another. */
  readonly name: string;
  /** In its own frame, millimetres. Pieces whose solids agree to 1e-6 mm, and whose part, material and colour are the same, share one part. */
  readonly solid: Solid;
  /** Where the piece stands in the assembly. Default: as it is. */
  readonly frame?: Frame;
  /** Name of the part, e.g. the mark of the first of several like pieces. Default: the name of the first piece that has its shape. */
  readonly part?: string;
  /** Any text: written as the part's material. */
  readonly material?: string;
  /** sRGB red, green, blue, each 0 to 1. */
  readonly colour?: Colour;
}

/** What may be chosen. */
export interface StepOptions {
  /** Name of the assembly. Default `guard`. */
  readonly name?: string;
  /** Application protocol. Default `AP214`: read by the most programs. */
  readonly schema?: StepSchema;
  /** Unit of length of the file. Default `mm`. */
  readonly unit?: StepUnit;
  /** What the sizes rest on; the header says it. Default `designed`. */
  readonly basis?: StepBasis;
  /** File name for the header. Default `model.step`. */
  readonly fileName?: string;
  /** Date and time by ISO 8601 for the header. Default empty, so that the same input makes the same bytes. */
  readonly timestamp?: string;
  /** Program that made the file, for the header. Default `Rakewright`. */
  readonly generator?: string;
}

/**
 * All pieces as one STEP text.
 *
 * Edges that are lines, circles and ellipses are exact; saddles are quintic splines within 1e-6 mm of the exact curve, and
 * every edge has its curve in the parameters of both faces. One piece without a frame becomes a part by itself, several an
 * assembly.
 *
 * @returns the text, or `nothing-to-write`, `colour-out-of-range`, `not-finite`, faults of topology, `step-edge-not-fitted`, `step-too-long`
 * @example
 * ```ts
 * const solid = solidOf(piece);
 * if (solid.ok) {
 *   const file = toStep([{ name: piece.mark, solid: solid.value, frame: piece.frame }]);
 *   if (file.ok) save("guard.step", file.value);
 * }
 * ```
 */
export function toStep(items: readonly NamedSolid[], options: StepOptions = {}): Result<string> {
  try {
    return { ok: true, value: joined(stepChunks(items, options)), diagnostics: [] };
  } catch (error) {
    if (error instanceof RakewrightError) return { ok: false, diagnostics: [error.diagnostic] };
    throw error;
  }
}

/** Characters that any engine in use can hold in one text, some 900 drilled posts. */
const MOST_CHARACTERS = 5e8;

/**
 * One text of chunks.
 *
 * @throws RakewrightError `step-too-long`
 */
export function joined(chunks: Iterable<string>, most: number = MOST_CHARACTERS): string {
  const all: string[] = [];
  let length = 0;
  for (const chunk of chunks) {
    length += chunk.length;
    if (length > most)
      throw new RakewrightError({
        code: "step-too-long",
        message: `The STEP text: expected at most ${most} characters, got more.`,
        hint: "Write it in chunks with stepChunks, or fewer pieces to a file.",
        values: { most },
      });
    all.push(chunk);
  }
  return all.join("");
}

/** Characters that are handed on at once. */
const CHUNK = 1 << 16;

/**
 * The same text in chunks of some 64 kB, for files larger than memory: pieces are asked for one by one and forgotten.
 *
 * @param items - pieces; may be a generator that makes each solid when it is asked for
 * @throws RakewrightError with the codes of `toStep` when a piece cannot be written: drop what was written before
 * @example
 * ```ts
 * for (const chunk of stepChunks(pieces(), { name: "stair 2" })) file.write(chunk);
 * ```
 */
export function* stepChunks(items: Iterable<NamedSolid>, options: StepOptions = {}): Generator<string, void> {
  const { schema = "AP214", unit = "mm", basis = "designed", generator = "Rakewright" } = options;
  yield headerText({
    schema,
    basis,
    generator,
    fileName: options.fileName ?? "model.step",
    timestamp: options.timestamp ?? "",
  });
  const sink = new Sink(1 / UNIT_MM[unit]);
  const file = new StepFile(sink, writeContexts(sink, schema, unit));
  let alone: NamedSolid | undefined;
  let count = 0;
  for (const item of items) {
    count++;
    if (count === 1 && item.frame === undefined) {
      alone = item;
      continue;
    }
    if (alone) file.place(alone, 1);
    alone = undefined;
    file.place(item, count);
    if (sink.size > CHUNK) yield sink.drain();
  }
  if (count === 0) throw new RakewrightError(NOTHING);
  if (alone) file.part(alone);
  file.finish(options.name ?? "guard");
  yield sink.drain();
  yield FOOTER;
}

const NOTHING = {
  code: "nothing-to-write",
  message: "The file would be empty: expected at least one piece, got none.",
  hint: "Pass the pieces that were solved; look at the diagnostics of those that were not.",
};

/** Runs; a refusal that names no piece gets the name of this one. */
function naming<T>(name: string, run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof RakewrightError) || error.diagnostic.members.length > 0) throw error;
    const { message } = error.diagnostic;
    throw new RakewrightError({ ...error.diagnostic, members: [name], message: `${name}: ${message}` });
  }
}

/** The assembly while it is written: its products come last, when everything that stands in it is known. */
class StepFile {
  private readonly parts = new SameParts<Part>();
  private readonly products: number[] = [];
  private readonly ids = new Set<string>();
  private readonly places: number[] = [];
  private readonly looks: Looks;
  private assembly: Product | undefined;

  constructor(
    private readonly sink: Sink,
    private readonly contexts: Contexts,
  ) {
    this.looks = new Looks(sink, contexts);
  }

  /** Puts a piece into the assembly. */
  place(item: NamedSolid, number: number): void {
    this.assembly ??= reserveProduct(this.sink);
    const part = this.part(item);
    const occurrence = { id: `${number}`, name: item.name, frame: item.frame ?? WORLD };
    const { assembly } = this;
    this.places.push(naming(item.name, () => writeOccurrence(this.sink, assembly, part, occurrence)));
  }

  /** The part of a piece, written when it is the first of its shape. */
  part(item: NamedSolid): Part {
    const { sink, contexts } = this;
    const { solid, part = item.name, material, colour } = item;
    const apart = JSON.stringify([item.part, material, colour].map((x) => x ?? null));
    return this.parts.find(solid, apart, () => {
      const bad = checkSolid(item)[0];
      if (bad) throw new RakewrightError(bad);
      const brep = naming(item.name, () => writeBrep(sink, solid, part));
      const product = writePart(sink, contexts, { id: this.unique(part), name: part }, brep);
      this.products.push(product.product);
      if (material !== undefined) writeMaterial(sink, contexts, product, material);
      if (colour) this.looks.paint(brep, colour);
      return product;
    });
  }

  /** What stands at the end: the assembly, categories and colours. */
  finish(name: string): void {
    if (this.assembly) this.writeAssembly(this.assembly, name);
    writeCategory(this.sink, this.products);
    this.looks.finish();
  }

  private writeAssembly(assembly: Product, name: string): void {
    const { sink, contexts } = this;
    const items = refs([sink.placement(WORLD), ...this.places]);
    sink.fill(assembly.shape, `SHAPE_REPRESENTATION(${text(name)},${items},#${contexts.geometry})`);
    writeProduct(sink, contexts, assembly, { id: this.unique(name), name });
    this.products.push(assembly.product);
  }

  /** A product's id: its name, and a number where the name is taken. */
  private unique(name: string): string {
    let id = name;
    for (let n = 2; this.ids.has(id); n++) id = `${name}-${n}`;
    this.ids.add(id);
    return id;
  }
}
