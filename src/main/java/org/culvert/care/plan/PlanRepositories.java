package org.culvert.care.plan;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class PlanRepositories {
    private PlanRepositories() {}

    @ApplicationScoped
    static class Plans implements PanacheRepositoryBase<AftercarePlan, UUID> {}

    @ApplicationScoped
    static class Phases implements PanacheRepositoryBase<PlanPhase, UUID> {}

    @ApplicationScoped
    static class Entries implements PanacheRepositoryBase<CareEntry, UUID> {}
}
