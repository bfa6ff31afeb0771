package org.culvert.exchange.files;

import java.util.Arrays;
import java.util.Optional;

/** What is in a file that is brought. */
public enum BroughtFileKind {
    roadNetworks("road-networks", RoadFileEntry.class),
    landAreas("land-areas", LandFileEntry.class),
    releaseSites("release-sites", SiteFileEntry.class),
    trafficCounts("traffic-counts", TrafficFileEntry.class);

    private final String inAddresses;
    private final Class<?> entry;

    BroughtFileKind(String inAddresses, Class<?> entry) {
        this.inAddresses = inAddresses;
        this.entry = entry;
    }

    /** As addresses have it. */
    public String inAddresses() {
        return inAddresses;
    }

    /** What is told beside a file of the kind. */
    public Class<?> entry() {
        return entry;
    }

    public static Optional<BroughtFileKind> find(String inAddresses) {
        return Arrays.stream(values())
                .filter(kind -> kind.inAddresses.equals(inAddresses))
                .findFirst();
    }
}
