package org.culvert.roster;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What a holder may hold, in which jurisdiction, from when to when. */
@Entity
@Table(name = "authorisations")
class Authorisation extends Recorded {
    @Nullable
    UUID memberId;

    @Nullable
    UUID organisationId;

    String jurisdiction;

    @Column(name = "class")
    String authorisationClass;

    String number;
    UUID taxonGroupId;
    LocalDate validFrom;
    LocalDate validTo;

    protected Authorisation() {}

    static Authorisation of(RosterService.AuthorisationEntry entry, UUID groupId) {
        var row = new Authorisation();
        row.memberId = entry.memberId();
        row.organisationId = entry.organisationId();
        row.jurisdiction = entry.jurisdiction();
        row.authorisationClass = entry.authorisationClass();
        row.number = entry.number();
        row.taxonGroupId = groupId;
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }
}
