// A mutant is judged by the same cases every time, and the first counterexample is enough.
import fc from 'fast-check';

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 1, endOnFailure: true });
