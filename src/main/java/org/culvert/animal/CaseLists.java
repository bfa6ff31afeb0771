package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.Page;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Cases by what somebody asks for: open or ended, of some kinds of animal, of one incident, or at one organisation. */
@ApplicationScoped
public class CaseLists {
    private static final String ENDED =
            "exists (select 1 from fates f where f.case_id = h.id and f.withdrawn_at is null)";

    private final CaseService service;
    private final CaseRepositories.Cases cases;
    private final CaseReader reader;
    private final EntityManager entities;
    private final Sight sight;

    CaseLists(
            CaseService service, CaseRepositories.Cases cases, CaseReader reader, EntityManager entities, Sight sight) {
        this.service = service;
        this.cases = cases;
        this.reader = reader;
        this.entities = entities;
        this.sight = sight;
    }

    /**
     * Cases, newest first: of those who see only their own organisation's, these.
     *
     * @param ended those that have ended, or those that have not
     * @param taxonIds only animals of these kinds; null: of all
     */
    @Transactional
    public Page<CaseView> list(boolean ended, @Nullable Collection<UUID> taxonIds, int limit, @Nullable UUID before) {
        if (taxonIds != null && taxonIds.isEmpty()) {
            return new Page<>(List.of(), null);
        }
        String wanted = (ended ? ENDED : "not " + ENDED)
                + (taxonIds == null
                        ? ""
                        : " and exists (select 1 from cases k join animals a on a.id = k.animal_id where k.id = h.id"
                                + " and a.taxon_id in "
                                + taxonIds.stream().map(id -> "'" + id + "'").collect(Collectors.joining(",", "(", ")"))
                                + ")");
        List<UUID> ids = sight.seesOwnOnly("case")
                ? sight.listOwn("case", before, limit + 1, wanted)
                : all(wanted, limit + 1, before);
        List<Case> rows = ids.isEmpty() ? List.of() : cases.list("id in ?1 order by id desc", ids);
        return Page.of(rows, limit, reader.viewer(rows), row -> row.id().toString());
    }

    private List<UUID> all(String wanted, int limit, @Nullable UUID before) {
        Query query = entities.createNativeQuery("select h.id from cases h where "
                        + (before == null ? "" : "h.id < :before and ") + wanted + " order by h.id desc limit :most")
                .setParameter("most", limit);
        if (before != null) {
            query.setParameter("before", before);
        }
        return ids(query);
    }

    /** Those of the animals of an incident that the asker may see, in the order of their numbers. */
    @Transactional
    public List<CaseView> listOfIncident(UUID incidentId) {
        List<UUID> ids = cases.list("incidentId = ?1 order by number", incidentId).stream()
                .map(Case::id)
                .toList();
        Map<UUID, CaseView> seen = service.casesById(sight.onlySeen("case", ids));
        return ids.stream().filter(seen::containsKey).map(seen::get).toList();
    }

    /**
     * What an organisation has to do with now: animals that it holds, that are offered to it or that are there, and bodies that
     * it has and of which nobody has said what became of them.
     */
    @Transactional
    public List<CaseView> listAt(UUID organisationId) {
        List<UUID> ids = ids(entities.createNativeQuery("""
                        select l.case_id from custody_links l
                        where l.holder_organisation_id = :organisation and upper_inf(l.held)
                        union
                        select o.case_id from hand_overs o
                        where o.taker_organisation_id = :organisation and o.accepted_at is null and o.refused_at is null
                        union
                        select w.case_id from whereabouts w
                        where w.organisation_id = :organisation
                          and not exists (select 1 from whereabouts v where v.case_id = w.case_id
                                          and (v.happened_at, v.id) > (w.happened_at, w.id))
                        union
                        select b.case_id from bodies b
                        where b.holder_organisation_id = :organisation and b.withdrawn_at is null and b.disposal is null
                        """).setParameter("organisation", organisationId));
        return service.casesById(sight.onlySeen("case", ids)).values().stream()
                .filter(one -> one.fate() == null || isBodyHere(one, organisationId))
                .sorted(Comparator.comparing(CaseView::number))
                .toList();
    }

    private static boolean isBodyHere(CaseView one, UUID organisationId) {
        CaseView.BodyView body = one.body();
        return body != null
                && body.disposal() == null
                && body.holder() != null
                && organisationId.equals(body.holder().organisationId());
    }

    private static List<UUID> ids(Query query) {
        List<?> found = query.getResultList();
        return found.stream().map(UUID.class::cast).toList();
    }
}
