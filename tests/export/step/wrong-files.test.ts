/** Files that are wrong on purpose: each fault must be found, or the readers prove nothing. */
import { beforeAll, describe, expect, it } from "vitest";
import { toStep } from "../../../src/export/index.js";
import { barOf, onRound, solidFor, square, tube } from "../../support/bars.js";
import { type BrepLook, lookAtBrep } from "../../support/part21/brep.js";
import { readStep } from "../../support/part21/read.js";
import { loadStepReader, type StepReader } from "../../support/step-occt.js";

const solid = solidFor(barOf(tube(42.4, 3.2), square(), onRound(60.3, 500, 50)));
const made = toStep([{ name: "A", solid, colour: [0.1, 0.2, 0.3] }]);
const good = made.ok ? made.value : "";

/** The text with the first match changed; a change that matches nothing is a fault of the test. */
function changed(from: RegExp | string, to: string | ((found: string) => string)): string {
  const out = good.replace(from, to as string);
  expect(out).not.toBe(good);
  return out;
}

function lookAt(text: string): BrepLook {
  const { graph } = readStep(text);
  return lookAtBrep(graph!, graph!.all("MANIFOLD_SOLID_BREP")[0]!.id);
}

it("the file itself is good", () => {
  expect(readStep(good).faults).toEqual([]);
  const { faults, gap } = lookAt(good);
  expect(faults).toEqual([]);
  expect(gap).toBeLessThan(2e-6);
});

describe("letters and instances", () => {
  it.each<readonly [string, RegExp | string, string | ((found: string) => string), RegExp]>([
    ["no first line", "ISO-10303-21;", "ISO-10303-22;", /line 1: expected ISO-10303-21/],
    ["no last line", "END-ISO-10303-21;", "END;", /last line/],
    [
      "an integer for a real",
      /CIRCLE\('',(#\d+),[\d.]+\)/,
      "CIRCLE('',$1,21)",
      /CIRCLE attribute 3: expected real/,
    ],
    ["a real without its point", /EDGE_CURVE\('',#\d+/, "EDGE_CURVE('',1e3", /no token|expected/],
    [
      "a lower-case exponent",
      /CIRCLE\('',(#\d+),[\d.]+\)/,
      "CIRCLE('',$1,2.1e1)",
      /expected \)|no token|expected ,/,
    ],
    ["a letter outside of ASCII", "'A'", "'Ä'", /no token/],
    [
      "an attribute too few",
      /VERTEX_POINT\('',(#\d+)\)/,
      "VERTEX_POINT($1)",
      /VERTEX_POINT: expected 2 attributes, got 1/,
    ],
    [
      "an attribute too many",
      /VERTEX_POINT\('',(#\d+)\)/,
      "VERTEX_POINT('',$1,.T.)",
      /expected 2 attributes, got 3/,
    ],
    ["an unknown entity", "CLOSED_SHELL(", "CLOSED_SHELF(", /unknown entity CLOSED_SHELF/],
    [
      "a reference to nothing",
      /VERTEX_POINT\('',#\d+\)/,
      "VERTEX_POINT('',#999999)",
      /#999999 does not exist/,
    ],
    [
      "a reference to the wrong thing",
      /CLOSED_SHELL\('',\(#\d+/,
      "CLOSED_SHELL('',(#1",
      /expected a ADVANCED_FACE/,
    ],
    ["an instance given twice", /#(\d+)=PLANE/, "#1=PLANE", /#1 is given twice|does not exist/],
    ["a flag that is none", ",.T.);", ",.Y.);", /boolean/],
    ["an unknown word", ".CURVE_3D.", ".CURVE_4D.", /expected CURVE_3D/],
    [
      "complex records out of order",
      "(LENGTH_UNIT()NAMED_UNIT(*)",
      "(NAMED_UNIT(*)LENGTH_UNIT()",
      /out of order/,
    ],
    ["a unit without its kind", "(LENGTH_UNIT()NAMED_UNIT(*)", "(NAMED_UNIT(*)", /no complex instance/],
    [
      "an instance nobody uses",
      "ENDSEC;\nEND-ISO",
      "#999999=DIRECTION('',(0.,0.,1.));\nENDSEC;\nEND-ISO",
      /used by nothing/,
    ],
    ["a header without its schema", /FILE_SCHEMA[^;]*;\n/, "", /header: expected/],
  ])("%s", (_, from, to, fault) => {
    expect(readStep(changed(from, to)).faults.join("\n")).toMatch(fault);
  });
});

describe("shapes", () => {
  const shifted = (pattern: RegExp, by: number) => (found: string) =>
    found.replace(pattern, (_, head: string, x: string) => `${head}${Number(x) + by}`);

  it("a control point of a pcurve a ten-thousandth off", () => {
    const [, id] = /=B_SPLINE_CURVE_WITH_KNOTS\('',5,\(#\d+,#\d+,#(\d+)[^;]*;\n#\d+=DEFINITIONAL/.exec(good)!;
    const point = new RegExp(`(#${id}=CARTESIAN_POINT\\('',\\([^,]+,)([^)]+)`);
    const look = lookAt(changed(point, shifted(point, 1e-4)));
    expect(look.gap).toBeGreaterThan(2e-6);
    expect(look.gap).toBeLessThan(1e-4);
  });

  it("a cylinder a hundredth too wide", () => {
    const pattern = /(CYLINDRICAL_SURFACE\('',#\d+,)([\d.]+)/;
    const look = lookAt(changed(pattern, shifted(pattern, 0.01)));
    expect(look.offSurface).toBeCloseTo(0.01, 6);
  });

  it("a vertex a ten-thousandth off", () => {
    const [, id] = /VERTEX_POINT\('',#(\d+)\)/.exec(good)!;
    const point = new RegExp(`(#${id}=CARTESIAN_POINT\\('',\\()([^,]+)`);
    expect(lookAt(changed(point, shifted(point, 1e-4))).offVertex).toBeGreaterThan(1e-5);
  });

  it("an edge taken the wrong way round", () => {
    const { faults } = lookAt(changed(/(ORIENTED_EDGE\('',\*,\*,#\d+,)\.T\./, "$1.F."));
    expect(faults.join("\n")).toMatch(/used -1, -1/);
    expect(faults.join("\n")).toMatch(/does not join/);
  });

  it("a face left out", () => {
    expect(lookAt(changed(/CLOSED_SHELL\('',\(#\d+,/, "CLOSED_SHELL('',(")).faults.join("\n")).toMatch(
      /used -?1$/m,
    );
  });

  it("an edge without its pcurves", () => {
    const text = changed(/SURFACE_CURVE\('',(#\d+),\((#\d+),#\d+\)/, "SURFACE_CURVE('',$1,($2)");
    expect(lookAt(text).faults.join("\n")).toMatch(/no pcurve on/);
  });

  it("loops that all run the wrong way: a volume below zero", () => {
    const text = good.replace(
      /(ORIENTED_EDGE\('',\*,\*,#\d+,)\.(T|F)\./g,
      (_, head: string, flag: string) => `${head}.${flag === "T" ? "F" : "T"}.`,
    );
    expect(lookAt(text).volume).toBeLessThan(0);
  });
});

describe("the general reader", () => {
  let reader: StepReader;
  beforeAll(async () => {
    reader = await loadStepReader();
  }, 60_000);

  it("takes the good file for one closed valid solid, and none of these", () => {
    const sound = (text: string): boolean => {
      const found = reader(text);
      return found?.length === 1 && found[0]!.valid && found[0]!.closed;
    };
    expect(sound(good)).toBe(true);
    expect(sound(changed(/CLOSED_SHELL\('',\(#\d+,/, "CLOSED_SHELL('',("))).toBe(false);
    expect(sound(changed("AXIS2_PLACEMENT_3D", "AXIS2_PLACEMENT_3E"))).toBe(false);
    expect(sound(changed(/DATA;\n/, ""))).toBe(false);
  });
});
