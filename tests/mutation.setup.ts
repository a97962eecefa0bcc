import fc from 'fast-check';

// One counterexample is enough to notice a fault; the search for the smallest takes its time.
fc.configureGlobal({ endOnFailure: true });
