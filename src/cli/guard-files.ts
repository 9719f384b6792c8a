/**
 * The files of a built guard, in memory: models, one mesh per piece, records and the cut list.
 *
 * @packageDocumentation
 */
import { railsAsLaid } from "../checks/index.js";
import { type NamedSolid, toObj, toStep, toStlBinary } from "../export/index.js";
import type { NamedMesh } from "../export/named.js";
import type { Piece } from "../joints/piece.js";
import { type Diagnostic, hasErrors, type Result } from "../kernel/diagnostic.js";
import { placeMesh } from "../kernel/mesh/mesh.js";
import { tessellate } from "../kernel/mesh/tessellate.js";
import { DEFAULT_SHOP, solved, solvedText } from "../layout/index.js";
import { basisText, buyingList, cutList, cutListText, pieceRecords } from "../shop/index.js";
import { fileNames } from "./file-names.js";
import type { Guard } from "./guard.js";
import { SOLVED_FILE } from "./load-solved.js";
import { generator } from "./version.js";
import type { OutputFile } from "./write-all.js";

/** Model formats that can be asked for. */
export const MODEL_FORMATS = ["stl", "obj", "step"] as const;
/** One of them. */
export type ModelFormat = (typeof MODEL_FORMATS)[number];

const MTL = "model.mtl";
const STEP = "model.step";
/** sRGB, 0 to 1: told apart on a screen and in grey. */
const COLOURS: Readonly<Record<string, readonly [number, number, number]>> = {
  "top-rail": [0.72, 0.45, 0.2],
  rail: [0.35, 0.5, 0.62],
  post: [0.3, 0.32, 0.34],
  other: [0.6, 0.6, 0.6],
};

/** All files of a guard, or what keeps them from being written. */
export function guardFiles(
  guard: Guard,
  options: { readonly chord: number; readonly formats: readonly ModelFormat[] },
): Result<readonly OutputFile[]> {
  const { chord, formats } = options;
  const meshed = formats.includes("stl") || formats.includes("obj");
  const own = meshed ? guard.pieces.flatMap((piece) => ownMesh(piece, guard, chord)) : [];
  const placed = own.map(({ piece, item }) => ({ ...item, mesh: placeMesh(item.mesh, piece.frame) }));
  const files: OutputFile[] = [];
  const diagnostics: Diagnostic[] = [];
  const keep = <T>(result: Result<T>, add: (value: T) => void) => {
    diagnostics.push(...result.diagnostics);
    if (result.ok) add(result.value);
  };
  if (formats.includes("stl")) {
    keep(toStlBinary(placed, { tolerance: chord }), (data) => files.push({ path: "model.stl", data }));
    const names = fileNames(own.map(({ piece }) => piece.mark));
    own.forEach(({ item }, i) => {
      keep(toStlBinary([item], { tolerance: chord }), (data) =>
        files.push({ path: `pieces/${names[i]}.stl`, data }),
      );
    });
  }
  if (formats.includes("obj")) {
    keep(toObj(placed, { mtlName: MTL }), ({ obj, mtl }) => {
      files.push({ path: "model.obj", data: obj }, { path: MTL, data: mtl });
    });
  }
  if (formats.includes("step")) {
    const name = guard.design.job === "" ? "guard" : guard.design.job;
    const solids = guard.pieces.flatMap((piece) => ownSolid(piece, guard));
    keep(toStep(solids, { name, fileName: STEP, generator: generator() }), (data) =>
      files.push({ path: STEP, data }),
    );
  }
  if (hasErrors(diagnostics)) return { ok: false, diagnostics };
  return { ok: true, value: [...files, ...papers(guard)], diagnostics };
}

function ownMesh(piece: Piece, guard: Guard, chord: number): { piece: Piece; item: NamedMesh }[] {
  const solid = guard.solids.get(piece.id);
  const colour = COLOURS[piece.role];
  if (!solid) return [];
  const mesh = tessellate(solid, { chord });
  return [{ piece, item: { name: piece.mark, mesh, material: piece.role, ...(colour && { colour }) } }];
}

function ownSolid(piece: Piece, guard: Guard): NamedSolid[] {
  const solid = guard.solids.get(piece.id);
  const colour = COLOURS[piece.role];
  if (!solid) return [];
  const { mark: name, frame, material } = piece;
  return [{ name, solid, frame, material, ...(colour && { colour }) }];
}

function papers(guard: Guard): OutputFile[] {
  const { design, report, shop, pieces, states, misfits, masses, carried, fits, warnings } = guard;
  const header = { generator: generator(), job: design.job };
  const kilograms = new Map([...masses].map(([id, m]) => [id, m.mass]));
  const list = cutList(pieces, { unit: design.unit, masses: kilograms, states });
  const { assemblies, loose } = carried;
  const buying = buyingList(pieces, kilograms, { ...(shop && { shop }) });
  const lying = railsAsLaid(report.laid, pieces, shop ?? DEFAULT_SHOP);
  return [
    {
      path: "pieces.json",
      data: `${JSON.stringify(pieceRecords(pieces, masses, { ...header, report, buying, assemblies, lying, fits, states }), null, 2)}\n`,
    },
    {
      path: SOLVED_FILE,
      data: solvedText(solved({ ...header, unit: design.unit, pieces, states, misfits })),
    },
    {
      path: "cutlist.txt",
      data: cutListText(list, {
        ...header,
        basis: basisText(report),
        ...(shop && { shop }),
        notes: warnings,
        settingOut: report,
        fits,
        assemblies,
        ...(loose && { loose }),
        lying,
        buying,
      }),
    },
  ];
}
