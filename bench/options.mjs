// What can be asked of the bench on the command line, and how long each part may then take.
import { parseArgs } from "node:util";
import { CLOCKS } from "./measure.mjs";

const DEFAULT = {
  single: { rounds: 9, budget: 8000, warm: 2000, lead: 200 },
  few: { rounds: 3, budget: 5000, warm: 1, lead: 0 },
  many: { rounds: 3, budget: 30_000, warm: 0, lead: 0 },
  stages: { rounds: 9, budget: 2000, warm: 200, lead: 0 },
  stl: { rounds: 7, budget: 4000, warm: 1, lead: 0 },
  stlPosts: 20,
  stepPosts: 1000,
  coldRounds: 5,
  phases: [0.25, 0.5, 0.75],
  memoryPosts: 1000,
  /** Milliseconds that the 10,000 posts may be expected to take; more, and they are left out. */
  longest: 120_000,
};

const QUICK = {
  ...DEFAULT,
  single: { rounds: 3, budget: 1000, warm: 100, lead: 50 },
  few: { rounds: 1, budget: 1000, warm: 0, lead: 0 },
  many: { rounds: 1, budget: 5000, warm: 0, lead: 0 },
  stages: { rounds: 3, budget: 500, warm: 100, lead: 0 },
  stl: { rounds: 3, budget: 1000, warm: 0, lead: 0 },
  stlPosts: 5,
  stepPosts: 50,
  coldRounds: 1,
  phases: [0.5],
  memoryPosts: 100,
  longest: 0,
};

export function readOptions(args) {
  const { values } = parseArgs({
    args,
    options: {
      quick: { type: "boolean", default: false },
      full: { type: "boolean", default: false },
      build: { type: "boolean", default: true },
      clock: { type: "string", default: "wall" },
      date: { type: "string" },
      out: { type: "string" },
    },
    allowNegative: true,
  });
  if (!(values.clock in CLOCKS)) throw new Error(`--clock: expected wall or cpu, got ${values.clock}.`);
  const { quick, full, clock } = values;
  const limits = quick ? QUICK : full ? { ...DEFAULT, longest: Number.POSITIVE_INFINITY } : DEFAULT;
  const timing = ["single", "few", "many", "stages", "stl"];
  const clocked = Object.fromEntries(timing.map((part) => [part, { ...limits[part], clock }]));
  return { ...limits, ...clocked, ...values };
}
