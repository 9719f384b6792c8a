import { describe, expect, it } from "vitest";
import { type Piece, solidOf } from "../../src/joints/index.js";
import { checkMesh, distanceTo, evaluate, tessellate } from "../../src/kernel/index.js";
import { validateSolid } from "../support/solve-case.js";
import { cutPieces, post, potteryGuard, rail } from "./models.js";

const solid = (piece: Piece) => {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join());
  return made.value;
};
