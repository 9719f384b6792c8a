/**
 * The as-set file on the command line: read beside the design, its mistakes told, the papers as set with the designed places
 * beside them. Places are those of shared/demo-as-set.json (computed independently).
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import demo from "../../shared/demo-as-set.json" with { type: "json" };
import { asSetJsonSchema } from "../../src/layout/index.js";
import type { PieceRecords } from "../../src/shop/index.js";
import { cli, freshFolder } from "./world.js";

const path = (name: string) => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const [DESIGN, AS_SET] = [path("pottery-studio.json"), path("pottery-studio-as-set.json")];

/** `-124 7/16` as it stands on the paper, `-124-7/16`. */
const onPaper = (tape: string) => tape.replace(" ", "-");

describe("an as-set file beside a design", () => {
  it("has a schema that is printed when asked", async () => {
    const { code, out } = await cli(["schema", "as-set"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(asSetJsonSchema());
  });

  it("puts the posts where they stand, on the paper and in the records", async () => {
    const folder = join(freshFolder(), "set");
    const given = ["--as-set", AS_SET, "--formats", "stl", "--quiet", "-o", folder];
    expect((await cli(["build", DESIGN, ...given])).code).toBe(0);
    const paper = readFileSync(join(folder, "cutlist.txt"), "utf8").replace(/\n\s+/g, " ");
    for (const { post, xSet, xDesigned, baseSet, baseDesigned, leanDegUphill: lean } of demo.posts) {
      const line = paper.split("\n").find((own) => own.startsWith(`Post ${post} `)) ?? "";
      const leans = lean === 0 ? "plumb" : `leaning ${Math.abs(lean)}° ${lean > 0 ? "uphill" : "downhill"}`;
      expect(line).toContain(`centre at ${onPaper(xSet)} (`);
      expect(line).toContain(`base ${onPaper(baseSet)} (`);
      expect(line).toContain(`AS SET, ${leans} (designed: centre at ${onPaper(xDesigned)} (`);
      expect(line).toContain(`base ${onPaper(baseDesigned)} (`);
    }
    expect(paper).toContain("Posts as set, where they were measured: P1, P2, P3, P4, P5");
    const records = JSON.parse(readFileSync(join(folder, "pieces.json"), "utf8")) as PieceRecords;
    const { posts = [] } = records.report ?? {};
    expect(posts.filter((own) => own.asSet !== undefined).map((own) => own.mark)).toEqual(
      demo.posts.map((own) => own.post),
    );
  }, 60_000);

  it("tells its mistakes and writes nothing", async () => {
    const cwd = freshFolder();
    const write = (document: unknown) => writeFileSync(join(cwd, "set.json"), JSON.stringify(document));
    write({ version: 1, unit: "in", posts: [{ post: "P9" }] });
    for (const command of ["build", "check"]) {
      const out = command === "build" ? ["-o", "o"] : [];
      const { code, err, out: text } = await cli([command, DESIGN, "--as-set", "set.json", ...out], { cwd });
      expect([command, code]).toEqual([command, 1]);
      expect(`${err}${text}`).toContain("posts[0].post: expected the mark of a post of the design");
    }
    write({ version: 1, unit: "in", made: [{ piece: "P1", from: "out/first", features: "all" }] });
    const made = await cli(["check", DESIGN, "--as-set", "set.json"], { cwd });
    expect([made.code, made.out]).toEqual([
      1,
      expect.stringContaining("out/first: expected the solved pieces"),
    ]);
    write({ version: 1, unit: "in", made: [] });
    expect((await cli(["check", DESIGN, "--as-set", "set.json"], { cwd })).code).toBe(0);
  });

  it("is one file, and beside a design that cannot be read nothing is said of it", async () => {
    const cwd = freshFolder();
    const missing = await cli(["check", DESIGN, "--as-set", "none.json"], { cwd });
    expect([missing.code, missing.err]).toEqual([
      2,
      expect.stringMatching(/Cannot read none.json: there is no such file[\s\S]*Give an as-set file/),
    ]);
    const twice = await cli(["check", "-", "--as-set", "-"], { cwd, stdin: "{}" });
    expect([twice.code, twice.err]).toEqual([2, expect.stringContaining("DESIGN, --shop and --as-set")]);
    writeFileSync(join(cwd, "broken.json"), "{}");
    const { code, out } = await cli(["check", "broken.json", "--as-set", AS_SET], { cwd });
    expect(code).toBe(1);
    expect(out).toContain("missing");
    expect(out).not.toContain("P1");
  });
});
