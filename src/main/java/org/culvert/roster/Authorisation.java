package org.culvert.roster;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
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

    /** Named by it, in its own words; null: none. */
    @Nullable
    String premises;

    /** Whether it holds only under somebody who has one of their own. */
    boolean supervised;

    /** By whose order, where an authority gave it for a fire, a flood or a heat. */
    @Nullable
    String byOrder;

    protected Authorisation() {}

    static Authorisation of(AuthorisationService.AuthorisationEntry entry, UUID groupId) {
        var row = new Authorisation();
        row.memberId = entry.memberId();
        row.organisationId = entry.organisationId();
        row.jurisdiction = entry.jurisdiction();
        row.authorisationClass = entry.authorisationClass();
        row.number = entry.number();
        row.taxonGroupId = groupId;
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        row.premises = entry.premises();
        row.supervised = entry.supervised();
        return row;
    }

    void correct(RosterCorrections.AuthorisationCorrection correction) {
        jurisdiction = Corrections.words("jurisdiction", correction.jurisdiction(), jurisdiction, 200);
        authorisationClass =
                Corrections.words("authorisationClass", correction.authorisationClass(), authorisationClass, 200);
        number = Corrections.words("number", correction.number(), number, 200);
        premises = Corrections.text("premises", correction.premises(), premises, 200);
        supervised = correction.supervised().over("supervised", supervised);
        validFrom = correction.validFrom().over("validFrom", validFrom);
        validTo = correction.validTo().over("validTo", validTo);
        if (validTo.isBefore(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
        revisedBecause(correction.reason());
    }
}
