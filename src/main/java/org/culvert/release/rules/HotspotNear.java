package org.culvert.release.rules;

import java.util.UUID;

/**
 * A collision hotspot of the animal's group near a site, in a season that is coming.
 *
 * @param runId the run that named it
 * @param claim at what error rate, against which kind of chance: without it a hotspot is no word to use
 * @param metres from the site to its nearest point
 */
public record HotspotNear(
        UUID runId,
        int rank,
        String road,
        double fromChainageMetres,
        double toChainageMetres,
        String season,
        int incidents,
        String claim,
        double metres) {}
