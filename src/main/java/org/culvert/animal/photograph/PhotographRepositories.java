package org.culvert.animal.photograph;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class PhotographRepositories {
    private PhotographRepositories() {}

    @ApplicationScoped
    static class Photographs implements PanacheRepositoryBase<Photograph, UUID> {}

    @ApplicationScoped
    static class Openings implements PanacheRepositoryBase<PhotographOpening, UUID> {}
}
