/**
 * Sizes of a section in the paper's unit; 48.26 mm is 1.900 in and 3.683 mm 0.145 in (25.4 mm to the inch, exact).
 */
import { expect, it } from "vitest";
import { angleBar, standardSection } from "../../src/members/index.js";
import type { Section } from "../../src/members/section.js";
import { sectionText } from "../../src/shop/section-text.js";
import { tube } from "./pieces.js";

const shaped = (shape: Section["shape"], rest: Partial<Section> = {}): Section => ({
  ...tube(48.26, 3.683, "any"),
  shape,
  ...rest,
});

it("says sizes in inches or millimetres, and a standard's designation in front", () => {
  const round = tube(48.26, 3.683, "round 48.26 x 3.68");
  expect(sectionText(round, "in")).toBe("round tube 1.900 x 0.145 wall");
  expect(sectionText(round, "mm")).toBe("round tube 48.26 x 3.68 wall");
  expect(sectionText({ ...round, name: "NPS 1-1/2 Sch 40", source: "a table" }, "in")).toBe(
    "NPS 1-1/2 Sch 40: round tube 1.900 x 0.145 wall",
  );
  const box = {
    kind: "rect-tube",
    width: 38.1,
    depth: 38.1,
    wall: 3.048,
    outerRadius: 0,
    innerRadius: 0,
  } as const;
  expect(sectionText(shaped(box), "in")).toBe("square tube 1.500 x 0.120 wall");
  expect(sectionText(shaped({ ...box, depth: 50.8 }), "in")).toBe(
    "rect tube 1.500 wide x 2.000 deep x 0.120 wall",
  );
  expect(sectionText(shaped({ kind: "round-bar", od: 16 }), "mm")).toBe("round bar 16.00");
  const angle = angleBar({ width: 60, depth: 40, thickness: 5 });
  expect(sectionText(angle, "mm")).toBe("angle 60.00 wide x 40.00 deep x 5.00");
  expect(sectionText(standardSection("L 2 x 2 x 1/4"), "in")).toBe(
    "L 2 x 2 x 1/4: angle 2.000 wide x 2.000 deep x 0.250",
  );
  expect(sectionText(standardSection("UPE 100"), "mm")).toBe(
    "UPE 100: channel 55.00 wide x 100.00 deep, web 4.50, flange 7.50",
  );
  expect(sectionText(shaped({ kind: "custom" }, { name: "kiln hook" }), "mm")).toBe("kiln hook");
});
