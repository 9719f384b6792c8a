/**
 * Small models for the tests of this folder: members on a few lines, and what the solver made of them.
 */
import { readFileSync } from "node:fs";
import {
  type Joint,
  type JointRules,
  type JointSolution,
  type Piece,
  solveJoints,
} from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { buildGuard } from "../../src/layout/index.js";
import {
  type Member,
  type MemberInput,
  member,
  rectBar,
  rectTube,
  roundBar,
  roundTube,
} from "../../src/members/index.js";

export const RAD = Math.PI / 180;
export const INCH = 25.4;

/** Equal tubes, a thinner one, and rectangles with sharp corners, so that closed forms need no radii. */
export const TUBE48 = roundTube({ od: 48.3, wall: 3.2 });
export const TUBE42 = roundTube({ od: 42.4, wall: 3.2 });
export const TUBE60 = roundTube({ od: 60.3, wall: 3.6 });
export const BAR20 = roundBar({ od: 20 });
export const SQUARE40 = rectTube({ width: 40, depth: 40, wall: 3, outerRadius: 0, innerRadius: 0 });
export const RECT60X30 = rectTube({ width: 60, depth: 30, wall: 3, outerRadius: 0, innerRadius: 0 });
export const FLAT = rectBar({ width: 10, depth: 40 });

type Extra = Partial<Omit<MemberInput, "id" | "from" | "to">>;

export function rail(id: string, from: Vec3, to: Vec3, extra: Extra = {}): Member {
  return member({ id, section: TUBE48, role: "top-rail", ...extra, from, to });
}

export function post(id: string, from: Vec3, to: Vec3, extra: Extra = {}): Member {
  return member({ id, section: TUBE42, role: "post", ...extra, from, to });
}

export function solve(
  members: readonly Member[],
  joints: readonly Joint[] = [],
  rules: JointRules = {},
): JointSolution {
  return solveJoints({ members, joints, rules });
}

export function codesOf({ diagnostics }: JointSolution): string[] {
  return diagnostics.map((d) => d.code);
}

/** A piece by its id; throws when there is none, so that a misspelt id cannot pass. */
export function pieceOf({ pieces }: { readonly pieces: readonly Piece[] }, id: string): Piece {
  const found = pieces.find((p) => p.id === id);
  if (!found) throw new Error(`no piece ${id} among ${pieces.map((p) => p.id).join(", ")}`);
  return found;
}

/** The pieces of a model that must have no error. */
export function cutPieces(
  members: readonly Member[],
  joints: readonly Joint[] = [],
  rules: JointRules = {},
): Piece[] {
  const solved = solve(members, joints, rules);
  const errors = solved.diagnostics.filter((d) => d.severity === "error");
  if (errors.length > 0) throw new Error(errors.map((d) => `${d.code}: ${d.message}`).join("\n"));
  return [...solved.pieces];
}

/** Every number in a value, however deep. */
export function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** The pottery studio's guard. */
export function potteryGuard() {
  const text = readFileSync(new URL("../../examples/pottery-studio.json", import.meta.url), "utf8");
  return buildGuard(JSON.parse(text) as unknown);
}

/** A solution without its plates, and without the cuts to them: what `fit.ts` can judge. */
export function withoutPlates<T extends Pick<JointSolution, "pieces" | "contacts">>(solution: T): T {
  const pieces = solution.pieces.filter((p) => p.kind === "member");
  const ids = new Set(pieces.map((p) => p.id));
  return { ...solution, pieces, contacts: solution.contacts.filter((c) => ids.has(c.onto)) };
}
