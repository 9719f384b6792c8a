/**
 * The small parts of the command line: file names out of marks, colours, progress, numbers.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundedNumber } from "../../src/cli/args.js";
import { fileNames } from "../../src/cli/file-names.js";
import { progress } from "../../src/cli/progress.js";
import { diagnosticsText, tally, wantsColour } from "../../src/cli/report.js";
import { diagnostic } from "../../src/kernel/diagnostic.js";
import { world } from "./world.js";

describe("file names", () => {
  it("keep plain marks and disarm the rest", () => {
    expect(fileNames(["P1", "p1", "R-2", "../x", "", "CON"])).toEqual([
      "P1",
      "p1-2",
      "R-2",
      "___x",
      "piece_",
      "piece_CON",
    ]);
  });

  it("are always plain, never hidden, and different without regard to case", () => {
    const marks = fc.array(
      fc.oneof(fc.string(), fc.constantFrom("P1", "p1", "P1-2", ".", "..", "a/b", "nul")),
    );
    fc.assert(
      fc.property(marks, (list) => {
        const names = fileNames(list);
        expect(names.filter((name) => !/^[A-Za-z0-9_][A-Za-z0-9._-]*$/.test(name))).toEqual([]);
        expect(new Set(names.map((n) => n.toLowerCase())).size).toBe(list.length);
      }),
    );
  });
});

describe("colour", () => {
  it("needs a terminal and no NO_COLOR (no-color.org says every value but the empty one)", () => {
    expect(wantsColour(world({ tty: true }).io)).toBe(true);
    expect(wantsColour(world({ tty: true, env: { NO_COLOR: "" } }).io)).toBe(true);
    expect(wantsColour(world({ tty: true, env: { NO_COLOR: "0" } }).io)).toBe(false);
    expect(wantsColour(world({ tty: false }).io)).toBe(false);
  });
});

describe("findings", () => {
  const found = [
    diagnostic({ code: "b", severity: "note", message: "B.", hint: "" }),
    diagnostic({ code: "a", message: "A.", hint: "Do so.", path: "legs[0]" }),
  ];

  it("come worst first with place and hint", () => {
    expect(diagnosticsText(found, false)).toBe("error a at legs[0]: A.\n  Do so.\nnote b: B.\n");
    expect(diagnosticsText(found, true)).toContain("\u001b[31merror\u001b[0m a");
  });

  it("are counted", () => {
    expect(tally(found)).toBe("1 error, 1 note");
    expect(tally([])).toBe("nothing to report");
  });
});

describe("progress", () => {
  const steps = (options: Parameters<typeof world>[0], quiet = false): string => {
    const { io, err } = world(options);
    const bar = progress(io, quiet);
    bar.step(1, 2, "solid P1");
    bar.step(2, 2, "solid P2");
    bar.end();
    return err.join("");
  };

  it("shows after a second, on a terminal, and wipes itself", () => {
    expect(steps({ tty: true, clock: [0, 999, 1000] })).toBe("\r\u001b[Ksolid P2 2 of 2\r\u001b[K");
    expect(steps({ tty: true, clock: [0, 500, 900] })).toBe("");
    expect(steps({ tty: false, clock: [0, 5000] })).toBe("");
    expect(steps({ tty: true, clock: [0, 5000] }, true)).toBe("");
  });
});

describe("numbers", () => {
  it("are finite, within bounds, and whole where asked", () => {
    const bounds = { least: 0.001, most: 10 };
    expect(boundedNumber("chord", "0.05", bounds)).toBe(0.05);
    for (const bad of ["", " ", "x", "NaN", "Infinity", "11", "0", "0,05", "0.05mm"]) {
      expect(() => boundedNumber("chord", bad, bounds)).toThrow(
        /--chord: expected a number from 0.001 to 10/,
      );
    }
    expect(() => boundedNumber("stations", "3.5", { least: 3, most: 9, whole: true })).toThrow(
      /whole number/,
    );
  });
});
