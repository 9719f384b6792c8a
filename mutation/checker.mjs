// A checker for Stryker that lets through the sampled mutants alone.
//
// A range of source holds more mutants than the one that was drawn: other replacements, and whatever is nested in it. Those
// are turned away here as if they did not compile, which keeps them out of the score.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { commonTokens, declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import { keyOf } from "./sample.mjs";

class SampleChecker {
  static inject = [commonTokens.options];
  #keys;
  #root;

  constructor({ sample }) {
    this.#root = pathToFileURL(`${sample.root}/`);
    this.#keys = new Set(JSON.parse(readFileSync(sample.file, "utf8")));
  }

  async init() {}

  async check(mutants) {
    return Object.fromEntries(mutants.map((mutant) => [mutant.id, this.#verdict(mutant)]));
  }

  async group(mutants) {
    return [mutants.map((m) => m.id)];
  }

  #verdict(mutant) {
    return this.#keys.has(keyOf(this.#root, mutant))
      ? { status: "passed" }
      : { status: "compileError", reason: "not drawn" };
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, "sample", SampleChecker)];
