/**
 * A random case as the joint solver is asked for it: members in a layout turned any way, and joints with names.
 */
import { type Joint, type JointModel, type Piece, solveJoints } from "../../src/joints/index.js";
import type { Result, Vec3 } from "../../src/kernel/index.js";
import { type Member, member } from "../../src/members/index.js";
import { cross3, dot3, type EndCase, sectionOf } from "../support/joint-case.js";
import type { FuzzCase } from "./domain.js";

/** Turns vectors about an axis (Rodrigues' formula). */
export function turning({ axis, angle }: FuzzCase["pose"]): (p: Vec3) => Vec3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return (p) => {
    const [x, k] = [cross3(axis, p), dot3(axis, p) * (1 - c)];
    const at = (i: 0 | 1 | 2) => p[i] * c + x[i] * s + axis[i] * k;
    return [at(0), at(1), at(2)];
  };
}

/** mm from a header's own point to each of its ends. */
const HALF = 1500;

/** One header, or several of which the nearest counts, or one plane: what a joint can ask for. */
function contactsOf(e: EndCase): readonly EndCase[] | null {
  if (e.kind === "plane" || e.kind === "hit") return [e];
  if (e.kind === "select" || e.kind === "max" || !e.of.every((x) => x.kind === "hit")) return null;
  const [first] = e.of;
  const alike = e.of.every(
    (x) => x.kind === "hit" && first?.kind === "hit" && x.header.gap === first.header.gap,
  );
  return alike ? e.of : null;
}

/** The case as members and joints; null where no joint can say it. */
export function modelOf({ joint, pose, profile }: FuzzCase): JointModel | null {
  // Its box is not on the axis the section words would put it on.
  if (profile) return null;
  const place = turning(pose);
  const members: Member[] = [];
  const joints: Joint[] = [];
  const tips: Vec3[] = [];
  for (const [index, e] of joint.ends.entries()) {
    const end = { member: "B", end: index as 0 | 1 };
    const contacts = contactsOf(e);
    const [first] = contacts ?? [];
    if (!contacts || !first) return null;
    if (first.kind === "plane") {
      tips.push([0, 0, first.point[2]]);
      const cut = { type: "plane" as const, normal: place(first.normal) };
      joints.push({ kind: "cut", id: `J${index}`, end, cut, at: place(first.point) });
      continue;
    }
    const onto: string[] = [];
    for (const [k, x] of contacts.entries()) {
      if (x.kind !== "hit") return null;
      const { outline, at, axis, across } = x.header;
      const id = `H${index}${k}`;
      const along = (t: number): Vec3 =>
        place([at[0] + t * axis[0], at[1] + t * axis[1], at[2] + t * axis[2]]);
      const up = place(cross3(axis, across));
      members.push(
        member({ id, section: sectionOf({ outer: outline }), from: along(-HALF), to: along(HALF), up }),
      );
      // What headers do with each other is none of the case: their free ends are cut square.
      for (const far of [0, 1] as const) {
        const free = { member: id, end: far };
        joints.push({ kind: "cut", id: `${id}/${far}`, end: free, cut: { type: "square" } });
      }
      onto.push(id);
    }
    if (first.kind !== "hit") return null;
    const { at, gap, shoulder } = first.header;
    tips.push([0, 0, at[2]]);
    const closed = shoulder ? { shoulder: "midline" as const } : {};
    joints.push({ kind: "cope", id: `J${index}`, end, onto, gap, ...closed });
  }
  const [from, to] = tips.map(place) as [Vec3, Vec3];
  const section = sectionOf(joint.section);
  return { members: [member({ id: "B", section, from, to, up: place([0, 1, 0]) }), ...members], joints };
}

/** The branch as the solver cuts it, or why it does not; null where no joint can ask for it. */
export function pieceOf(c: FuzzCase): Result<Piece> | null {
  const model = modelOf(c);
  if (!model) return null;
  const { pieces, diagnostics } = solveJoints(model);
  const found = diagnostics.filter((d) => d.members.includes("B"));
  const piece = pieces.find((p) => p.id === "B");
  const ok = piece?.status === "ok" && found.every((d) => d.severity !== "error");
  return ok ? { ok, value: piece, diagnostics: found } : { ok: false, diagnostics: found };
}
