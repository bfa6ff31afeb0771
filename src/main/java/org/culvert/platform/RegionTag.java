package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Optional;
import org.culvert.platform.ledger.TagSource;

/** The tag of the one region; on a server that has not been told its own there is nothing to have read. */
@ApplicationScoped
class RegionTag implements TagSource {
    private final RegionService regions;
    private final EntityManager entities;

    RegionTag(RegionService regions, EntityManager entities) {
        this.regions = regions;
        this.entities = entities;
    }

    @Override
    public String kind() {
        return "region";
    }

    @Override
    public void lock(String id) {
        entities.createNativeQuery("select id from regions for update").getResultList();
    }

    @Override
    public Optional<Object> show(String id) {
        return regions.findDescription().map(Object.class::cast);
    }
}
