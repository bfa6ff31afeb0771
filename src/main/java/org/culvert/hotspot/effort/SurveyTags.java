package org.culvert.hotspot.effort;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class SurveyTags {
    @Produces
    @Singleton
    TagSource ofRoadSurvey(EntityManager entities, RoadSurveyService surveys) {
        return new RowTag("road-survey", "road_surveys", entities, surveys::getSurvey);
    }
}
