// STEP of one solid: the package's text against OCCT's writer, each of its own exact solid; and of many posts, for the size.
//
// OCCT's shape is translated and written to a file in memory; a fresh writer each time, as one is needed for each file.
import { POST, posts } from "./jobs.mjs";
import { interleave } from "./measure.mjs";
import { build, buildRows } from "./ours.mjs";

const FILE = "/out.step";

/** Times and sizes of the drilled post by both, and the speed of ours over so many posts, written in chunks. */
export function measureStep(lib, occt, count, options) {
  const { solid } = build(lib, POST);
  const shape = occt.make(POST);
  const sizes = {};
  const ours = () => {
    const file = lib.toStep([{ name: "P", solid }]);
    if (!file.ok) throw new Error(file.diagnostics[0].message);
    sizes.ours = file.value.length;
  };
  const theirs = () => {
    sizes.occt = occt.writeStep(shape, FILE);
  };
  const times = interleave(
    [
      { key: "ours", run: ours },
      { key: "occt", run: theirs },
    ],
    options,
  );
  occt.free(shape);
  return { times, sizes, many: measureMany(lib, count) };
}

/** Pieces are solved first: what is timed is the making of solids one by one and the writing. */
function measureMany(lib, count) {
  const pieces = [];
  buildRows(lib, posts(count), (_, piece) => pieces.push(piece));
  function* items() {
    for (const piece of pieces) {
      const made = lib.solidOf(piece);
      if (made.ok) yield { name: piece.mark, solid: made.value, frame: piece.frame };
    }
  }
  const start = performance.now();
  let bytes = 0;
  for (const chunk of lib.stepChunks(items())) bytes += chunk.length;
  return { count, bytes, time: performance.now() - start };
}
