package org.culvert.exchange.records;

/** What a trial makes of a row. */
enum Verdict {
    /** It can be taken as it stands. */
    right,
    /** It can be taken where somebody says so. */
    doubtful,
    /** It tells of no wildlife, or repeats another row word for word: counted, and never taken. */
    apart,
    /** It cannot be taken as it stands. */
    refused
}
