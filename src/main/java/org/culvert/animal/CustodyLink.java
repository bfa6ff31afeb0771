package org.culvert.animal;

import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.roster.Holder;
import org.hibernate.annotations.ColumnTransformer;
import org.jspecify.annotations.Nullable;

/** Who answers for the animal of a case, from when to when (PostgreSQL keeps the links of a case from overlapping). */
@Entity
@Table(name = "custody_links")
class CustodyLink extends Recorded {
    UUID caseId;

    @Embedded
    @AttributeOverride(name = "memberId", column = @Column(name = "holder_member_id"))
    @AttributeOverride(name = "organisationId", column = @Column(name = "holder_organisation_id"))
    @AttributeOverride(name = "personId", column = @Column(name = "holder_person_id"))
    Holder holder;

    @Column(columnDefinition = "tstzrange")
    @ColumnTransformer(read = "held::text", write = "?::tstzrange")
    String held;

    /** Number of the authorisation that was listed for the holder on the first day, or null when none was. */
    @Nullable
    String authorisation;

    @Embedded
    @Nullable
    Licence licence;

    protected CustodyLink() {}

    CustodyLink(
            UUID caseId,
            Holder holder,
            Instant from,
            @Nullable Instant to,
            @Nullable String authorisation,
            @Nullable Licence licence) {
        happenedAt(from);
        this.caseId = caseId;
        this.holder = holder;
        this.held = Span.text(from, to);
        this.authorisation = authorisation;
        this.licence = licence;
    }

    Span span() {
        return Span.parse(held);
    }

    void endAt(Instant at) {
        held = Span.text(span().from(), at);
        revisedBecause("The custody went on to another holder, or the case ended.");
    }

    void correct(Holder holder, Instant from, @Nullable Instant to, @Nullable String authorisation, String reason) {
        happenedAt(from);
        this.holder = holder;
        this.held = Span.text(from, to);
        this.authorisation = authorisation;
        revisedBecause(reason);
    }

    /** Says why it is entered so long after. */
    void enteredBecause(String reason) {
        revisedBecause(reason);
    }
}
