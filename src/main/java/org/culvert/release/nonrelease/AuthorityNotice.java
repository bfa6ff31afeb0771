package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An authority was told of a decision. */
@Entity
@Table(name = "authority_notices")
class AuthorityNotice extends DecisionPart {
    String authority;

    @Nullable
    String reference;

    protected AuthorityNotice() {}

    AuthorityNotice(UUID decisionId, NonReleaseEntries.AuthorityNoticeEntry entry, Instant at) {
        super(decisionId, at);
        this.authority = entry.authority();
        this.reference = entry.reference();
    }
}
