package org.culvert.clinic.profile;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ProfileTags {
    @Produces
    @Singleton
    TagSource ofProfile(EntityManager entities, ProfileService profiles) {
        return new RowTag("clinic-profile", "clinic_profiles", entities, profiles::getProfile);
    }
}
