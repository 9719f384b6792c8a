// Empties dist before a build, so that no file of an earlier build is packed.
import { rmSync } from "node:fs";

rmSync(new URL("../dist", import.meta.url), { recursive: true, force: true });
