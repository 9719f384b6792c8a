/**
 * The pieces as records for other programs: every length with its two points, cuts, mass and where each decision came from.
 *
 * One record per piece, in the pieces' order, keys in a fixed order: same pieces, same text. Millimetres, kilograms,
 * degrees; the piece's frame has its origin at the member's start and z along it, the layout frame is said in the header.
 *
 * @packageDocumentation
 */

import type { PieceMass } from "../joints/mass-of.js";
import type { EndCut, MeasuredLength, Piece, PieceLengths } from "../joints/piece.js";
import { endWord, sightOf } from "../joints/words.js";
import { CAUTION } from "../kernel/caution.js";
import { type Frame, pointToParent } from "../kernel/frame.js";
import type { Vec3 } from "../kernel/vec.js";
import type { PieceState } from "../layout/as-set/piece-state.js";
import type { LayoutReport } from "../layout/report-types.js";
import type { EndDecision } from "../layout/uncertainty/end-decision.js";
import { type PlateSizes, plateSizes } from "../members/plate-sizes.js";
import type { AssemblyReport } from "./assemblies.js";
import type { BuyingList } from "./buying-types.js";
import type { LyingRailRow } from "./clamp-stops-text.js";

/** What is told of a piece's solid. */
type Told = Pick<PieceMass, "volume" | "mass" | "centroid">;

/** A named point in the piece's frame and in the layout. */
export interface PointRecord {
  readonly name: string;
  readonly inPiece: Vec3;
  readonly inLayout: Vec3;
}

/** A length and its two points. */
export interface LengthRecord {
  readonly value: number;
  readonly from: PointRecord;
  readonly to: PointRecord;
}

/** One piece. */
export interface PieceRecord {
  readonly mark: string;
  readonly id: string;
  readonly kind: string;
  readonly role: string;
  readonly section: {
    readonly name: string;
    readonly source: string;
    readonly shape: Piece["section"]["shape"];
  };
  readonly material: string;
  readonly status: string;
  readonly lengths: Readonly<Record<string, LengthRecord>>;
  readonly ends: readonly (EndCut & {
    readonly name: string;
    /** Whether it is cut to length or left long; null when that was not asked for. */
    readonly cutOrScribe: EndDecision | null;
  })[];
  readonly holes: Piece["bores"];
  /** Of a plate or a bracket's leg: sizes over all, and round holes from the left and the bottom edge. */
  readonly plate: (PlateSizes & { readonly thickness: number }) | null;
  /** Cubic millimetres. */
  readonly volume: number | null;
  /** Kilograms. */
  readonly mass: number | null;
  readonly centroid: PointRecord | null;
  readonly frame: Frame;
  readonly shopPose: Piece["shopPose"];
  readonly hook: Piece["hook"];
  readonly dependsOn: readonly string[];
  readonly identity: string;
  readonly handOf: string | null;
  /** How far it has got: what of it is made, and whether it stands. */
  readonly state: Pick<PieceState, "start" | "end" | "holes" | "place">;
}

/** All pieces of a guard with what a reader must know to use the numbers. */
export interface PieceRecords {
  readonly generator: string;
  readonly job: string;
  readonly units: {
    readonly length: "mm";
    readonly mass: "kg";
    readonly angle: "degree";
    readonly volume: "mm3";
  };
  readonly frame: string;
  readonly caution: string;
  /** Pitch, breaks, rail heights over the nosings, posts: where everything stands, millimetres. */
  readonly report: LayoutReport | null;
  /** What is bought; null when it was not asked for. */
  readonly buying: BuyingList | null;
  /** What is put together in the shop, in the layout frame; empty when nothing is. */
  readonly assemblies: readonly AssemblyReport[];
  /** How the top rails lie on their stops (these are in the report), millimetres, newtons, N/mm²; empty when not asked for. */
  readonly lying: readonly LyingRailRow[];
  readonly pieces: readonly PieceRecord[];
}

const LENGTH_KEYS = [
  "blank",
  "longPoint",
  "shortPoint",
  "squareCut",
  "top",
  "bottom",
  "axis",
] as const satisfies readonly (keyof PieceLengths)[];

/**
 * The records.
 *
 * @param pieces - pieces of one guard
 * @param masses - by piece id; a piece that is missing gets nulls
 * @param header - program with its version, the job, and what was found out besides
 * @example
 * JSON.stringify(pieceRecords(guard.pieces, masses, { generator: "rakewright", job: "Kiln room stair" }));
 */
export function pieceRecords(
  pieces: readonly Piece[],
  masses: ReadonlyMap<string, Told>,
  header: {
    readonly generator: string;
    readonly job: string;
    readonly report?: LayoutReport;
    readonly buying?: BuyingList;
    readonly assemblies?: readonly AssemblyReport[];
    readonly lying?: readonly LyingRailRow[];
    readonly fits?: readonly EndDecision[];
    readonly states?: readonly PieceState[];
  },
): PieceRecords {
  const states = new Map((header.states ?? []).map((own) => [own.id, own]));
  return {
    generator: header.generator,
    job: header.job,
    units: { length: "mm", mass: "kg", angle: "degree", volume: "mm3" },
    frame:
      "X along the stair, + uphill and onto the landing; Y left looking uphill; Z up; origin at the top nosing",
    caution: CAUTION,
    report: header.report ?? null,
    buying: header.buying ?? null,
    assemblies: header.assemblies ?? [],
    lying: header.lying ?? [],
    pieces: pieces.map((piece) =>
      pieceRecord(piece, masses.get(piece.id), header.fits ?? [], states.get(piece.id)),
    ),
  };
}

function pieceRecord(
  piece: Piece,
  mass: Told | undefined,
  fits: readonly EndDecision[],
  state: PieceState | undefined,
): PieceRecord {
  const fitOf = (end: 0 | 1) => fits.find((own) => own.piece === piece.id && own.end === end) ?? null;
  const { frame, section } = piece;
  const lengths: Record<string, LengthRecord> = {};
  for (const key of LENGTH_KEYS) {
    const length = piece.lengths[key];
    if (length) lengths[key] = lengthRecord(length, frame);
  }
  return {
    mark: piece.mark,
    id: piece.id,
    kind: piece.kind,
    role: piece.role,
    section: { name: section.name, source: section.source, shape: section.shape },
    material: piece.material,
    status: piece.status,
    lengths,
    ends: piece.cuts.map((cut) => ({
      name: endWord(sightOf(piece), cut.end),
      ...cut,
      cutOrScribe: fitOf(cut.end),
    })),
    holes: piece.bores,
    plate: piece.kind === "member" ? null : { ...plateSizes(section), thickness: piece.lengths.blank.value },
    volume: mass?.volume ?? null,
    mass: mass?.mass ?? null,
    centroid: mass ? pointRecord("centre of gravity", mass.centroid, frame) : null,
    frame,
    shopPose: piece.shopPose,
    hook: piece.hook,
    dependsOn: piece.dependsOn,
    identity: piece.identity,
    handOf: piece.handOf ?? null,
    state: {
      start: state?.start ?? "designed",
      end: state?.end ?? "designed",
      holes: state?.holes ?? "designed",
      place: state?.place ?? "designed",
    },
  };
}

function lengthRecord(length: MeasuredLength, frame: Frame): LengthRecord {
  return {
    value: length.value,
    from: pointRecord(length.from.name, length.from.point, frame),
    to: pointRecord(length.to.name, length.to.point, frame),
  };
}

function pointRecord(name: string, point: Vec3, frame: Frame): PointRecord {
  return { name, inPiece: point, inLayout: pointToParent(frame, point) };
}
