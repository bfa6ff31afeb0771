package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.Actor;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class CallTags {
    @Produces
    @Singleton
    TagSource ofIncident(EntityManager entities, IncidentService incidents, Actor actor) {
        return new RowTag("incident", "incidents", entities, id -> incidents.getIncident(id, mayShowPeople(actor)));
    }

    @Produces
    @Singleton
    TagSource ofJoin(EntityManager entities, IncidentService incidents) {
        return new RowTag("join", "incident_joins", entities, incidents::getJoin);
    }

    @Produces
    @Singleton
    TagSource ofCall(EntityManager entities, CallReader calls, Actor actor) {
        return new RowTag(
                "call",
                "calls",
                entities,
                id -> calls.getCall(id, mayShowPeople(actor)),
                Map.of("reported_animals", "call_id"));
    }

    @Produces
    @Singleton
    TagSource ofToldWords(EntityManager entities, ToldWordsService told) {
        return new RowTag("told-words", "told_words", entities, told::get);
    }

    private static boolean mayShowPeople(Actor actor) {
        return actor.hasRole(Role.DISPATCHER) || actor.hasRole(Role.COORDINATOR);
    }
}
