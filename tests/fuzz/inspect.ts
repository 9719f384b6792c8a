/**
 * Everything that is asked of one random end: solved, valid, closed, in no header and on every one, of the right mass.
 */
import { solidOf } from "../../src/joints/index.js";
import { evaluate } from "../../src/kernel/curve/curve.js";
import {
  type Bar,
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
import { volumeByRays } from "../support/quadrature.js";
import { clearance } from "./clearance.js";
import type { FuzzCase } from "./domain.js";
import { solved } from "./model.js";

/** How closely a case is looked at; each costs more than the one before. */
export interface Looks {
  /** The mesh gate's level `full`. */
  readonly full: boolean;
  /** Volume against the quadrature. */
  readonly volume: boolean;
  /** Volume against a general B-rep kernel, where one is given. */
  readonly occt?: ((c: JointCase) => number) | null;
}

/** mm. A joint may overlap, or stand open beyond its root gap, by this. */
export const OFF_MM = 2e-6;

/** Relative. The quadrature's own word away from near contacts. */
const VOLUME = 1e-11;
/** Relative. 'Equal' within a millionth of a millimetre moves a skin by as much. */
const SNAPPED_VOLUME = 3e-7;
const OCCT_VOLUME = 1e-6;

export const CHORD = 0.05;

/** What is wrong with a case; empty for a good one. */
export function inspect(c: FuzzCase, looks: Looks): string[] {
  const out: string[] = [];
  try {
    const bar = turned(barOf(c.joint), c.turn);
    const made = solidOfBar(bar);
    if (made.ok) out.push(...inspectSolid(c, made.value, looks));
    else out.push(`refused: ${made.diagnostics.map((d) => `${d.code} ${d.message}`).join("; ")}`);
    const piece = solved(c);
    if (Array.isArray(piece)) out.push(...piece);
    else if (piece && "ends" in piece)
      out.push(...inspectPiece(piece as unknown as Bar, solidOf(piece as never), made));
  } catch (error) {
    out.push(`thrown: ${error instanceof Error ? error.message : String(error)}`);
  }
  return out;
}

/** The solid of the piece is the solid of the bar, wherever the model stands. */
function inspectPiece(_: Bar, made: Result<Solid>, bar: Result<Solid>): string[] {
  if (!made.ok) return [`piece refused: ${made.diagnostics.map((d) => `${d.code} ${d.message}`).join("; ")}`];
  const out = validateSolid(made.value).map((d) => `piece: ${d.code} ${d.message}`);
  if (!bar.ok) return out;
  const [a, b] = [massProperties(made.value).volume, massProperties(bar.value).volume];
  if (!(Math.abs(a / b - 1) < SNAPPED_VOLUME)) out.push(`piece: volume ${a} for ${b}`);
  return out;
}

function inspectSolid(c: FuzzCase, solid: Solid, looks: Looks): string[] {
  const out = validateSolid(solid).map((d) => `solid: ${d.code} ${d.message}`);
  const mesh = tessellate(solid, { chord: CHORD });
  const report = checkMesh(mesh, looks.full ? "full" : "edges");
  out.push(
    ...report.diagnostics.filter((d) => d.severity === "error").map((d) => `mesh: ${d.code} ${d.message}`),
  );
  const { volume, area } = massProperties(solid);
  if (!(Math.abs(report.volume - volume) < area * CHORD))
    out.push(`mesh: volume ${report.volume} for ${volume}`);
  out.push(...misfits(c, solid, mesh.positions));
  if (looks.volume) {
    const wanted = volumeByRays(c.joint, 1e-9);
    const off = Math.abs(volume / wanted - 1);
    const near = c.tags.some((t) => /1e-([6-9]|1\d)/.test(t));
    if (!(off < (near ? SNAPPED_VOLUME : VOLUME)))
      out.push(`volume: ${volume} for ${wanted}, ${off.toExponential(2)} off`);
  }
  if (looks.occt) {
    const theirs = looks.occt(c.joint);
    // Beside a tangency a general kernel errs by more than that: the quadrature decides.
    if (!(Math.abs(volume / theirs - 1) < OCCT_VOLUME)) {
      const wanted = volumeByRays(c.joint, 1e-9);
      if (!(Math.abs(volume / wanted - 1) < SNAPPED_VOLUME))
        out.push(`occt: ${volume} for ${theirs}, quadrature ${wanted}`);
    }
  }
  return out;
}

const ALONG = [0, 0.003, 0.13, 0.31, 0.5, 0.77, 0.94, 1];

/** Points past an end, and points of an end off what it was cut to. */
function misfits(c: FuzzCase, solid: Solid, positions: Float64Array): string[] {
  const [cos, sin] = [Math.cos(-c.turn), Math.sin(-c.turn)];
  const back = (p: Vec3): Vec3 => [cos * p[0] - sin * p[1], sin * p[0] + cos * p[1], p[2]];
  let [in0, off0] = [0, 0];
  for (let i = 0; i < positions.length; i += 3) {
    const p = back([positions[i]!, positions[i + 1]!, positions[i + 2]!]);
    for (const [k, e] of c.joint.ends.entries()) in0 = Math.min(in0, clearance(e, k === 0 ? -1 : 1, p));
  }
  for (const face of solid.faces) {
    if (face.provenance.from !== "end") continue;
    const { end } = face.provenance;
    for (const use of face.loops.flat()) {
      const { curve, t0, t1 } = solid.edges[use.edge]!;
      for (const f of ALONG) {
        const p = back(evaluate(curve, t0 + f * (t1 - t0)));
        const away = clearance(c.joint.ends[end], end === 0 ? -1 : 1, p);
        if (Math.abs(away) > Math.abs(off0)) off0 = away;
      }
    }
  }
  const out: string[] = [];
  if (in0 < -OFF_MM) out.push(`overlap: ${in0.toExponential(2)} mm`);
  if (Math.abs(off0) > OFF_MM) out.push(`off the header: ${off0.toExponential(2)} mm`);
  return out;
}
