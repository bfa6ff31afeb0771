package org.culvert.release.rules;

/** What a test says. Can't tell is never a pass. */
public enum Verdict {
    pass,
    fail,
    cantTell
}
