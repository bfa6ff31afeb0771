package org.culvert.platform;

import java.util.List;

/** A rule that is there to protect someone refuses the request; the reasons are named. */
public final class RefusedException extends CulvertException {
    private final List<String> reasons;

    public RefusedException(String detail, List<String> reasons) {
        super(detail);
        this.reasons = List.copyOf(reasons);
    }

    public List<String> reasons() {
        return reasons;
    }

    @Override
    public String type() {
        return "refused";
    }

    @Override
    public String title() {
        return "A rule refuses that";
    }

    @Override
    public int status() {
        return 422;
    }
}
