/**
 * Properties start from one number, so that a run can be repeated; PROPERTY_START=n tries another.
 *
 * A start that fails is worth keeping: give it here to see the failure again, and save the counterexample as a regression.
 */
import fc from "fast-check";

const START = 20261125;

fc.configureGlobal({ seed: Number(process.env.PROPERTY_START ?? START) });
