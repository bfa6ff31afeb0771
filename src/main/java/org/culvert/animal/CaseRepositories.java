package org.culvert.animal;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class CaseRepositories {
    private CaseRepositories() {}

    @ApplicationScoped
    static class Animals implements PanacheRepositoryBase<Animal, UUID> {}

    @ApplicationScoped
    static class Cases implements PanacheRepositoryBase<Case, UUID> {}

    @ApplicationScoped
    static class CustodyLinks implements PanacheRepositoryBase<CustodyLink, UUID> {}

    @ApplicationScoped
    static class HandOvers implements PanacheRepositoryBase<HandOver, UUID> {}

    @ApplicationScoped
    static class WhereaboutsRows implements PanacheRepositoryBase<Whereabouts, UUID> {}

    @ApplicationScoped
    static class Fates implements PanacheRepositoryBase<Fate, UUID> {}

    @ApplicationScoped
    static class Bodies implements PanacheRepositoryBase<Body, UUID> {}
}
