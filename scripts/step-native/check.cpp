// Reads a STEP file with Open CASCADE Technology and says of every piece what it found, one JSON object a line.
//
//   check FILE.step [--no-healing]   (without healing no boolean cut is tried)
//
// Per piece: names of the occurrence and its part, colour (sRGB), validity, closedness, volume, the greatest distance of an
// edge's curve in space from its curve on either surface at the same parameter, missing curves, and whether the solid survives a
// boolean cut. 'Valid' alone proves nothing: a reader records tolerances as large as it needs.
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Geom2d_Curve.hxx>
#include <Geom_Curve.hxx>
#include <Geom_Surface.hxx>
#include <Interface_Static.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TDF_ChildIterator.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Solid.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <algorithm>
#include <cstdio>
#include <cstring>
#include <string>

static const int SAMPLES = 60;

static std::string nameOf(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return "";
  const TCollection_ExtendedString& text = name->Get();
  std::string out;
  for (int i = 1; i <= text.Length(); i++) {
    const unsigned c = text.Value(i);
    char escaped[8];
    if (c >= 0x20 && c < 0x7f && c != '"' && c != '\\') out += char(c);
    else {
      std::snprintf(escaped, sizeof escaped, "\\u%04x", c);
      out += escaped;
    }
  }
  return out;
}

struct Gap {
  double most = 0, tolerance = 0;
  int missing = 0, edges = 0;
};

static Gap gapOf(const TopoDS_Shape& solid) {
  Gap gap;
  for (TopExp_Explorer faces(solid, TopAbs_FACE); faces.More(); faces.Next())
    for (TopExp_Explorer edges(faces.Current(), TopAbs_EDGE); edges.More(); edges.Next()) {
      const TopoDS_Edge edge = TopoDS::Edge(edges.Current());
      const TopoDS_Face face = TopoDS::Face(faces.Current());
      double t0, t1, u0, u1;
      TopLoc_Location ofCurve, ofSurface;
      const Handle(Geom_Curve) space = BRep_Tool::Curve(edge, ofCurve, t0, t1);
      const Handle(Geom2d_Curve) flat = BRep_Tool::CurveOnSurface(edge, face, u0, u1);
      const Handle(Geom_Surface) surface = BRep_Tool::Surface(face, ofSurface);
      gap.edges++;
      if (flat.IsNull() || space.IsNull()) {
        gap.missing++;
        continue;
      }
      gap.tolerance = std::max(gap.tolerance, BRep_Tool::Tolerance(edge));
      for (int i = 0; i <= SAMPLES; i++) {
        const double t = t0 + (t1 - t0) * i / SAMPLES;
        const gp_Pnt2d uv = flat->Value(t);
        const gp_Pnt a = space->Value(t).Transformed(ofCurve.Transformation());
        const gp_Pnt b = surface->Value(uv.X(), uv.Y()).Transformed(ofSurface.Transformation());
        gap.most = std::max(gap.most, a.Distance(b));
      }
    }
  return gap;
}

static bool survivesCut(const TopoDS_Shape& solid) {
  Bnd_Box bounds;
  BRepBndLib::Add(solid, bounds);
  double x0, y0, z0, x1, y1, z1;
  bounds.Get(x0, y0, z0, x1, y1, z1);
  // A box over one corner's share of the piece, at odd shares so that no face falls on another.
  const gp_Pnt from(x0 - 1, y0 - 1, z0 - 1);
  const gp_Pnt to(x0 + 0.437 * (x1 - x0), y1 + 1, z0 + 0.613 * (z1 - z0));
  BRepAlgoAPI_Cut cut(solid, BRepPrimAPI_MakeBox(from, to).Shape());
  return cut.IsDone() && BRepCheck_Analyzer(cut.Shape()).IsValid();
}

struct Looker {
  bool cutting = true;
  Handle(XCAFDoc_ShapeTool) shapes;
  Handle(XCAFDoc_ColorTool) colours;

  void part(const TDF_Label& label, const std::string& occurrence) const {
    const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(label);
    for (TopExp_Explorer solids(shape, TopAbs_SOLID); solids.More(); solids.Next()) {
      try {
        look(solids.Current(), label, occurrence);
      } catch (const Standard_Failure& failure) {
        std::printf("{\"name\":\"%s\",\"error\":\"%s\"}\n", occurrence.c_str(), failure.DynamicType()->Name());
      }
    }
  }

  void look(const TopoDS_Shape& solid, const TDF_Label& label, const std::string& occurrence) const {
    Quantity_Color colour;
    const bool coloured = colours->GetColor(solid, XCAFDoc_ColorSurf, colour) || colours->GetColor(label, XCAFDoc_ColorSurf, colour) ||
                          colours->GetColor(solid, XCAFDoc_ColorGen, colour);
    double r = -1, g = -1, b = -1;
    if (coloured) colour.Values(r, g, b, Quantity_TOC_sRGB);
    GProp_GProps properties;
    BRepGProp::VolumePropertiesGK(solid, properties, 1e-8, true, false, false, false, false);
    bool closed = true;
    for (TopExp_Explorer shell(solid, TopAbs_SHELL); shell.More(); shell.Next()) closed = closed && BRep_Tool::IsClosed(shell.Current());
    const Gap gap = gapOf(solid);
    std::printf(
        "{\"name\":\"%s\",\"part\":\"%s\",\"colour\":[%.4f,%.4f,%.4f],\"valid\":%s,\"closed\":%s,\"volume\":%.12g,\"gap\":%.4g,"
        "\"tolerance\":%.4g,\"missing\":%d,\"edges\":%d,\"cut\":%s}\n",
        occurrence.c_str(), nameOf(label).c_str(), r, g, b, BRepCheck_Analyzer(solid).IsValid() ? "true" : "false",
        closed ? "true" : "false", properties.Mass(), gap.most, gap.tolerance, gap.missing, gap.edges,
        !cutting || survivesCut(solid) ? "true" : "false");
  }

  void assembly(const TDF_Label& label) const {
    TDF_LabelSequence components;
    XCAFDoc_ShapeTool::GetComponents(label, components);
    for (int i = 1; i <= components.Length(); i++) {
      TDF_Label target;
      if (XCAFDoc_ShapeTool::GetReferredShape(components(i), target)) part(target, nameOf(components(i)));
    }
  }
};

int main(int count, char** words) {
  if (count < 2) return 2;
  Handle(TDocStd_Document) document;
  XCAFApp_Application::GetApplication()->NewDocument("MDTV-XCAF", document);
  STEPCAFControl_Reader reader;
  const bool healing = count < 3 || std::strcmp(words[2], "--no-healing");
  if (!healing) {
    // A sequence of shape processing with no step that repairs; the folder of its definition is in CSF_STEPDefaults.
    Interface_Static::SetCVal("read.step.resource.name", "STEP");
    Interface_Static::SetCVal("read.step.sequence", "NoHealing");
  }
  reader.SetColorMode(true);
  reader.SetNameMode(true);
  if (reader.ReadFile(words[1]) != IFSelect_RetDone || !reader.Transfer(document)) {
    std::printf("{\"error\":\"not read\"}\n");
    return 1;
  }
  const Looker look = {healing, XCAFDoc_DocumentTool::ShapeTool(document->Main()), XCAFDoc_DocumentTool::ColorTool(document->Main())};
  TDF_LabelSequence free;
  look.shapes->GetFreeShapes(free);
  for (int i = 1; i <= free.Length(); i++) {
    if (XCAFDoc_ShapeTool::IsAssembly(free(i))) look.assembly(free(i));
    else look.part(free(i), nameOf(free(i)));
  }
  return 0;
}
