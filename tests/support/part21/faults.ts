/** What is wrong with a file's instances: unknown entities, counts and types of attributes, references, instances nobody uses. */
import { COMPLEX, ENTITIES, KINDS, ROOTS, type Wanted } from "./entities.js";
import type { Exchange, Instance, PartRecord, Value } from "./parse.js";

/** All faults of an exchange, each with its instance and line. */
export function faultsOf({ header, instances }: Exchange): string[] {
  const out: string[] = [...headerFaults(header)];
  const used = new Set<number>();
  for (const instance of instances.values()) {
    const say = (what: string): void => {
      out.push(`line ${instance.line}: #${instance.id} ${what}`);
    };
    const names = instance.records.map((r) => r.type);
    if (names.length > 1) {
      if (names.join() !== [...names].sort().join()) say("has its records out of order");
      if (!COMPLEX.has([...names].sort().join(" "))) say(`is no complex instance known: ${names.join(" ")}`);
    }
    for (const record of instance.records) checkRecord(record, instances, used, say);
  }
  for (const { id, line, records } of instances.values()) {
    if (!used.has(id) && !records.some((r) => ROOTS.has(r.type)))
      out.push(`line ${line}: #${id} ${records[0]?.type} is used by nothing`);
  }
  return out;
}

function headerFaults(header: readonly PartRecord[]): string[] {
  const wanted: Readonly<Record<string, readonly Wanted[]>> = {
    FILE_DESCRIPTION: [{ list: "string", least: 1, most: 99 }, "string"],
    FILE_NAME: [
      "string",
      "string",
      { list: "string", least: 1, most: 99 },
      { list: "string", least: 1, most: 99 },
      "string",
      "string",
      "string",
    ],
    FILE_SCHEMA: [{ list: "string", least: 1, most: 1 }],
  };
  const names = header.map((r) => r.type).join();
  if (names !== Object.keys(wanted).join()) return [`header: expected ${Object.keys(wanted)}, got ${names}`];
  const out: string[] = [];
  for (const { type, args } of header)
    checkArgs(type, args, wanted[type] as readonly Wanted[], new Map(), new Set(), (what) =>
      out.push(`header: ${what}`),
    );
  return out;
}

type Say = (what: string) => void;
type Instances = ReadonlyMap<number, Instance>;

function checkRecord({ type, args }: PartRecord, all: Instances, used: Set<number>, say: Say): void {
  const wanted = ENTITIES[type];
  if (!wanted) say(`is of an unknown entity ${type}`);
  else checkArgs(type, args, wanted, all, used, say);
}

function checkArgs(
  type: string,
  args: readonly Value[],
  wanted: readonly Wanted[],
  all: Instances,
  used: Set<number>,
  say: Say,
): void {
  if (args.length !== wanted.length) say(`${type}: expected ${wanted.length} attributes, got ${args.length}`);
  wanted.forEach((w, i) => {
    const arg = args[i];
    if (arg) checkValue(`${type} attribute ${i + 1}`, arg, w, all, used, say);
  });
}

function checkValue(where: string, v: Value, w: Wanted, all: Instances, used: Set<number>, say: Say): void {
  const wrong = (expected: string): void => say(`${where}: expected ${expected}, got ${JSON.stringify(v)}`);
  if (w === "string" || w === "integer" || w === "real" || w === "derived") {
    if (v.kind !== w) wrong(w);
  } else if (w === "boolean" || w === "logical") {
    const known = w === "boolean" ? ["T", "F"] : ["T", "F", "U"];
    if (v.kind !== "enumeration" || !known.includes(v.value)) wrong(w);
  } else if ("enumeration" in w) {
    if (v.kind !== "enumeration" || !w.enumeration.includes(v.value)) wrong(w.enumeration.join("|"));
  } else if ("optional" in w) {
    if (v.kind !== "unset" && v.kind !== "derived") checkValue(where, v, w.optional, all, used, say);
  } else if ("measure" in w) {
    if (v.kind !== "typed" || v.type !== w.measure || v.value.kind !== "real") wrong(`${w.measure}(real)`);
  } else if ("list" in w) {
    if (v.kind !== "list") {
      wrong("a list");
      return;
    }
    if (v.items.length < w.least || v.items.length > w.most) wrong(`${w.least} to ${w.most} items`);
    for (const item of v.items) checkValue(where, item, w.list, all, used, say);
  } else {
    if (v.kind !== "ref") {
      wrong(`a ${w.ref.join("|")}`);
      return;
    }
    used.add(v.id);
    const target = all.get(v.id);
    const kinds = target?.records.flatMap((r) => [r.type, ...(KINDS[r.type] ?? [])]) ?? [];
    if (!target) say(`${where}: #${v.id} does not exist`);
    else if (!kinds.some((k) => w.ref.includes(k))) wrong(`a ${w.ref.join("|")}, not a ${kinds[0]}`);
  }
}
