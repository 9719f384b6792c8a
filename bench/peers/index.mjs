// The peers by key, loaded on demand: a fresh process that needs one loads one.
const MODULES = {
  manifold: ["./manifold.mjs"],
  three: ["./three.mjs"],
  "three-exact": ["./three.mjs", { exact: true }],
  jscad: ["./jscad.mjs"],
  occt: ["./occt.mjs"],
};

export const PEERS = Object.keys(MODULES);

export async function loadPeer(key) {
  const [path, options] = MODULES[key];
  const peer = await (await import(path)).load(options);
  // Peers have no notion of many posts at once: one after the other, each freed before the next.
  const makeAll = (jobs) => {
    for (const job of jobs) peer.free(peer.make(job));
  };
  return { ...peer, makeAll };
}
