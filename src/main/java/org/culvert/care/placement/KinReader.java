package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.matching.Candidacy;
import org.culvert.care.matching.Candidacy.Kin;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Who is not to be parted from whom: by the mothers on record, or because somebody said so. */
@ApplicationScoped
class KinReader {
    /**
     * An animal in care from which another is not parted.
     *
     * @param of the other
     * @param tieId where somebody said so; null: by the mothers on record
     * @param memberId who has it or has been offered it; null: nobody of the network's members
     * @param organisationId likewise
     */
    record Relative(
            UUID of,
            UUID caseId,
            long caseNumber,
            Candidacy.Relation relation,
            @Nullable UUID tieId,
            @Nullable UUID memberId,
            @Nullable UUID organisationId) {}

    private final EntityManager entities;
    private final RosterService roster;

    KinReader(EntityManager entities, RosterService roster) {
        this.entities = entities;
        this.roster = roster;
    }

    /** Relatives of some animals, of whom those in the list may be some too; a mother before others. */
    List<Relative> relativesOf(Collection<UUID> caseIds) {
        if (caseIds.isEmpty()) {
            return List.of();
        }
        List<?> rows = entities.createNativeQuery("""
                        with open as (
                            select c.id, c.number, c.animal_id, a.mother_id,
                                   exists (select 1 from keeping_ties t where t.case_id = c.id and t.keep = 'alone'
                                           and t.withdrawn_at is null) as alone
                            from cases c join animals a on a.id = c.animal_id
                            where not exists (select 1 from fates f where f.case_id = c.id and f.withdrawn_at is null)
                        ), related as (
                            select o.id as subject, k.id, k.number, 'mother' as relation, 1 as rank, cast(null as uuid) as tie
                            from open o join open k on k.animal_id = o.mother_id
                            where o.id in (:ids) and not o.alone and not k.alone
                            union all
                            select o.id, k.id, k.number, 'young', 2, null
                            from open o join open k on k.mother_id = o.animal_id
                            where o.id in (:ids) and not o.alone and not k.alone
                            union all
                            select o.id, k.id, k.number, 'sibling', 3, null
                            from open o join open k on k.mother_id = o.mother_id and k.animal_id <> o.animal_id
                            where o.id in (:ids) and not o.alone and not k.alone
                            union all
                            select o.id, k.id, k.number, 'told', 4, t.id
                            from keeping_ties t
                            join open o on o.id in (t.case_id, t.other_case_id)
                            join open k on k.id in (t.case_id, t.other_case_id) and k.id <> o.id
                            where o.id in (:ids) and t.keep = 'together' and t.withdrawn_at is null
                        )
                        select distinct on (r.subject, r.id) r.subject, r.id, r.number, r.relation, r.tie,
                               coalesce(h.taker_member_id, case when h.id is null then l.holder_member_id end),
                               coalesce(h.taker_organisation_id, case when h.id is null then l.holder_organisation_id end)
                        from related r
                        left join custody_links l on l.case_id = r.id and upper_inf(l.held)
                        left join hand_overs h on h.case_id = r.id and h.accepted_at is null and h.refused_at is null
                        order by r.subject, r.id, r.rank
                        """)
                .setParameter("ids", List.copyOf(caseIds))
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new Relative(
                        (UUID) Objects.requireNonNull(row[0]),
                        (UUID) Objects.requireNonNull(row[1]),
                        ((Number) Objects.requireNonNull(row[2])).longValue(),
                        Candidacy.Relation.valueOf((String) row[3]),
                        (UUID) row[4],
                        (UUID) row[5],
                        (UUID) row[6]))
                .toList();
    }

    /** What of it a carer's candidacy is told: each relative, and who has it. */
    List<Kin> kinOf(UUID caseId) {
        return relativesOf(List.of(caseId)).stream()
                .map(one -> new Kin(one.relation(), one.memberId(), holder(one)))
                .toList();
    }

    private @Nullable String holder(Relative one) {
        if (one.memberId() != null) {
            return roster.getMember(one.memberId()).callSign();
        }
        return one.organisationId() == null
                ? null
                : roster.getOrganisation(one.organisationId()).name();
    }

    /** Those of some animals that are not parted: each set has two or more, and no animal is in two of them. */
    List<Set<UUID>> families(Collection<UUID> caseIds) {
        return families(caseIds, relativesOf(caseIds));
    }

    /** @param relatives of these and perhaps of others, as {@link #relativesOf} tells them */
    static List<Set<UUID>> families(Collection<UUID> caseIds, List<Relative> relatives) {
        Map<UUID, Set<UUID>> familyOf = new LinkedHashMap<>();
        for (Relative one : relatives) {
            if (caseIds.contains(one.of()) && caseIds.contains(one.caseId())) {
                Set<UUID> joined = new TreeSet<>(familyOf.getOrDefault(one.of(), Set.of(one.of())));
                joined.addAll(familyOf.getOrDefault(one.caseId(), Set.of(one.caseId())));
                joined.forEach(member -> familyOf.put(member, joined));
            }
        }
        return new ArrayList<>(
                familyOf.values().stream().collect(Collectors.toCollection(java.util.LinkedHashSet::new)));
    }
}
