package org.culvert.release.approvals;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ApprovalTags {
    @Produces
    @Singleton
    TagSource ofReleaseApproval(EntityManager entities, ApprovalService approvals) {
        return new RowTag("release-approval", "release_approvals", entities, approvals::getApproval);
    }
}
