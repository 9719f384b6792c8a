/**
 * The tests that judge mutants: those of the rooms mutated, without the ones that read the sources as text or start processes.
 *
 * Short files come first: most mutants fall to the small test of their own file, and one failure is enough.
 */
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

class ShortestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).reverse();
  }
}

export default defineConfig({
  test: {
    setupFiles: ["tests/setup.ts"],
    include: ["tests/{kernel,members,joints}/**/*.test.ts"],
    environment: "node",
    testTimeout: 300_000,
    hookTimeout: 300_000,
    sequence: { sequencer: ShortestFirst },
  },
});
