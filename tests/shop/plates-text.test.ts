/**
 * The PLATES block of the cut list and the plate's record: counts, sizes, and holes from edges a tape can hook.
 */
import { describe, expect, it } from "vitest";
import { solveJoints } from "../../src/joints/index.js";
import { member, plate, polygonLoop, roundTube } from "../../src/members/index.js";
import { cutList, cutListText, pieceRecords } from "../../src/shop/index.js";

const holes = [36, -36].flatMap((u) => [26, -26].map((v) => ({ at: [u, v] as const, diameter: 11 })));
const base = (id: string, x: number) =>
  plate({ id, outline: { width: 100, depth: 80 }, thickness: 10, holes, at: [x, 0, 0], normal: [0, 0, 1] });
const tab = plate({
  id: "T1",
  outline: polygonLoop([
    [-20, 0],
    [20, 0],
    [20, 30],
    [0, 50],
    [-20, 30],
  ]),
  thickness: 6.35,
  holes: [{ at: [0, 30], diameter: 12.7 }],
  at: [0, 30, 500],
  normal: [0, 1, 0],
  kind: "bracket",
});
const post = member({
  id: "P1",
  section: roundTube({ od: 42.4, wall: 3.2 }),
  from: [0, 0, 10],
  to: [0, 0, 900],
  role: "post",
});
const { pieces } = solveJoints({
  members: [base("BP1", 0), base("BP2", 900), tab, post],
  joints: [{ kind: "cut", id: "foot", end: { member: "P1", end: 0 }, cut: { type: "face" }, onto: "BP1" }],
});
const masses = new Map(pieces.map((p) => [p.id, 0.6]));
const list = cutList(pieces, { unit: "mm", masses });
const paper = cutListText(list, { job: "Kiln room stair", basis: "typed figures" });
const flat = paper.replace(/\s+/g, " ");

describe("plates on the cut list", () => {
  it("are in no section's group, and alike ones make one row", () => {
    expect(list.groups.flatMap((g) => g.rows.flatMap((r) => r.ids))).toEqual(["P1"]);
    expect(list.plates.map((r) => [r.ids, r.quantity, r.kind])).toEqual([
      [["BP1", "BP2"], 2, "plate"],
      [["T1"], 1, "bracket"],
    ]);
    expect(list.plates[0]).toMatchObject({ width: 100, depth: 80, thickness: 10, rectangle: true });
    expect(list.plates[1]).toMatchObject({ width: 40, depth: 50, rectangle: false });
  });

  it("say size, thickness and holes from the edges: 50 ± 36 and 40 ± 26 mm", () => {
    expect(flat).toContain("Pieces 1 in 1 section; 3 plates, listed last");
    expect(flat).toContain("PLATES 3 pieces");
    expect(flat).toContain("BP1, BP2 2 off, plate, mild steel, 0.6 kg");
    expect(flat).toContain("SIZE 100.0 x 80.0, 10.0 thick; square corners");
    // A level plate is seen from above with uphill up.
    expect(flat).toContain("HOLES seen on the TOP face with UPHILL up");
    expect(flat).toContain("4 off 11.0 dia at 86.0 and 66.0; 86.0 and 14.0; 14.0 and 66.0; 14.0 and 14.0");
    expect(flat).toContain("T1 1 off, bracket leg");
    expect(flat).toContain("outline as drawn");
    expect(flat).toContain("cut to BP1");
  });

  it("fit 100 columns in inches too, with the tab's sizes 1/4 thick and a 1/2 hole", () => {
    const inches = cutListText(cutList(pieces, { unit: "in" }), { job: "j", basis: "b" });
    expect(inches.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(inches).toMatch(/1\/4 \(0\.250\) thick/);
    expect(inches).toMatch(/1 off 1\/2 \(0\.500\) dia/);
    expect(inches + paper).not.toMatch(/NaN|undefined|null/);
  });

  it("say nothing without plates", () => {
    const bare = cutListText(
      cutList(
        pieces.filter((p) => p.kind === "member"),
        { unit: "mm" },
      ),
      { job: "j", basis: "b" },
    );
    expect(bare).not.toMatch(/plate/i);
  });

  it("have a record with the same sizes; other pieces have none", () => {
    const records = pieceRecords(pieces, new Map(), { generator: "g", job: "j" }).pieces;
    expect(records.map((r) => [r.id, r.kind, r.plate?.thickness ?? null])).toEqual([
      ["BP1", "plate", 10],
      ["BP2", "plate", 10],
      ["T1", "bracket", expect.closeTo(6.35, 12)],
      ["P1", "member", null],
    ]);
    expect(records[2]!.plate).toEqual({
      width: 40,
      depth: 50,
      holes: [{ diameter: 12.7, fromLeft: 20, fromBottom: 30 }],
      otherHoles: 0,
      thickness: expect.closeTo(6.35, 12),
    });
  });
});
