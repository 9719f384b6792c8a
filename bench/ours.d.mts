import type { JointModel, Piece } from "../src/joints/index.js";
import type { Mesh, Solid } from "../src/kernel/index.js";
import type { Job } from "./jobs.mjs";

/** The exports of the package's members, joints and kernel rooms, from the sources or the build. */
export type Library = typeof import("../src/joints/index.js") &
  typeof import("../src/kernel/index.js") &
  typeof import("../src/members/index.js");

export function modelOf(lib: Library, job: Job): JointModel;
export function rowsOf(lib: Library, jobs: readonly Job[]): JointModel;
export function build(lib: Library, job: Job): { piece: Piece; solid: Solid; mesh: Mesh };
export function buildRows(
  lib: Library,
  jobs: readonly Job[],
  keep?: (mesh: Mesh, piece: Piece) => void,
): number;
