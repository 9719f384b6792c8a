// The package under test, from numbers to triangles: members, solveJoints, solidOf (which runs the rules of topology on
// every solid), tessellate. The library is handed in, so that the tests can pass the sources and the bench the build.
import { CHORD, directionAt, POST_SPACING, POSTS_A_ROW, RAKE, ROW_SPACING, reachOf } from "./jobs.mjs";

const along = (p, d, k) => [p[0] + k * d[0], p[1] + k * d[1], p[2] + k * d[2]];

function boreJoints(id, job, foot) {
  const direction = directionAt(job.boreAngle);
  return job.bores.map(({ z, diameter }, k) => ({
    kind: "bore",
    id: `${id}/${k}`,
    member: id,
    at: along(foot, [0, 0, 1], z),
    direction,
    diameter,
    through: "both",
  }));
}

/** Members and joints of one tube and its header. */
export function modelOf(lib, job) {
  const { branch, header, length, angle, headerTurn } = job;
  const axis = directionAt(angle);
  const at = [0, 0, length];
  const half = 3 * reachOf(job);
  const members = [
    lib.member({ id: "B", section: lib.roundTube(branch), role: "post", from: [0, 0, 0], to: at }),
    lib.member({
      id: "H",
      section: lib.roundTube(header),
      role: "top-rail",
      from: along(at, axis, -half),
      to: along(at, axis, half),
      roll: headerTurn,
    }),
  ];
  const cope = { kind: "cope", id: "cope", end: { member: "B", end: 1 }, onto: ["H"] };
  return { members, joints: [cope, ...boreJoints("B", job, [0, 0, 0])] };
}

/** Members and joints of posts in rows, each row under its own rail at the rake; nothing is said of who yields to whom. */
export function rowsOf(lib, jobs) {
  const [first] = jobs;
  const branch = lib.roundTube(first.branch);
  const header = lib.roundTube(first.header);
  const rake = Math.tan(RAKE);
  const members = [];
  const joints = [];
  const rows = Math.ceil(jobs.length / POSTS_A_ROW);
  for (let row = 0; row < rows; row++) {
    const here = jobs.slice(row * POSTS_A_ROW, (row + 1) * POSTS_A_ROW);
    const y = row * ROW_SPACING;
    const [from, to] = [-300, (here.length - 1) * POST_SPACING + 300];
    const section = { section: header, role: "top-rail" };
    members.push(
      lib.member({ ...section, id: `R${row}`, from: [from, y, from * rake], to: [to, y, to * rake] }),
    );
    for (const job of here) {
      const x = job.place * POST_SPACING;
      const foot = [x, y, x * rake - job.length];
      members.push(
        lib.member({ id: job.name, section: branch, role: "post", from: foot, to: [x, y, x * rake] }),
      );
      joints.push(...boreJoints(job.name, job, foot));
    }
  }
  return { members, joints };
}

/** The pieces of a model; throws when a joint was not solved, so that no failure is ever timed as a success. */
function piecesOf(lib, model) {
  const { pieces, diagnostics } = lib.solveJoints(model);
  if (diagnostics.length > 0) throw new Error(diagnostics.map((d) => `${d.code}: ${d.message}`).join("\n"));
  return pieces;
}

function solidFrom(lib, piece) {
  const solid = lib.solidOf(piece);
  if (!solid.ok) throw new Error(solid.diagnostics.map((d) => d.message).join("\n"));
  return solid.value;
}

/** The trimmed tube of a job: its piece, its exact solid and its mesh in the piece's frame. */
export function build(lib, job) {
  const [piece] = piecesOf(lib, modelOf(lib, job));
  const solid = solidFrom(lib, piece);
  return { piece, solid, mesh: lib.tessellate(solid, { chord: CHORD }) };
}

/** Solves all rows at once and hands over each post's mesh as it is made; returns the number of triangles. */
export function buildRows(lib, jobs, keep = () => {}) {
  let triangles = 0;
  for (const piece of piecesOf(lib, rowsOf(lib, jobs))) {
    if (piece.id.startsWith("R")) continue;
    const mesh = lib.tessellate(solidFrom(lib, piece), { chord: CHORD });
    triangles += mesh.triangles.length / 3;
    keep(mesh, piece);
  }
  return triangles;
}

/** The package as a contender. */
export function contender(lib, version) {
  return {
    key: "ours",
    name: "rakewright",
    version,
    make: (job) => build(lib, job),
    makeAll: (jobs) => buildRows(lib, jobs),
    free: () => {},
    read: ({ piece, mesh }) => lib.placeMesh(mesh, piece.frame),
  };
}
