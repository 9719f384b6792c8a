// Where the time of one post goes, and what is timed apart: mass, all rules of validity, the gate.
import { CHORD } from "./jobs.mjs";
import { interleave } from "./measure.mjs";
import { build, modelOf } from "./ours.mjs";

/** Milliseconds of each stage of a job. */
export function measureStages(lib, job, options) {
  const { piece, solid, mesh } = build(lib, job);
  const model = modelOf(lib, job);
  const stages = {
    model: () => modelOf(lib, job),
    solveJoints: () => lib.solveJoints(model),
    solidOf: () => lib.solidOf(piece),
    tessellate: () => lib.tessellate(solid, { chord: CHORD }),
    massOf: () => lib.massOf(piece, solid),
    validateSolid: () => lib.validateSolid(solid),
    "checkMesh, edges": () => lib.checkMesh(mesh, "edges"),
    "checkMesh, full": () => lib.checkMesh(mesh, "full"),
  };
  const tasks = Object.entries(stages).map(([key, run]) => ({ key, run }));
  return interleave(tasks, options);
}
