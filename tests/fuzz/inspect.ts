/**
 * Everything that is asked of one random end: solved, valid, closed, in no header and on every one, of the right mass.
 */
import { solidOf } from "../../src/joints/index.js";
import { evaluate } from "../../src/kernel/curve/curve.js";
import {
  type Bar,
  type Bore,
  type Diagnostic,
  massProperties,
  type Result,
  type Solid,
  solidOfBar,
  type Vec3,
} from "../../src/kernel/index.js";
import { checkMesh } from "../../src/kernel/mesh/gate.js";
import { tessellate } from "../../src/kernel/mesh/tessellate.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { turned } from "../support/bar-moves.js";
import { barOf, type JointCase } from "../support/joint-case.js";
import { TooManyRays, volumeByRays } from "../support/quadrature.js";
import { clearance } from "./clearance.js";
import type { FuzzCase } from "./domain.js";
import { boreVolume, profileVolume, regionOf } from "./extras.js";
import { pieceOf } from "./model.js";

/** How closely a case is looked at; each costs more than the one before. */
export interface Looks {
  /** The mesh gate's level `full`. */
  readonly full: boolean;
  /** Volume against the quadrature. */
  readonly volume: boolean;
  /** Volume by a general B-rep kernel. */
  readonly occt: ((c: JointCase) => number) | null;
  /** Told of every quadrature that was asked for: whether it came to an end within MOST_RAYS. */
  readonly onQuadrature?: (done: boolean) => void;
}

/** mm. A joint may overlap, or stand open beyond its root gap, by this. */
const OFF_MM = 2e-6;
/** Relative. Somewhere in a case a break or a silhouette may have been moved by up to a millionth of a millimetre. */
const VOLUME = 1e-8;
/** Relative: the same where all of a branch 12 mm wide has been moved by as much along its header, at 15 degrees. */
const SNAPPED_VOLUME = 3e-7;
/** Relative: what a general kernel may differ by; beside a tangency it errs by more, and there the quadrature decides. */
const OCCT_VOLUME = 1e-6;
/** mm³. Error the quadrature allows itself per stretch. */
const QUADRATURE_MM3 = 1e-9;
/** Relative to the bar: a bore's volume is a difference of two large ones. The worst of 1,120 drawn ones was off by 2.5·10⁻¹². */
const BORE_VOLUME = 1e-11;
/** Rays of one quadrature. */
const MOST_RAYS = 1e7;
const CHORD = 0.05;

const said = (where: string, found: readonly Diagnostic[]): string[] =>
  found.filter((d) => d.severity === "error").map((d) => `${where}: ${d.code}: ${d.message}`);

/** What is wrong with a case; empty for a good one. */
export function inspect(c: FuzzCase, looks: Looks): string[] {
  try {
    const bar = c.profile ? { ...barOf(c.joint), section: regionOf(c.profile) } : barOf(c.joint);
    const made = solidOfBar(turned(bar, c.turn));
    const own = made.ok ? inspectSolid(c, made.value, looks) : said("refused", made.diagnostics);
    return [...own, ...inspectPiece(c, made), ...(c.drill ? inspectBore(c, bar, c.drill, looks) : [])];
  } catch (error) {
    return [`thrown: ${error instanceof Error ? error.message : String(error)}`];
  }
}

/** The bar with a hole in it: as sound as without, and lighter by what the quadrature says. */
function inspectBore(c: FuzzCase, bar: Bar, bore: Bore, looks: Looks): string[] {
  const [plain, made] = [solidOfBar(bar), solidOfBar({ ...bar, bores: [bore] })];
  if (!plain.ok) return [];
  if (!made.ok) return said("bore refused", made.diagnostics);
  const out = said("bored solid", validateSolid(made.value));
  const mesh = tessellate(made.value, { chord: CHORD });
  out.push(...said("bored mesh", checkMesh(mesh, looks.full ? "full" : "edges").diagnostics));
  const whole = massProperties(plain.value).volume;
  const took = whole - massProperties(made.value).volume;
  const wanted = boreVolume(c.joint.section, bore);
  if (!(Math.abs(took - wanted) < BORE_VOLUME * whole))
    out.push(`bore: ${took} mm³ for ${wanted} by quadrature`);
  return out;
}

/** Where a joint can ask for it: the solver's piece has the same solid, however the model stands. */
function inspectPiece(c: FuzzCase, bar: Result<Solid>): string[] {
  const piece = pieceOf(c);
  if (piece === null) return [];
  if (!piece.ok) return said("solver", piece.diagnostics);
  const made = solidOf(piece.value);
  if (!made.ok) return said("piece refused", made.diagnostics);
  const out = said("piece", validateSolid(made.value));
  if (!bar.ok) return out;
  const [a, b] = [massProperties(made.value).volume, massProperties(bar.value).volume];
  return Math.abs(a / b - 1) < SNAPPED_VOLUME ? out : [...out, `piece: volume ${a} for ${b}`];
}

function inspectSolid(c: FuzzCase, solid: Solid, looks: Looks): string[] {
  const out = said("solid", validateSolid(solid));
  const mesh = tessellate(solid, { chord: CHORD });
  const report = checkMesh(mesh, looks.full ? "full" : "edges");
  out.push(...said("mesh", report.diagnostics), ...misfits(c, solid, mesh.positions));
  const { volume, area } = massProperties(solid);
  if (!(Math.abs(report.volume - volume) < area * CHORD))
    out.push(`mesh: volume ${report.volume} for ${volume}`);
  if (looks.volume) {
    const wanted = quadrature(c, looks);
    const within = c.tags.some((t) => /1e-([6-9]|1\d)/.test(t)) ? SNAPPED_VOLUME : VOLUME;
    if (wanted !== null && !(Math.abs(volume / wanted - 1) < within))
      out.push(`volume: ${volume} for ${wanted} by quadrature`);
  }
  if (looks.occt && !c.profile) {
    const theirs = looks.occt(c.joint);
    if (Math.abs(volume / theirs - 1) < OCCT_VOLUME) return out;
    const wanted = quadrature(c, looks);
    if (wanted === null || !(Math.abs(volume / wanted - 1) < SNAPPED_VOLUME))
      out.push(`volume: ${volume} for ${theirs} by the general kernel and ${wanted} by quadrature`);
  }
  return out;
}

/** Volume by the quadrature; null where that takes more rays than it is worth, some ten times the common number. */
function quadrature({ joint, profile }: FuzzCase, { onQuadrature }: Looks): number | null {
  try {
    const volume = profile
      ? profileVolume(joint, profile, QUADRATURE_MM3, MOST_RAYS)
      : volumeByRays(joint, QUADRATURE_MM3, MOST_RAYS);
    onQuadrature?.(true);
    return volume;
  } catch (error) {
    if (!(error instanceof TooManyRays)) throw error;
    onQuadrature?.(false);
    return null;
  }
}

/** Shares of an edge at which it is looked at: its ends, beside one of them, and between. */
const ALONG = [0, 0.003, 0.13, 0.31, 0.5, 0.77, 0.94, 1];

/** Points of the branch past an end, and points of an end off what it was cut to. */
function misfits(c: FuzzCase, solid: Solid, positions: Float64Array): string[] {
  const [cos, sin] = [Math.cos(-c.turn), Math.sin(-c.turn)];
  const away = (index: 0 | 1, p: Vec3): number => {
    const back: Vec3 = [cos * p[0] - sin * p[1], sin * p[0] + cos * p[1], p[2]];
    return clearance(c.joint.ends[index], index === 0 ? -1 : 1, back);
  };
  let [past, off] = [0, 0];
  for (let i = 0; i < positions.length; i += 3) {
    const p: Vec3 = [positions[i]!, positions[i + 1]!, positions[i + 2]!];
    past = Math.min(past, away(0, p), away(1, p));
  }
  for (const { loops, provenance } of solid.faces) {
    if (provenance.from !== "end") continue;
    for (const use of loops.flat()) {
      const { curve, t0, t1 } = solid.edges[use.edge]!;
      for (const f of ALONG)
        off = Math.max(off, Math.abs(away(provenance.end, evaluate(curve, t0 + f * (t1 - t0)))));
    }
  }
  const out: string[] = [];
  if (past < -OFF_MM) out.push(`overlap: ${past.toExponential(2)} mm`);
  if (off > OFF_MM) out.push(`off the header: ${off.toExponential(2)} mm`);
  return out;
}
