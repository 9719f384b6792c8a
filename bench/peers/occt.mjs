// Open CASCADE Technology as WebAssembly (replicad-opencascadejs): exact boundary representation, then its mesher.
//
// The ring is swept as one face with a hole, all cutters are given to one boolean operation, and BRepMesh runs at the same
// chord; its angle limit is loose enough that the chord decides. The triangles are not copied out in the timed part,
// which spares it a call for every point.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import init from "replicad-opencascadejs";
import { CHORD, directionAt, reachOf } from "../jobs.mjs";
import { versionOf } from "./version.mjs";

const ANGLE_LIMIT = 0.5;

export async function load() {
  const find = createRequire(import.meta.url);
  const entry = find.resolve("replicad-opencascadejs");
  const oc = await init({ wasmBinary: readFileSync(join(dirname(entry), "replicad_single.wasm")) });
  const range = () => new oc.Message_ProgressRange();
  const axes = ([x, y, z], d) => new oc.gp_Ax2(new oc.gp_Pnt(x, y, z), new oc.gp_Dir(d[0], d[1], d[2]));

  const prism = (radius, length, z, angle) => {
    const d = directionAt(angle);
    const start = [(-length / 2) * d[0], 0, z - (length / 2) * d[2]];
    return new oc.BRepPrimAPI_MakeCylinder(axes(start, d), radius, length).Shape();
  };

  const tube = ({ od, wall }, length) => {
    const ringOf = (radius) =>
      new oc.BRepBuilderAPI_MakeWire(
        new oc.BRepBuilderAPI_MakeEdge(new oc.gp_Circ(axes([0, 0, 0], [0, 0, 1]), radius)).Edge(),
      ).Wire();
    const face = new oc.BRepBuilderAPI_MakeFace(ringOf(od / 2), true);
    face.Add(oc.TopoDS.Wire(ringOf(od / 2 - wall).Reversed()));
    return new oc.BRepPrimAPI_MakePrism(face.Face(), new oc.gp_Vec(0, 0, length)).Shape();
  };

  const listOf = (shapes) => {
    const list = new oc.NCollection_List_TopoDS_Shape();
    for (const shape of shapes) list.Append(shape);
    return list;
  };

  const make = (job) => {
    const { branch, header, length, angle, bores, boreAngle } = job;
    const cutters = [
      prism(header.od / 2, 2 * reachOf(job), length, angle),
      ...bores.map(({ z, diameter }) => prism(diameter / 2, 2 * branch.od, z, boreAngle)),
    ];
    const cut = new oc.BRepAlgoAPI_Cut();
    cut.SetArguments(listOf([tube(branch, length)]));
    cut.SetTools(listOf(cutters));
    cut.Build(range());
    const shape = cut.Shape();
    const mesher = new oc.BRepMesh_IncrementalMesh(shape, CHORD, false, ANGLE_LIMIT, false);
    mesher.delete();
    cut.delete();
    return shape;
  };

  const read = (shape) => {
    const positions = [];
    const faces = new oc.TopExp_Explorer(
      shape,
      oc.TopAbs_ShapeEnum.TopAbs_FACE,
      oc.TopAbs_ShapeEnum.TopAbs_SHAPE,
    );
    for (; faces.More(); faces.Next()) {
      const face = oc.TopoDS.Face(faces.Current());
      const mesh = oc.BRep_Tool.Triangulation(face, new oc.TopLoc_Location(), 0);
      const flip = face.Orientation() === oc.TopAbs_Orientation.TopAbs_REVERSED;
      for (let t = 1; t <= mesh.NbTriangles(); t++) {
        const triangle = mesh.Triangle(t);
        for (const k of flip ? [1, 3, 2] : [1, 2, 3]) {
          const p = mesh.Node(triangle.Value(k));
          positions.push(p.X(), p.Y(), p.Z());
        }
      }
    }
    return { positions: Float64Array.from(positions), triangles: null };
  };

  const writeStep = (shape, path) => {
    const writer = new oc.STEPControl_Writer();
    writer.Transfer(shape, oc.STEPControl_StepModelType.STEPControl_AsIs, true, range());
    writer.Write(path);
    writer.delete();
    return oc.FS.stat(path).size;
  };

  return {
    key: "occt",
    name: "OCCT (wasm)",
    version: versionOf("replicad-opencascadejs"),
    make,
    free: (shape) => shape.delete(),
    read,
    writeStep,
  };
}
