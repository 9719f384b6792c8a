/**
 * Adapter to @jscad/modeling: meshes to and from its `geom3`.
 *
 * @packageDocumentation
 */
export { fromGeom3, type Geom3Like, type Geom3Transform, geom3ToStl, toGeom3 } from "./jscad.js";
