import fc from "fast-check";

/** The same random cases in every run: a failure on one machine is a failure on all. */
fc.configureGlobal({ seed: 20260914 });
