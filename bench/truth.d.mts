import type { Vec3 } from "../src/kernel/index.js";
import type { Job } from "./jobs.mjs";

export interface Truth {
  readonly curves: readonly { readonly name: string; readonly points: readonly Vec3[] }[];
}

export function truthOf(job: Job): Truth;
export function distanceFrom(truth: Truth, p: Vec3): number;
