package org.culvert.release.nonrelease;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** The repositories of this room. */
final class NonReleaseRepositories {
    private NonReleaseRepositories() {}

    @ApplicationScoped
    static class Decisions implements PanacheRepositoryBase<NonReleaseDecision, UUID> {}

    /** What came of decisions, oldest entry first. */
    interface Parts<T extends DecisionPart> extends PanacheRepositoryBase<T, UUID> {
        default List<T> of(UUID decisionId) {
            return list("decisionId = ?1 order by id", decisionId);
        }
    }

    @ApplicationScoped
    static class SecondOpinions implements Parts<SecondOpinion> {}

    @ApplicationScoped
    static class AuthorityNotices implements Parts<AuthorityNotice> {}

    @ApplicationScoped
    static class PermitsToKeep implements Parts<PermitToKeep> {}

    @ApplicationScoped
    static class WelfareReviews implements Parts<WelfareReview> {}

    @ApplicationScoped
    static class Outcomes implements Parts<NonReleaseOutcome> {}
}
