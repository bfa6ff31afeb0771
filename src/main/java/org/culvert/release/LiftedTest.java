package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** What lifted a test that was not passed: a permit with its document, or its author with a reason. */
@Entity
@Immutable
@Table(name = "liftings")
class LiftedTest extends Recorded {
    static final String PERMIT = "permit";
    static final String OVERRIDE = "override";

    UUID releaseId;
    String findingKey;
    String kind;

    @Nullable
    String reason;

    /** Who agreed to set it aside, where a second person did. */
    @Nullable
    UUID agreedByMemberId;

    @Nullable
    String permitNumber;

    @Nullable
    String issuedBy;

    @Nullable
    String documentName;

    @Nullable
    String documentMediaType;

    byte @Nullable [] document;

    protected LiftedTest() {}

    static LiftedTest byPermit(UUID releaseId, ReleaseEntries.Permit permit, Instant at) {
        var row = new LiftedTest();
        row.happenedAt(at);
        row.releaseId = releaseId;
        row.findingKey = permit.key();
        row.kind = PERMIT;
        row.permitNumber = permit.number();
        row.issuedBy = permit.issuedBy();
        row.documentName = permit.documentName();
        row.documentMediaType = permit.documentMediaType();
        row.document = permit.document().clone();
        return row;
    }

    static LiftedTest byOverride(UUID releaseId, ReleaseEntries.Overriding override, Instant at) {
        var row = new LiftedTest();
        row.happenedAt(at);
        row.releaseId = releaseId;
        row.findingKey = override.key();
        row.kind = OVERRIDE;
        row.reason = override.reason();
        row.agreedByMemberId = override.agreedByMemberId();
        return row;
    }
}
