package org.culvert.care.growth;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class GrowthTags {
    @Produces
    @Singleton
    TagSource ofTable(EntityManager entities, GrowthTableService tables) {
        return new RowTag(
                "growth-table",
                "growth_tables",
                entities,
                tables::getTable,
                Map.of("growth_table_adoptions", "table_id"));
    }

    @Produces
    @Singleton
    TagSource ofMeasurement(EntityManager entities, GrowthService growth) {
        return new RowTag("body-measurement", "body_measurements", entities, growth::getMeasurement);
    }
}
