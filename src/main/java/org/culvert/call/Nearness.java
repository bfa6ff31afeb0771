package org.culvert.call;

import java.time.Duration;

/**
 * When two reports may be of one incident: near in space and near in time, if they are also alike in kind.
 *
 * <p>Near in space: closer than the two uncertainties together and a margin. Near in time: reported within two nights of each
 * other. How wide these are is a choice of ours (common practice, no source): wide enough that two drivers who name the nearest
 * kilometre post still meet.
 */
public final class Nearness {
    /** Beyond the two uncertainties. */
    public static final double MARGIN_METRES = 500;

    /** Between the two reports. */
    public static final Duration WINDOW = Duration.ofHours(36);

    private Nearness() {}

    /** How far apart two places may lie that may be one, in metres. */
    public static double reachMetres(double uncertaintyMetres, double otherUncertaintyMetres) {
        return uncertaintyMetres + otherUncertaintyMetres + MARGIN_METRES;
    }
}
