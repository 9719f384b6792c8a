// What can be asked on the command line.
import { parseArgs } from "node:util";

const HELP = "Expected --sample and --seed whole numbers, --only a path below src.";

export function readOptions(args) {
  const { values } = parseArgs({
    args,
    options: {
      sample: { type: "string", default: "100" },
      seed: { type: "string", default: "1" },
      only: { type: "string", multiple: true, default: ["src/kernel", "src/joints"] },
      list: { type: "boolean", default: false },
    },
  });
  const [sample, seed] = [Number(values.sample), Number(values.seed)];
  if (!Number.isInteger(sample) || sample < 1 || !Number.isInteger(seed)) throw new Error(HELP);
  return { sample, seed, only: values.only, list: values.list };
}
