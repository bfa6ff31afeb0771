package org.culvert.release.rules;

/** What lifts a test that was not passed. */
public enum Lifting {
    /** Only a permit, with its number and document. */
    byPermit,
    /** A named person, with a reason. */
    byOverride,
    /** Nothing at all. */
    byNothing,
    /** It is advice: shown, and in nobody's way. */
    notNeeded;

    /** Whether a test that was not passed stands in the way. */
    public boolean stands() {
        return this != notNeeded;
    }
}
