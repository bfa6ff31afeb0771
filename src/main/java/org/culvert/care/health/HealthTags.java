package org.culvert.care.health;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import java.util.Optional;
import org.culvert.platform.Paging;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class HealthTags {
    @Produces
    @Singleton
    TagSource ofExposure(EntityManager entities, ExposureService exposures) {
        return new RowTag("exposure", "personal.exposures", entities, exposures::getExposure);
    }

    @Produces
    @Singleton
    TagSource ofCondition(EntityManager entities, SuspicionService suspicions) {
        return new RowTag("notifiable-condition", "notifiable_conditions", entities, suspicions::getCondition);
    }

    @Produces
    @Singleton
    TagSource ofSuspicion(EntityManager entities, SuspicionService suspicions) {
        return new RowTag("disease-suspicion", "disease_suspicions", entities, suspicions::getSuspicion);
    }

    @Produces
    @Singleton
    TagSource ofThreshold(EntityManager entities, SyndromeService syndromes) {
        return new RowTag("alert-threshold", "alert_thresholds", entities, syndromes::getThreshold);
    }

    @Produces
    @Singleton
    TagSource ofReport(SyndromeService syndromes) {
        return new TagSource() {
            @Override
            public String kind() {
                return "syndrome-report";
            }

            @Override
            public Map<String, String> columnByTable() {
                return Map.of("syndrome_reports", "id");
            }

            @Override
            public void lock(String id) {
                syndromes.lock(Paging.uuid("id", id));
            }

            @Override
            public Optional<Object> show(String id) {
                return Optional.of(syndromes.getReport(Paging.uuid("id", id)));
            }
        };
    }
}
