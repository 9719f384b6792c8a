/**
 * The shop file on the command line: read beside the design, its mistakes told, its fit gap taken up. The example shop's gap is
 * 1/16 in = 1.5875 mm (1 in = 25.4 mm exactly).
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { shopJsonSchema } from "../../src/layout/index.js";
import type { PieceRecords } from "../../src/shop/index.js";
import { cli, freshFolder } from "./world.js";

const path = (name: string) => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const [DESIGN, SHOP] = [path("pottery-studio.json"), path("shop.json")];

describe("rakewright schema", () => {
  it("prints the shop file's when asked", async () => {
    const { code, out } = await cli(["schema", "shop"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(shopJsonSchema());
    expect(await cli(["schema", "design"])).toEqual(await cli(["schema"]));
  });

  it("knows no other document, and takes one word", async () => {
    for (const word of ["house", "toString"]) {
      const { code, err } = await cli(["schema", word]);
      expect([code, err]).toEqual([
        2,
        expect.stringContaining(`expected design or shop or as-set, got \`${word}\``),
      ]);
    }
    expect((await cli(["schema", "shop", "design"])).err).toContain("did not expect `design`");
  });
});

describe("a shop file beside a design", () => {
  it("gives its fit gap to a design that states none", async () => {
    const cwd = freshFolder();
    const gaps = async (argv: readonly string[]) => {
      const { code } = await cli(["build", DESIGN, "-o", "o", "--force", "--formats", "step", ...argv], {
        cwd,
      });
      expect(code).toBe(0);
      const records = JSON.parse(readFileSync(join(cwd, "o/pieces.json"), "utf8")) as PieceRecords;
      const ends = records.pieces.flatMap((piece) => piece.ends).filter((end) => end.kind === "cope");
      expect(ends.length).toBeGreaterThan(3);
      return [...new Set(ends.map((end) => end.fit.gap))];
    };
    expect(await gaps([])).toEqual([0]);
    expect(await gaps(["--shop", SHOP])).toEqual([1.5875]);
  }, 60_000);

  it("puts stock, tape and the way in on the paper; without it the paper says that they are not known", async () => {
    const cwd = freshFolder();
    const paper = async (argv: readonly string[]) => {
      await cli(["build", DESIGN, "-o", "o", "--force", "--formats", "step", ...argv], { cwd });
      return readFileSync(join(cwd, "o/cutlist.txt"), "utf8").replace(/\s+/g, " ");
    };
    const bare = await paper([]);
    expect(bare).toContain("BUYING LIST sums of blanks");
    expect(bare).toContain("(no shop file)");
    expect(bare).not.toMatch(/corridor|Tape/);
    const own = await paper(["--shop", SHOP]);
    expect(own).toContain(
      "of 240 (240.000): AT LEAST 2 lengths (1.06 by the sum: a lower bound, no cutting plan)",
    );
    expect(own).toContain("Tape class II");
    // Nothing parts the guard: it is one weldment, and too long for the corridor (its law is tested with the shop's papers).
    expect(own).toContain("ASSEMBLIES sizes over all");
    expect(own).toContain("A1 26 pieces, 80.3 kg (177.0 lb): R1, R2, B1");
    expect(own).toMatch(/corridor its length 257-3\/32 \(257\.108\), at most \S+ \([\d.]+\): TOO LONG/);
  }, 60_000);

  it("tells its own mistakes, and builds nothing", async () => {
    const cwd = freshFolder();
    writeFileSync(join(cwd, "shop.json"), '{ "kerf": "thin" }');
    for (const argv of [
      ["build", DESIGN, "--shop", "shop.json", "-o", "o"],
      ["check", DESIGN, "--shop", "shop.json"],
    ]) {
      const { code, out, err } = await cli(argv, { cwd });
      expect(code).toBe(1);
      expect(out + err).toMatch(/error bad-length.*thin/);
    }
  });

  it("gives the saw's limits: one that does not tilt cuts the example's plumb ends on the tube's side", async () => {
    const cwd = freshFolder();
    writeFileSync(join(cwd, "shop.json"), '{ "saw": { "bevel": 0 } }');
    const { code, out } = await cli(["check", DESIGN, "--shop", "shop.json"], { cwd });
    expect(code).toBe(0);
    // Pitch of the example: atan(7.5625 / 10.625) = 35.44 degrees.
    expect(out).toMatch(
      /saw-beyond-limit: R1, DOWNHILL end: .* got miter 0\.00° and bevel 35\.44° from square/,
    );
    expect(out).toMatch(/quarter onto its side: miter 35\.44°, bevel 0\.00°/);
    expect((await cli(["check", DESIGN], { cwd })).out).not.toContain("saw-beyond-limit");
    expect((await cli(["check", DESIGN, "--shop", SHOP], { cwd })).out).not.toContain("saw-beyond-limit");
  }, 60_000);

  it("that is not there, or no JSON, or read from the stream that the design comes from, is wrong use", async () => {
    const cwd = freshFolder();
    writeFileSync(join(cwd, "broken.json"), "{");
    const wrong = async (shop: string, design = DESIGN) => {
      const { code, err } = await cli(["check", design, "--shop", shop], { cwd, stdin: "{}" });
      expect(code).toBe(2);
      return err;
    };
    expect(await wrong("none.json")).toMatch(
      /Cannot read none.json: there is no such file[\s\S]*Give a shop file/,
    );
    expect(await wrong("broken.json")).toMatch(/broken.json is not JSON/);
    expect(await wrong("-", "-")).toMatch(/Standard input can be only one/);
  });
});
