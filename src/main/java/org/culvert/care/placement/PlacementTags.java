package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class PlacementTags {
    @Produces
    @Singleton
    TagSource ofPlacement(EntityManager entities, PlacementService placements) {
        return new RowTag("placement", "placements", entities, placements::getPlacement);
    }

    @Produces
    @Singleton
    TagSource ofProfile(EntityManager entities, CarerService carers) {
        return new RowTag("carer-profile", "carer_profiles", entities, carers::getProfile);
    }

    @Produces
    @Singleton
    TagSource ofAbsence(EntityManager entities, CarerService carers) {
        return new RowTag("absence", "carer_absences", entities, carers::getAbsence);
    }

    @Produces
    @Singleton
    TagSource ofTie(EntityManager entities, KinService kin) {
        return new RowTag("keeping-tie", "keeping_ties", entities, kin::getTie);
    }

    @Produces
    @Singleton
    TagSource ofRule(EntityManager entities, CarerService carers) {
        return new RowTag("keeping-rule", "keeping_rules", entities, carers::getRule);
    }

    @Produces
    @Singleton
    TagSource ofProposal(EntityManager entities, SurgeService surge) {
        return new RowTag(
                "placement-proposal",
                "placement_proposals",
                entities,
                surge::getProposal,
                Map.of("placement_proposal_rows", "proposal_id"));
    }
}
