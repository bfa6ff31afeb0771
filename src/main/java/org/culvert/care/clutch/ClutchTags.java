package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.stream.Collectors;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ClutchTags {
    private static final List<String> PARTS = List.of(
            "egg_recoveries",
            "hatchings",
            "clutch_custody_links",
            "failed_eggs",
            "eggs_left_inside",
            "clutch_set_ups",
            "candlings",
            "clutch_temperature_records");

    @Produces
    @Singleton
    TagSource ofClutch(EntityManager entities, ClutchService clutches) {
        return new RowTag(
                "clutch",
                "clutches",
                entities,
                clutches::getClutch,
                PARTS.stream().collect(Collectors.toMap(part -> part, part -> "clutch_id")));
    }

    @Produces
    @Singleton
    TagSource ofIncubationFact(EntityManager entities, IncubationFactService facts) {
        return new RowTag("incubation-fact", "incubation_facts", entities, facts::getFact);
    }
}
