package org.culvert.exchange.annualreturn;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnPeriod;
import org.culvert.platform.Recorded;
import org.culvert.platform.file.KeptFiles;
import org.culvert.roster.Holder;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A return that was signed. */
@Entity
@Immutable
@Table(name = "annual_returns")
class AnnualReturn extends Recorded {
    UUID formId;

    @Nullable
    @Column(name = "holder_member_id")
    UUID memberId;

    @Nullable
    @Column(name = "holder_organisation_id")
    UUID organisationId;

    LocalDate fromDay;
    LocalDate toDay;
    LocalDate dueOn;
    Instant knownAt;
    String signedBy;
    String capacity;
    LocalDate signedOn;
    UUID documentFileId;
    byte[] documentSha256;
    UUID tableFileId;
    byte[] tableSha256;

    protected AnnualReturn() {}

    AnnualReturn(
            UUID formId,
            Holder holder,
            ReturnPeriod period,
            Instant knownAt,
            AnnualReturnService.SigningEntry signing,
            KeptFiles.Kept document,
            KeptFiles.Kept table) {
        happenedAt(knownAt);
        this.formId = formId;
        this.memberId = holder.memberId();
        this.organisationId = holder.organisationId();
        this.fromDay = period.from();
        this.toDay = period.to();
        this.dueOn = period.due();
        this.knownAt = knownAt;
        this.signedBy = signing.name();
        this.capacity = signing.capacity();
        this.signedOn = signing.signedOn();
        this.documentFileId = document.id();
        this.documentSha256 = document.sha256().clone();
        this.tableFileId = table.id();
        this.tableSha256 = table.sha256().clone();
    }

    Holder holder() {
        return new Holder(memberId, organisationId, null);
    }

    ReturnPeriod period() {
        return new ReturnPeriod(fromDay, toDay, dueOn);
    }
}
