/**
 * A STEP text read by Open CASCADE Technology (npm replicad-opencascadejs): how many solids it finds, and what each is like.
 *
 * Bound in this build, and used: STEPControl_Reader over its file system, BRepCheck_Analyzer, BRepGProp, TopExp_Explorer. Not bound:
 * readers of names and colours; those are read by `part21`, and by the native program of the long proof.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import init, { type OpenCascadeInstance, type TopoDS_Shape } from "replicad-opencascadejs";

/** One solid as the reader sees it. */
export interface OcctSolid {
  readonly valid: boolean;
  /** Its one shell is closed. */
  readonly closed: boolean;
  /** mm³. */
  readonly volume: number;
  readonly faces: number;
}

/** Reads a text; null when the reader refuses it or finds no shape. */
export type StepReader = (text: string) => readonly OcctSolid[] | null;

/** Relative error the integration allows itself. */
const INTEGRAL = 1e-8;

/** Loads the kernel once. */
export async function loadStepReader(): Promise<StepReader> {
  const entry = createRequire(import.meta.url).resolve("replicad-opencascadejs");
  const wasmBinary = readFileSync(join(dirname(entry), "replicad_single.wasm"));
  const oc = await init({ wasmBinary });
  return (text) => read(oc, text);
}

function read(oc: OpenCascadeInstance, text: string): readonly OcctSolid[] | null {
  oc.FS.writeFile("/in.step", text);
  const reader = new oc.STEPControl_Reader();
  const status = reader.ReadFile("/in.step");
  const done = `${status}` === "IFSelect_RetDone" && reader.TransferRoots(new oc.Message_ProgressRange()) > 0;
  if (!done) return null;
  const solids = [...shapesOf(oc, reader.OneShape(), "TopAbs_SOLID")].map((solid): OcctSolid => {
    const shells = [...shapesOf(oc, solid, "TopAbs_SHELL")];
    const properties = new oc.GProp_GProps();
    oc.BRepGProp.VolumePropertiesGK(solid, properties, INTEGRAL, true, false, false, false, false);
    return {
      valid: new oc.BRepCheck_Analyzer(solid, true, false, false).IsValid(),
      closed: shells.length === 1 && oc.BRep_Tool.IsClosed(shells[0] as TopoDS_Shape),
      volume: properties.Mass(),
      faces: [...shapesOf(oc, solid, "TopAbs_FACE")].length,
    };
  });
  reader.delete();
  return solids;
}

function* shapesOf(
  oc: OpenCascadeInstance,
  shape: TopoDS_Shape,
  kind: "TopAbs_SOLID" | "TopAbs_SHELL" | "TopAbs_FACE",
): Generator<TopoDS_Shape> {
  const { TopAbs_ShapeEnum: kinds } = oc;
  const explorer = new oc.TopExp_Explorer(shape, kinds[kind], kinds.TopAbs_SHAPE);
  for (; explorer.More(); explorer.Next()) yield explorer.Current();
  explorer.delete();
}
