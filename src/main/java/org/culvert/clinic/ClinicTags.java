package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ClinicTags {
    @Produces
    @Singleton
    TagSource ofVisit(EntityManager entities, ClinicService service) {
        return new RowTag(
                "visit",
                "visits",
                entities,
                service::getVisit,
                Map.of(
                        "findings",
                        "visit_id",
                        "film_readings",
                        "visit_id",
                        "procedures",
                        "visit_id",
                        "discharges",
                        "visit_id",
                        "drug_orders",
                        "visit_id"));
    }
}
