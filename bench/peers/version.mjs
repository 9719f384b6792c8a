// The version of a peer, as bench/package.json pins it.
import { readFileSync } from "node:fs";

const { dependencies } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"));

export const versionOf = (name) => dependencies[name];
