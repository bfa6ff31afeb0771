package org.culvert.call;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class Ledger {
    private Ledger() {}

    @ApplicationScoped
    static class Places implements PanacheRepositoryBase<Place, UUID> {}

    @ApplicationScoped
    static class People implements PanacheRepositoryBase<Person, UUID> {}

    @ApplicationScoped
    static class Said implements PanacheRepositoryBase<Words, UUID> {}

    @ApplicationScoped
    static class Calls implements PanacheRepositoryBase<Call, UUID> {}

    @ApplicationScoped
    static class Animals implements PanacheRepositoryBase<ReportedAnimal, UUID> {}

    @ApplicationScoped
    static class Incidents implements PanacheRepositoryBase<Incident, UUID> {}

    @ApplicationScoped
    static class Joins implements PanacheRepositoryBase<IncidentJoin, UUID> {}

    @ApplicationScoped
    static class Told implements PanacheRepositoryBase<ToldWords, UUID> {}
}
