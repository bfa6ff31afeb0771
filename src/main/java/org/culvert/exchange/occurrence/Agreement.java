package org.culvert.exchange.occurrence;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** What a named recipient may have exactly, for what, and until when. */
@Entity
@Table(name = "agreements")
class Agreement extends Recorded {
    UUID recipientAccountId;
    String purpose;
    String documentReference;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> taxonGroups;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> scientificNames;

    @Nullable
    Double south;

    @Nullable
    Double west;

    @Nullable
    Double north;

    @Nullable
    Double east;

    LocalDate validFrom;
    LocalDate validTo;

    @Nullable
    Instant endedAt;

    @Nullable
    String endedReason;

    protected Agreement() {}

    Agreement(UUID recipientAccountId, AgreementService.AgreementEntry entry) {
        this.recipientAccountId = recipientAccountId;
        this.purpose = entry.purpose();
        this.documentReference = entry.documentReference();
        this.taxonGroups = entry.taxonGroups();
        this.scientificNames = entry.scientificNames();
        AgreementService.Box box = entry.box();
        if (box != null) {
            this.south = box.south();
            this.west = box.west();
            this.north = box.north();
            this.east = box.east();
        }
        this.validFrom = entry.validFrom();
        this.validTo = entry.validTo();
    }

    void end(Instant at, String reason) {
        if (endedAt != null) {
            throw new ConflictException("That agreement has been ended already.");
        }
        endedAt = at;
        endedReason = reason;
        revisedBecause(reason);
    }
}
