// What the guard stands on, drawn faintly: steps, landing and wall, from the design. What a design does not say (thickness of a
// step, height of the wall, how deep the landing is) is chosen for the picture.

const STEP = { colour: [0.93, 0.92, 0.9], tone: { low: 0.9, high: 1.06 }, faint: true };
/** mm, of the picture alone. */
const [WIDTH, THICK, RISER, BESIDE, DEEP] = [760, 45, 12, 90, 1000];

/** Bodies of the stair of a parsed design, in the layout's frame. */
export function stairBodies(design, report) {
  // The guard stands at y = 0 and its open side is left (+y) or right (−y) of it: steps lie on the other side.
  const open = design.side === "left" ? 1 : -1;
  const across = [-open * WIDTH, open * BESIDE].sort((a, b) => a - b);
  const { nosings, going, riser } = report;
  const { overhang } = design.stair;
  const landing = design.legs.find((leg) => leg.along === "landing");
  // A guard that turns goes on along the landing's edge: the landing reaches as far as it does.
  const turned = landing?.turn !== undefined;
  if (turned) across[open === 1 ? 1 : 0] = open * BESIDE;
  const bodies = nosings.flatMap(({ x, z }, i) => {
    const isLast = i === nosings.length - 1;
    const end = isLast ? x + (turned ? DEEP : (landing?.length ?? going)) : x + going + overhang;
    const far = isLast && turned ? [across[0], open * landing.length].sort((a, b) => a - b) : across;
    return [
      box(STEP, [x, far[0], z - THICK], [end, far[1], z]),
      box(STEP, [x + overhang, across[0], z - riser], [x + overhang + RISER, across[1], z - THICK]),
    ];
  });
  const floor = nosings[0].z - riser;
  bodies.push(
    box(STEP, [nosings[0].x - 420, across[0], floor - THICK], [nosings[0].x + going, across[1], floor]),
  );
  if (landing?.end?.type === "wall" && turned) {
    const y = open * landing.length;
    const [low, high] = [y, y + open * 60].sort((a, b) => a - b);
    bodies.push(box(STEP, [0, low, -THICK], [DEEP, high, landing.top + 260]));
  } else if (landing?.end?.type === "wall") {
    const x = landing.length;
    bodies.push(box(STEP, [x, across[0], -THICK], [x + 60, across[1], landing.top + 260]));
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
