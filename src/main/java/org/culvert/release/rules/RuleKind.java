package org.culvert.release.rules;

/** What sort of rule it is, which decides what lifts it. */
public enum RuleKind {
    statute(Lifting.byPermit),
    code(Lifting.byPermit),
    guidance(Lifting.notNeeded),
    policy(Lifting.byOverride);

    private final Lifting lifting;

    RuleKind(Lifting lifting) {
        this.lifting = lifting;
    }

    public Lifting lifting() {
        return lifting;
    }
}
