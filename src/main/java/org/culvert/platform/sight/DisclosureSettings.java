package org.culvert.platform.sight;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** How finely figures leave the network. */
@Entity
@Table(name = "disclosure_settings")
class DisclosureSettings extends Recorded {
    int smallestCount;
    int publicDelayDays;
    boolean publicHotspots;
    String source;

    @Nullable
    String archiveLicence;

    @Nullable
    String archiveContact;

    protected DisclosureSettings() {}

    void change(
            int smallestCount,
            int publicDelayDays,
            boolean publicHotspots,
            String source,
            @Nullable String archiveLicence,
            @Nullable String archiveContact) {
        this.smallestCount = smallestCount;
        this.publicDelayDays = publicDelayDays;
        this.publicHotspots = publicHotspots;
        this.source = source;
        this.archiveLicence = archiveLicence;
        this.archiveContact = archiveContact;
        revisedBecause(source);
    }
}
