// Times tasks against each other, interleaved: in every round each task has its turn, so that whatever else the machine
// does falls on all of them alike. A turn repeats a short task until its clock can be trusted. It begins with a lead-in that
// is not timed: an engine throws away compiled code that was not called for some collections of garbage, so without one a
// small task after large ones would be charged for being compiled anew.
//
// Two clocks: the wall's, and the processor's, which counts the process's own work on all its threads (compiler and garbage
// collector too) and is the one to take where other programs keep the machine busy.

const TURN_MS = 25;

/** Milliseconds since some moment, by name. */
export const CLOCKS = {
  wall: () => performance.now(),
  cpu: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
};

/** Middle value of a list that is not empty. */
export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

/**
 * Milliseconds a run, least and median over the rounds.
 *
 * @param tasks `{ key, run }`; each is run for `warm` ms first, so that compilers have done their work
 * @param options rounds at most, how many milliseconds a task may take over all its rounds (it has one at least), the
 *   milliseconds a lead-in takes at least, the clock
 * @returns `{ [key]: { min, median, rounds } }`
 */
export function interleave(tasks, { rounds, budget, warm, lead, clock }) {
  const now = CLOCKS[clock];
  const runs = new Map(tasks.map(({ key, run }) => [key, { run, times: [], spent: 0 }]));
  const timed = (entry) => {
    const start = now();
    entry.run();
    const time = now() - start;
    entry.spent += time;
    return time;
  };
  const untimed = (entry, least) => {
    for (let left = least; left > 0; ) left -= timed(entry);
  };
  for (const entry of runs.values()) untimed(entry, warm);
  for (let round = 0; round < rounds; round++) {
    for (const entry of runs.values()) {
      if (round > 0 && entry.spent > budget) continue;
      untimed(entry, lead);
      let [total, count] = [0, 0];
      for (; total < TURN_MS; count++) total += timed(entry);
      entry.times.push(total / count);
    }
  }
  const summary = ({ times }) => ({ min: Math.min(...times), median: median(times), rounds: times.length });
  return Object.fromEntries([...runs].map(([key, entry]) => [key, summary(entry)]));
}
