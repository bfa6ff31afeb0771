package org.culvert.animal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import org.jspecify.annotations.Nullable;

/** A licence that is not the network's, under which somebody holds; all null where there is none. */
@Embeddable
record Licence(
        @Nullable @Column(name = "licence_organisation") String organisation,
        @Nullable @Column(name = "licence_number") String number,
        @Nullable @Column(name = "licence_jurisdiction") String jurisdiction) {

    static @Nullable Licence of(CaseEntries.@Nullable OtherLicence entry) {
        return entry == null ? null : new Licence(entry.organisation(), entry.number(), entry.jurisdiction());
    }

    static CaseView.@Nullable OtherLicenceView view(@Nullable Licence licence) {
        return licence == null || licence.number == null || licence.jurisdiction == null
                ? null
                : new CaseView.OtherLicenceView(licence.organisation, licence.number, licence.jurisdiction);
    }
}
