/**
 * Tasks take turns, and none is left without a figure. A clock that the test moves stands for the real one.
 */
import { afterEach, describe, expect, it, vi } from "vitest";
import { interleave, median } from "../../bench/measure.mjs";

afterEach(() => vi.restoreAllMocks());

/** Tasks that take so many milliseconds of a clock that moves only with them, and the order in which they ran. */
function model(costs: Readonly<Record<string, number>>) {
  let now = 0;
  vi.spyOn(performance, "now").mockImplementation(() => now);
  const order: string[] = [];
  const tasks = Object.entries(costs).map(([key, cost]) => ({
    key,
    run: () => {
      order.push(key);
      now += cost;
    },
  }));
  return { tasks, order };
}

describe("interleave", () => {
  it("gives every task its turn in every round, and divides a turn by its runs", () => {
    const { tasks, order } = model({ slow: 40, quick: 10 });
    const times = interleave(tasks, { rounds: 2, budget: 1000, warm: 0, lead: 0, clock: "wall" });
    expect(order.join(" ")).toBe("slow quick quick quick slow quick quick quick");
    expect(times).toEqual({
      slow: { min: 40, median: 40, rounds: 2 },
      quick: { min: 10, median: 10, rounds: 2 },
    });
  });

  it("warms each task up and leaves a task out once its budget is spent, but never its first round", () => {
    const { tasks, order } = model({ dear: 500, cheap: 30 });
    const times = interleave(tasks, { rounds: 3, budget: 200, warm: 50, lead: 0, clock: "wall" });
    expect(order.join(" ")).toBe("dear cheap cheap dear cheap cheap cheap");
    expect([times.dear?.rounds, times.cheap?.rounds]).toEqual([1, 3]);
  });
});

describe("a lead-in", () => {
  it("comes before every turn, and counts in the budget alone", () => {
    const { tasks, order } = model({ one: 30, other: 60 });
    const times = interleave(tasks, { rounds: 2, budget: 100, warm: 0, lead: 40, clock: "wall" });
    expect(order.join(" ")).toBe("one one one other other one one one");
    expect(times).toEqual({
      one: { min: 30, median: 30, rounds: 2 },
      other: { min: 60, median: 60, rounds: 1 },
    });
  });
});

describe("median", () => {
  it("is the middle value, or half-way between the two in the middle", () => {
    expect([median([9, 1, 2]), median([4, 1, 3, 2]), median([7])]).toEqual([2, 2.5, 7]);
  });
});
