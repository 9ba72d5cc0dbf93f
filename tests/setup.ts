import fc from "fast-check";

// The same random inputs on every machine, so that a red run can be repeated. FUZZ_SEED=1234 tries others; a failure prints
// its seed and path.
fc.configureGlobal({ seed: Number(process.env.FUZZ_SEED ?? 20_261_125) });
