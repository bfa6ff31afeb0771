package org.culvert.exchange.annualreturn.tally;

/** What is counted; each kind has lines of its own. */
public enum CountedAs {
    animal,
    /** An animal that hatched of eggs in care. */
    hatchling,
    /** An animal that was dead before it reached care: dead when found, on the way, or on reaching the clinic. */
    body,
    /** From when it is set to incubate. */
    egg
}
