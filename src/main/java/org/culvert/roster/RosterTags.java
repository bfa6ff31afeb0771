package org.culvert.roster;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class RosterTags {
    @Produces
    @Singleton
    TagSource ofOrganisation(EntityManager entities, RosterService roster) {
        return new RowTag("organisation", "organisations", entities, roster::getOrganisation);
    }

    @Produces
    @Singleton
    TagSource ofMember(EntityManager entities, RosterService roster) {
        return new RowTag("member", "members", entities, roster::getMember);
    }

    @Produces
    @Singleton
    TagSource ofVaccination(EntityManager entities, VaccinationService vaccinations) {
        return new RowTag("vaccination", "personal.vaccinations", entities, vaccinations::get);
    }

    @Produces
    @Singleton
    TagSource ofAuthorisation(EntityManager entities, AuthorisationService authorisations) {
        return new RowTag("authorisation", "authorisations", entities, authorisations::get);
    }
}
