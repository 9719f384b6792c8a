export interface Tube {
  readonly od: number;
  readonly wall: number;
}

/** See jobs.mjs; millimetres and degrees. */
export interface Job {
  readonly name: string;
  readonly branch: Tube;
  readonly length: number;
  readonly header: Tube;
  readonly angle: number;
  readonly headerTurn: number;
  readonly boreAngle: number;
  readonly bores: readonly { readonly z: number; readonly diameter: number }[];
}

export const CHORD: number;
export const J1: Job;
export const J2: Job;
export const POST: Job;
export function turned(job: Job, headerTurn: number): Job;
export function posts(count: number): readonly Job[];
export function segmentsOf(radius: number, chord?: number): number;
