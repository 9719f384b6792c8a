/** Walking an exchange: attributes of instances by place, with the type they must have. */
import type { Exchange, Instance, Value } from "./parse.js";

/** An exchange one can walk. */
export class Graph {
  constructor(readonly exchange: Exchange) {}

  /** Instances of an entity, in the file's order. */
  all(type: string): Instance[] {
    return [...this.exchange.instances.values()].filter((i) => i.records.some((r) => r.type === type));
  }

  get(id: number): Instance {
    const found = this.exchange.instances.get(id);
    if (!found) throw new Error(`#${id} does not exist`);
    return found;
  }

  is(id: number, type: string): boolean {
    return this.get(id).records.some((r) => r.type === type);
  }

  type(id: number): string {
    return this.get(id).records[0]?.type as string;
  }

  /** Attribute `place` of the record of an entity (the first when none is named). */
  attr(id: number, place: number, type?: string): Value {
    const { records } = this.get(id);
    const record = type === undefined ? records[0] : records.find((r) => r.type === type);
    const value = record?.args[place];
    if (!value) throw new Error(`#${id} has no attribute ${place}`);
    return value;
  }

  ref(id: number, place: number, type?: string): number {
    const v = this.attr(id, place, type);
    if (v.kind !== "ref") throw new Error(`#${id}: attribute ${place} is no reference`);
    return v.id;
  }

  refs(id: number, place: number): number[] {
    const v = this.attr(id, place);
    if (v.kind !== "list") throw new Error(`#${id}: attribute ${place} is no list`);
    return v.items.map((item) => (item.kind === "ref" ? item.id : Number.NaN));
  }

  number(id: number, place: number): number {
    const v = this.attr(id, place);
    if (v.kind !== "real" && v.kind !== "integer") throw new Error(`#${id}: attribute ${place} is no number`);
    return v.value;
  }

  numbers(id: number, place: number): number[] {
    const v = this.attr(id, place);
    if (v.kind !== "list") throw new Error(`#${id}: attribute ${place} is no list`);
    return v.items.map((item) => (item.kind === "real" || item.kind === "integer" ? item.value : Number.NaN));
  }

  text(id: number, place: number): string {
    const v = this.attr(id, place);
    if (v.kind !== "string") throw new Error(`#${id}: attribute ${place} is no text`);
    return v.value;
  }

  flag(id: number, place: number): boolean {
    const v = this.attr(id, place);
    return v.kind === "enumeration" && v.value === "T";
  }
}
