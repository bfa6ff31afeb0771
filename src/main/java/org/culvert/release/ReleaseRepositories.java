package org.culvert.release;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class ReleaseRepositories {
    private ReleaseRepositories() {}

    @ApplicationScoped
    static class ReleaseRules implements PanacheRepositoryBase<ReleaseRule, UUID> {}

    @ApplicationScoped
    static class Sites implements PanacheRepositoryBase<ReleaseSite, UUID> {}

    @ApplicationScoped
    static class UnsuitablePlaces implements PanacheRepositoryBase<UnsuitablePlace, UUID> {}

    @ApplicationScoped
    static class Assessments implements PanacheRepositoryBase<Assessment, UUID> {}

    @ApplicationScoped
    static class Releases implements PanacheRepositoryBase<Release, UUID> {}

    @ApplicationScoped
    static class ReleasedAnimals implements PanacheRepositoryBase<ReleasedAnimal, UUID> {}

    @ApplicationScoped
    static class LiftedTests implements PanacheRepositoryBase<LiftedTest, UUID> {}
}
