package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A permit to keep an animal that may not go back. */
@Entity
@Table(name = "permits_to_keep")
class PermitToKeep extends DecisionPart {
    String number;
    String issuedBy;
    String documentName;
    UUID fileId;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected PermitToKeep() {}

    PermitToKeep(UUID decisionId, NonReleaseEntries.PermitToKeepEntry entry, UUID fileId) {
        super(decisionId, null);
        this.number = entry.number();
        this.issuedBy = entry.issuedBy();
        this.documentName = entry.documentName();
        this.fileId = fileId;
        this.validFrom = entry.validFrom();
        this.validTo = entry.validTo();
    }

    boolean holdsOn(LocalDate day) {
        return stands() && !day.isBefore(validFrom) && (validTo == null || !day.isAfter(validTo));
    }
}
