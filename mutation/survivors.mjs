// A readable list of what the tests did not notice, out of Stryker's report.

const CAUGHT = ["Killed", "Timeout"];
const MISSED = ["Survived", "NoCoverage"];

/** The sampled mutants of a report with their files. */
function mutantsOf(report) {
  return Object.entries(report.files).flatMap(([file, { source, mutants }]) =>
    mutants.map((mutant) => ({ ...mutant, file, lines: source.split("\n") })),
  );
}

/** What stands at a mutant's place; lines and columns count from 1. */
function original({ lines, location: { start, end } }) {
  const text = lines.slice(start.line - 1, end.line);
  text[text.length - 1] = text[text.length - 1].slice(0, end.column - 1);
  text[0] = text[0].slice(start.column - 1);
  return squeeze(text.join(" "));
}

const squeeze = (text) => text.replace(/\s+/g, " ").trim();

function entry(mutant) {
  const { file, location, mutatorName, replacement, status, coveredBy, lines } = mutant;
  return [
    `## ${file}:${location.start.line}:${location.start.column}, ${mutatorName}, ${status}`,
    `    ${lines[location.start.line - 1].trim()}`,
    `\`${original(mutant)}\` became \`${squeeze(replacement)}\`; ${coveredBy?.length ?? 0} tests go through it.`,
  ].join("\n\n");
}

/** The text of survivors.md, and the score in percent. */
export function survivors(report, { sample, seed, only, total }) {
  const all = mutantsOf(report);
  const of = (states) => all.filter((m) => states.includes(m.status));
  const [caught, missed] = [of(CAUGHT), of(MISSED)];
  const judged = caught.length + missed.length;
  const score = judged === 0 ? 0 : (100 * caught.length) / judged;
  const odd = of(["RuntimeError", "Pending"]);
  const text = [
    "# Mutants that no test noticed",
    `${sample} drawn with seed ${seed} from ${total} in ${only.join(", ")}: ${caught.length} noticed, ${missed.length} not` +
      `${odd.length > 0 ? `, ${odd.length} not judged` : ""}; score ${score.toFixed(1)} %.`,
    ...missed.map(entry),
  ].join("\n\n");
  return { text: `${text}\n`, score, judged };
}
