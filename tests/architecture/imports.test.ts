/**
 * Dependencies point one way: kernel <- members <- joints <- layout <- shop, checks <- cli, and export sees the
 * kernel alone. No room and no file is part of an import cycle. Each check is also shown to fail on a made-up tree.
 */
import { describe, expect, it } from "vitest";
import { parseModule, readSources, roomOf, type SourceModule } from "./sources.js";

const BELOW: Readonly<Record<string, readonly string[]>> = {
  kernel: [],
  members: ["kernel"],
  joints: ["kernel", "members"],
  layout: ["kernel", "members", "joints"],
  shop: ["kernel", "members", "joints", "layout"],
  checks: ["kernel", "members", "joints", "layout"],
  export: ["kernel"],
  cli: ["kernel", "members", "joints", "layout", "shop", "checks", "export", "root"],
  root: ["kernel", "members", "joints", "layout", "shop", "checks", "export"],
};

function upwardImports(modules: readonly SourceModule[]): string[] {
  return modules.flatMap((module) => {
    const room = roomOf(module.path);
    const allowed = BELOW[room];
    if (allowed === undefined) return [`${module.path}: unknown room`];
    return module.local
      .filter((target) => !target.startsWith("../shared/"))
      .filter((target) => roomOf(target) !== room && !allowed.includes(roomOf(target)))
      .map((target) => `${module.path} -> ${target}`);
  });
}

/** The first cycle found in a graph of names, as the list of names it runs through; empty when there is none. */
function firstCycle(edges: ReadonlyMap<string, readonly string[]>): string[] {
  const done = new Set<string>();
  const walk = (name: string, trail: readonly string[]): string[] => {
    const at = trail.indexOf(name);
    if (at >= 0) return [...trail.slice(at), name];
    if (done.has(name)) return [];
    for (const next of edges.get(name) ?? []) {
      const cycle = walk(next, [...trail, name]);
      if (cycle.length > 0) return cycle;
    }
    done.add(name);
    return [];
  };
  for (const name of edges.keys()) {
    const cycle = walk(name, []);
    if (cycle.length > 0) return cycle;
  }
  return [];
}

const fileGraph = (modules: readonly SourceModule[]) => new Map(modules.map((m) => [m.path, m.local]));

function roomGraph(modules: readonly SourceModule[]): Map<string, string[]> {
  const graph = new Map<string, string[]>();
  for (const { path, local } of modules) {
    const room = roomOf(path);
    const others = local.filter((target) => !target.startsWith("../")).map(roomOf);
    graph.set(room, [...(graph.get(room) ?? []), ...others.filter((other) => other !== room)]);
  }
  return graph;
}

describe("imports of the source tree", () => {
  const modules = readSources();
  const known = new Set(modules.map((module) => module.path));

  it("reads a tree with files and imports in it", () => {
    expect(modules.length).toBeGreaterThan(10);
    expect(modules.flatMap((module) => module.local).length).toBeGreaterThan(10);
  });

  it("never imports upward, and export sees the kernel alone", () => {
    expect(upwardImports(modules)).toEqual([]);
  });

  it("has no import cycle between files or rooms", () => {
    expect(firstCycle(fileGraph(modules))).toEqual([]);
    expect(firstCycle(roomGraph(modules))).toEqual([]);
  });

  it("names existing files only, with their extension, and leaves src for the shared tables alone", () => {
    const wrong = modules.flatMap(({ path, local }) =>
      local
        .filter((target) => !known.has(target) && !/^\.\.\/shared\/.+\.json$/.test(target))
        .map((target) => `${path} -> ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it("keeps adapters out of the export entry and of every other room", () => {
    const wrong = modules
      .filter(({ path }) => !path.startsWith("export/adapters/") && !path.startsWith("cli/"))
      .filter(({ local }) => local.some((target) => target.startsWith("export/adapters/")))
      .map(({ path }) => path);
    expect(wrong).toEqual([]);
  });
});

describe("the checks themselves", () => {
  it("see an upward import in every form", () => {
    const forms = [
      'import { b } from "../members/b.js";',
      'import type { B } from "../members/b.js";',
      'export { b } from "../members/b.js";',
      'export type { B } from "../members/b.js";',
      'export * from "../members/b.js";',
      'const b = import("../members/b.js");',
    ];
    for (const text of forms) {
      expect(upwardImports([parseModule("kernel/a.ts", text)])).toEqual(["kernel/a.ts -> members/b.ts"]);
    }
    expect(upwardImports([parseModule("members/a.ts", 'import "../kernel/b.js";')])).toEqual([]);
    expect(upwardImports([parseModule("export/a.ts", 'import "../members/b.js";')])).toHaveLength(1);
    expect(upwardImports([parseModule("attic/a.ts", "")])).toEqual(["attic/a.ts: unknown room"]);
  });

  it("see a cycle of files, and one of rooms whose files have none", () => {
    const loop = [
      parseModule("kernel/a.ts", 'import "./b.js";'),
      parseModule("kernel/b.ts", 'import type { C } from "./c.js";'),
      parseModule("kernel/c.ts", 'export * from "./a.js";'),
    ];
    expect(firstCycle(fileGraph(loop))).toEqual(["kernel/a.ts", "kernel/b.ts", "kernel/c.ts", "kernel/a.ts"]);
    const rooms = [
      parseModule("kernel/a.ts", 'import "../joints/b.js";'),
      parseModule("joints/b.ts", ""),
      parseModule("joints/c.ts", 'import "../kernel/d.js";'),
      parseModule("kernel/d.ts", ""),
    ];
    expect(firstCycle(fileGraph(rooms))).toEqual([]);
    expect(firstCycle(roomGraph(rooms))).toEqual(["kernel", "joints", "kernel"]);
  });
});
