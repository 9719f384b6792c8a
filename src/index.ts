/**
 * Rakewright: exact geometry for steel stair guards, from a design document to solids and shop numbers.
 *
 * Every room is an entry of its own as well (`rakewright/kernel`, `/members`, `/joints`, `/layout`, `/shop`, `/checks`,
 * `/export`); this entry gathers them. The adapter for JSCAD is only at `rakewright/jscad`.
 *
 * @packageDocumentation
 */
export * from "./checks/index.js";
export * from "./export/index.js";
export * from "./joints/index.js";
export * from "./kernel/index.js";
export * from "./layout/index.js";
export * from "./members/index.js";
export * from "./shop/index.js";
