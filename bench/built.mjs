// The package as it is built, the way a program that depends on it loads it.
import { readFileSync } from "node:fs";
import { contender } from "./ours.mjs";

const { version } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"));

async function roomsOf(...names) {
  const rooms = await Promise.all(names.map((name) => import(`../dist/${name}/index.js`)));
  return Object.assign({}, ...rooms);
}

/** Everything the bench calls, from dist. */
export const loadLibrary = () => roomsOf("members", "joints", "kernel", "export");

/** The package as a contender: the rooms that a mesh takes, no more. */
export async function loadOurs() {
  return contender(await roomsOf("members", "joints", "kernel"), version);
}
