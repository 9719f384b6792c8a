// What the guard stands on, drawn faintly: steps and landing, base plates, end plate and wall, all from the design. The
// design has no stair width, thickness of a step or height of the wall: those are chosen for the picture.

const STEP = { colour: [0.93, 0.92, 0.9], tone: { low: 0.9, high: 1.06 }, faint: true };
const PLATE = { colour: [0.66, 0.67, 0.69], tone: { low: 0.75, high: 1.1 }, faint: true };
/** mm, of the picture alone. */
const [WIDTH, THICK, RISER, BESIDE] = [760, 45, 12, 90];

/** Bodies of the stair of a parsed design, in the layout's frame. */
export function stairBodies(design, report) {
  // The guard stands at y = 0 and its open side is left (+y) or right (−y) of it: steps lie on the other side.
  const open = design.side === "left" ? 1 : -1;
  const across = [-open * WIDTH, open * BESIDE].sort((a, b) => a - b);
  const { nosings, going, riser, posts } = report;
  const { overhang } = design.stair;
  const landing = design.legs.find((leg) => leg.along === "landing");
  const bodies = nosings.flatMap(({ x, z }, i) => {
    const isLast = i === nosings.length - 1;
    const end = isLast ? x + (landing?.length ?? going) : x + going + overhang;
    return [
      box(STEP, [x, across[0], z - THICK], [end, across[1], z]),
      box(STEP, [x + overhang, across[0], z - riser], [x + overhang + RISER, across[1], z - THICK]),
    ];
  });
  const floor = nosings[0].z - riser;
  bodies.push(
    box(STEP, [nosings[0].x - 420, across[0], floor - THICK], [nosings[0].x + going, across[1], floor]),
  );
  const { thickness, along = 0, across: wide = along } = design.foot;
  for (const post of thickness > 0 ? posts : []) {
    const { x, baseZ: z } = post;
    bodies.push(box(PLATE, [x - along / 2, -wide / 2, z], [x + along / 2, wide / 2, z + thickness]));
  }
  if (landing?.end?.type === "wall") {
    const { endPlate } = landing.end;
    const [x, z, half] = [landing.length, landing.top, 55];
    bodies.push(box(STEP, [x, across[0], -THICK], [x + 60, across[1], z + 260]));
    if (endPlate > 0) {
      const middle = z - 24;
      bodies.push(box(PLATE, [x - endPlate, -half, middle - half], [x, half, middle + half]));
    }
  }
  return bodies;
}

/** A box between two corners, as a closed mesh. */
function box(look, [x0, y0, z0], [x1, y1, z1]) {
  const points = [x0, x1].flatMap((x) => [y0, y1].flatMap((y) => [z0, z1].map((z) => [x, y, z])));
  const sides = [
    [0, 1, 3, 2],
    [4, 6, 7, 5],
    [0, 4, 5, 1],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 5, 7, 3],
  ];
  return {
    ...look,
    points,
    triangles: sides.flatMap(([a, b, c, d]) => [
      [a, b, c],
      [a, c, d],
    ]),
  };
}
