/**
 * A strict reader of ISO 10303-21 clear text: the exchange structure, letter by letter, into instances.
 *
 * Written from the grammar of the standard (2002 edition, from memory), sharing no code with the writer. It is stricter than readers
 * in use: what the grammar does not allow is a fault with its line.
 */

/** A parameter as it stands. */
export type Value =
  | { readonly kind: "integer" | "real"; readonly value: number }
  | { readonly kind: "string" | "enumeration"; readonly value: string }
  | { readonly kind: "ref"; readonly id: number }
  | { readonly kind: "list"; readonly items: readonly Value[] }
  | { readonly kind: "typed"; readonly type: string; readonly value: Value }
  | { readonly kind: "unset" | "derived" };

/** A simple record, e.g. `DIRECTION('',(0.,0.,1.))`. */
export interface PartRecord {
  readonly type: string;
  readonly args: readonly Value[];
}

/** One instance: one record, or several of a complex instance. */
export interface Instance {
  readonly id: number;
  readonly line: number;
  readonly records: readonly PartRecord[];
}

/** A whole file. */
export interface Exchange {
  readonly header: readonly PartRecord[];
  readonly instances: ReadonlyMap<number, Instance>;
}

/** What is wrong with the letters of a file. */
export class Part21Fault extends Error {}

const TOKENS: readonly (readonly [string, RegExp])[] = [
  ["space", /[ \n]+/y],
  ["real", /[+-]?\d+\.\d*(?:E[+-]?\d+)?/y],
  ["integer", /[+-]?\d+/y],
  ["ref", /#\d+/y],
  [
    "string",
    /'(?:[\x20-\x26\x28-\x5b\x5d-\x7e]|''|\\\\|\\X2\\(?:[0-9A-F]{4})+\\X0\\|\\X4\\(?:[0-9A-F]{8})+\\X0\\)*'/y,
  ],
  ["enumeration", /\.[A-Z][A-Z0-9_]*\./y],
  ["word", /[A-Z][A-Z0-9_]*/y],
  ["mark", /[(),;=$*]/y],
];

interface Token {
  readonly kind: string;
  readonly text: string;
  readonly line: number;
}

function* tokensOf(text: string): Generator<Token> {
  let [at, line] = [0, 1];
  while (at < text.length) {
    let found: Token | undefined;
    for (const [kind, pattern] of TOKENS) {
      pattern.lastIndex = at;
      const match = pattern.exec(text);
      if (!match) continue;
      found = { kind, text: match[0], line };
      break;
    }
    if (!found)
      throw new Part21Fault(`line ${line}: no token begins with ${JSON.stringify(text.slice(at, at + 12))}`);
    at += found.text.length;
    line += found.text.split("\n").length - 1;
    if (found.kind !== "space") yield found;
  }
}

/** Letters of a string token. */
function unspelt(token: string): string {
  return token
    .slice(1, -1)
    .replace(
      /''|\\\\|\\X2\\([0-9A-F]+)\\X0\\|\\X4\\([0-9A-F]+)\\X0\\/g,
      (all, four?: string, eight?: string) => {
        const hex = four ?? eight;
        if (hex === undefined) return all[0] as string;
        const size = four === undefined ? 8 : 4;
        const codes = hex.match(new RegExp(`.{${size}}`, "g")) ?? [];
        return codes.map((c) => String.fromCodePoint(Number.parseInt(c, 16))).join("");
      },
    );
}

const START = "ISO-10303-21;\n";
const END = "END-ISO-10303-21;\n";

/** Reads a file; throws `Part21Fault` at the first letter that is wrong. */
export function parsePart21(text: string): Exchange {
  if (!text.startsWith(START)) throw new Part21Fault(`line 1: expected ${START.trim()}`);
  if (!text.endsWith(END)) throw new Part21Fault(`last line: expected ${END.trim()}`);
  const tokens = [...tokensOf(text.slice(START.length, -END.length))];
  let at = 0;
  const fault = (wanted: string): never => {
    const t = tokens[at];
    throw new Part21Fault(`line ${(t?.line ?? 0) + 1}: expected ${wanted}, got ${t?.text ?? "the end"}`);
  };
  const take = (wanted: string): void => {
    if (tokens[at]?.text !== wanted) fault(wanted);
    at++;
  };
  const is = (mark: string): boolean => tokens[at]?.text === mark;

  const list = (): Value[] => {
    take("(");
    const items: Value[] = [];
    while (!is(")")) {
      if (items.length > 0) take(",");
      items.push(value());
    }
    take(")");
    return items;
  };
  const value = (): Value => {
    const t = tokens[at];
    if (t === undefined) return fault("a parameter");
    if (t.text === "(") return { kind: "list", items: list() };
    at++;
    switch (t.kind) {
      case "real":
      case "integer":
        return { kind: t.kind, value: Number(t.text) };
      case "string":
        return { kind: "string", value: unspelt(t.text) };
      case "enumeration":
        return { kind: "enumeration", value: t.text.slice(1, -1) };
      case "ref":
        return { kind: "ref", id: Number(t.text.slice(1)) };
      case "word": {
        const inner = list();
        if (inner.length !== 1) fault(`one value in ${t.text}(…)`);
        return { kind: "typed", type: t.text, value: inner[0] as Value };
      }
      default:
        if (t.text === "$") return { kind: "unset" };
        if (t.text === "*") return { kind: "derived" };
        at--;
        return fault("a parameter");
    }
  };
  const record = (): PartRecord => {
    const t = tokens[at];
    if (t?.kind !== "word") return fault("a record");
    at++;
    return { type: t.text, args: list() };
  };

  take("HEADER");
  take(";");
  const header: PartRecord[] = [];
  while (!is("ENDSEC")) {
    header.push(record());
    take(";");
  }
  take("ENDSEC");
  take(";");
  take("DATA");
  take(";");
  const instances = new Map<number, Instance>();
  while (!is("ENDSEC")) {
    const t = tokens[at];
    if (t?.kind !== "ref") return fault("an instance");
    const id = Number(t.text.slice(1));
    at++;
    take("=");
    const records: PartRecord[] = [];
    if (is("(")) {
      at++;
      while (!is(")")) records.push(record());
      at++;
    } else records.push(record());
    take(";");
    if (instances.has(id)) throw new Part21Fault(`line ${t.line + 1}: #${id} is given twice`);
    instances.set(id, { id, line: t.line + 1, records });
  }
  take("ENDSEC");
  take(";");
  if (at !== tokens.length) fault("nothing after the data");
  return { header, instances };
}
