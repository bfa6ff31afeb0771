package org.culvert.release;

import java.util.UUID;
import org.culvert.release.rules.Site;
import org.culvert.release.rules.UncertainPosition;
import org.jspecify.annotations.Nullable;

/** The place that is assessed: a known site, or a bare position. */
record Target(
        @Nullable UUID siteId,
        String jurisdiction,
        double decimalLatitude,
        double decimalLongitude,
        double coordinateUncertaintyInMeters) {
    UncertainPosition at() {
        return UncertainPosition.of(decimalLatitude, decimalLongitude, coordinateUncertaintyInMeters);
    }

    Site site(Site.Consent landownerConsent) {
        return new Site(at(), jurisdiction, landownerConsent);
    }
}
