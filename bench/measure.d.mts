export interface Times {
  readonly min: number;
  readonly median: number;
  readonly rounds: number;
}

export interface Task {
  readonly key: string;
  readonly run: () => void;
}

export const CLOCKS: { readonly wall: () => number; readonly cpu: () => number };
export function median(values: readonly number[]): number;
export function interleave(
  tasks: readonly Task[],
  options: { rounds: number; budget: number; warm: number; lead: number; clock: "wall" | "cpu" },
): Record<string, Times>;
