// Times tasks against each other, interleaved: in every round each task has its turn, so that whatever else the machine
// does falls on all of them alike. A turn repeats a short task until its clock can be trusted.

const TURN_MS = 25;

function timed(run) {
  const start = performance.now();
  run();
  return performance.now() - start;
}

function turn(run) {
  let [total, count] = [0, 0];
  while (total < TURN_MS) {
    total += timed(run);
    count++;
  }
  return total / count;
}

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
 * @param options rounds at most, and how many milliseconds a task may take over all its rounds (it has one at least)
 * @returns `{ [key]: { min, median, rounds } }`
 */
export function interleave(tasks, { rounds, budget, warm }) {
  const times = new Map(tasks.map(({ key }) => [key, []]));
  const spent = new Map(tasks.map(({ key }) => [key, 0]));
  const charge = (key, run) => {
    const start = performance.now();
    const value = run();
    spent.set(key, spent.get(key) + performance.now() - start);
    return value;
  };
  for (const { key, run } of tasks) {
    for (let left = warm; left > 0; ) left -= charge(key, () => timed(run));
  }
  for (let round = 0; round < rounds; round++) {
    for (const { key, run } of tasks) {
      if (round > 0 && spent.get(key) > budget) continue;
      times.get(key).push(charge(key, () => turn(run)));
    }
  }
  return Object.fromEntries(
    [...times].map(([key, list]) => [
      key,
      { min: Math.min(...list), median: median(list), rounds: list.length },
    ]),
  );
}
