package org.culvert.dispatch;

/**
 * One test of the gate with its figures.
 *
 * @param test {@code speed}, {@code light}, {@code vaccination} or {@code people}
 * @param kind {@code protection}: nobody overrides it; {@code policy}: a named person overrides with a reason; {@code
 *     advice}: shown
 * @param verdict {@code pass}, {@code fail} or {@code cantTell}
 * @param figures what was held against what
 * @param words what to do about it
 */
public record GateTest(String test, String kind, String verdict, String figures, String words) {
    static final String PROTECTION = "protection";
    static final String POLICY = "policy";
    static final String ADVICE = "advice";

    boolean stops() {
        return !kind.equals(ADVICE) && !verdict.equals("pass");
    }

    boolean canBeOverridden() {
        return kind.equals(POLICY);
    }
}
