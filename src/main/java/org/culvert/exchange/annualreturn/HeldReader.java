package org.culvert.exchange.annualreturn;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.exchange.annualreturn.HeldThings.Kinds;
import org.culvert.exchange.annualreturn.HeldThings.Link;
import org.culvert.exchange.annualreturn.tally.Counted;
import org.culvert.exchange.annualreturn.tally.CountedAs;
import org.culvert.exchange.annualreturn.tally.Eggs;
import org.culvert.exchange.annualreturn.tally.Stay;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Reads who held what when: a few questions for any number of cases and clutches. */
@ApplicationScoped
class HeldReader {
    /** A code that ISO 3166 leaves to its users: of no authority. */
    static final String NOWHERE = "XX";

    private static final List<String> CAME_DEAD = List.of("deadWhenFound", "diedOnTheWay", "deadOnReachingClinic");

    /**
     * Whose return, and where.
     *
     * @param members whether what members of an organisation hold counts too
     */
    record Asked(Holder holder, boolean members, String jurisdiction, Instant from, Instant before) {}

    private final EntityManager entities;
    private final RegionService regions;

    HeldReader(EntityManager entities, RegionService regions) {
        this.entities = entities;
        this.regions = regions;
    }

    /** Cases and clutches of which the holder had some in the span, or until its first instant. */
    HeldThings read(Asked asked) {
        String here = regions.findRegion()
                .map(region -> region.jurisdiction() == null ? region.countryCode() : region.jurisdiction())
                .orElse(null);
        Map<String, Object> values = new LinkedHashMap<>();
        String mine = mine(asked, values);
        values.put("from", asked.from());
        values.put("before", asked.before());
        Map<String, Link> links = new HashMap<>();
        Map<String, Kinds> taxa = new HashMap<>();
        List<Counted> counted = new ArrayList<>();
        animals(asked, here, mine, values, links, taxa, counted);
        eggs(asked, here, mine, values, links, taxa, counted);
        return new HeldThings(List.copyOf(counted), taxa, links);
    }

    /** The condition on a link {@code l} and its member {@code m} that it is the holder's. */
    private static String mine(Asked asked, Map<String, Object> values) {
        UUID member = asked.holder().memberId();
        if (member != null) {
            values.put("holder", member);
            return "l.holder_member_id = :holder";
        }
        values.put("holder", Objects.requireNonNull(asked.holder().organisationId()));
        return asked.members()
                ? "(l.holder_organisation_id = :holder or m.organisation_id = :holder)"
                : "l.holder_organisation_id = :holder";
    }

    private void animals(
            Asked asked,
            @Nullable String here,
            String mine,
            Map<String, Object> values,
            Map<String, Link> links,
            Map<String, Kinds> taxa,
            List<Counted> counted) {
        String chosen = "(select l.case_id from custody_links l left join members m on m.id = l.holder_member_id where "
                + mine + " and lower(l.held) < :before and (upper_inf(l.held) or upper(l.held) >= :from))";
        Map<UUID, List<Stay>> chains = new HashMap<>();
        for (Tuple row : rows(
                """
                select l.id, l.case_id as of_what, l.holder_member_id, l.holder_organisation_id, l.holder_person_id,
                       lower(l.held) as begins, upper(l.held) as until, l.authorisation, l.licence_organisation,
                       l.licence_number, l.licence_jurisdiction, coalesce(m.call_sign, o.name) as name,\s"""
                        + mine + " as mine from custody_links l left join members m on m.id = l.holder_member_id"
                        + " left join organisations o on o.id = l.holder_organisation_id where l.case_id in " + chosen
                        + " order by lower(l.held)",
                values)) {
            stay(row, asked, here, links, chains);
        }
        for (Tuple row : rows("""
                select c.id, c.number, c.origin, a.taxon_id, t.taxon_group_id, t.scientific_name, t.vernacular_name, f.fate,
                       f.happened_at as ended,
                       exists (select 1 from hatchings h join clutches k on k.id = h.clutch_id
                               join cases mother on mother.id = k.mother_case_id
                               where mother.animal_id = a.mother_id
                                 and (h.happened_at = c.happened_at or a.life_stage = 'hatchling')) as hatched
                from cases c join animals a on a.id = c.animal_id join taxa t on t.id = a.taxon_id
                left join fates f on f.case_id = c.id and f.withdrawn_at is null
                where c.id in\s""" + chosen + " order by c.number", values)) {
            String fate = row.get("fate", String.class);
            boolean hatched = row.get("hatched", Boolean.class);
            boolean ofMother = row.get("origin", String.class).equals("ofMother");
            counted.add(new Counted(
                    taxon(row, taxa),
                    fate != null && CAME_DEAD.contains(fate)
                            ? CountedAs.body
                            : hatched ? CountedAs.hatchling : CountedAs.animal,
                    number(row),
                    1,
                    hatched ? "hatched" : ofMother ? "ofMother" : "found",
                    chains.getOrDefault(id(row, "id"), List.of()),
                    Rows.instant(row.get("ended")),
                    fate));
        }
    }

    private void eggs(
            Asked asked,
            @Nullable String here,
            String mine,
            Map<String, Object> values,
            Map<String, Link> links,
            Map<String, Kinds> taxa,
            List<Counted> counted) {
        String chosen =
                "(select l.clutch_id from clutch_custody_links l left join members m on m.id = l.holder_member_id where "
                        + mine + " and l.held_from < :before and (l.held_to is null or l.held_to >= :from))";
        Map<UUID, List<Stay>> chains = new HashMap<>();
        for (Tuple row : rows(
                """
                select l.id, l.clutch_id as of_what, l.holder_member_id, l.holder_organisation_id,
                       cast(null as uuid) as holder_person_id, l.held_from as begins, l.held_to as until, l.authorisation,
                       cast(null as text) as licence_organisation, cast(null as text) as licence_number,
                       cast(null as text) as licence_jurisdiction, coalesce(m.call_sign, o.name) as name,\s"""
                        + mine + " as mine from clutch_custody_links l left join members m on m.id = l.holder_member_id"
                        + " left join organisations o on o.id = l.holder_organisation_id where l.clutch_id in " + chosen
                        + " order by l.held_from",
                values)) {
            stay(row, asked, here, links, chains);
        }
        Map<UUID, List<Eggs.Laid>> laid = new HashMap<>();
        for (Tuple row : rows(
                "select r.clutch_id, r.set_to_incubate as count, r.happened_at as at from egg_recoveries r"
                        + " where r.withdrawn_at is null and r.set_to_incubate > 0 and r.clutch_id in " + chosen
                        + " order by r.happened_at, r.id",
                values)) {
            laid.computeIfAbsent(id(row, "clutch_id"), any -> new ArrayList<>())
                    .add(new Eggs.Laid(when(row, "at"), count(row)));
        }
        Map<UUID, List<Eggs.Gone>> gone = new HashMap<>();
        for (Tuple row : rows(
                "select g.clutch_id, g.count, g.at, g.how from ("
                        + "select clutch_id, hatched as count, happened_at as at, 'hatched' as how from hatchings"
                        + " union all select clutch_id, failed, happened_at, 'failed' from failed_eggs"
                        + " where withdrawn_at is null) g where g.clutch_id in " + chosen + " order by g.at, g.how",
                values)) {
            gone.computeIfAbsent(id(row, "clutch_id"), any -> new ArrayList<>())
                    .add(new Eggs.Gone(when(row, "at"), count(row), row.get("how", String.class)));
        }
        for (Tuple row : rows(
                "select k.id, c.number, a.taxon_id, t.taxon_group_id, t.scientific_name, t.vernacular_name"
                        + " from clutches k join cases c on c.id = k.mother_case_id join animals a on a.id = c.animal_id"
                        + " join taxa t on t.id = a.taxon_id where k.id in " + chosen + " order by k.id",
                values)) {
            UUID clutch = id(row, "id");
            counted.addAll(Eggs.of(
                    taxon(row, taxa),
                    number(row),
                    laid.getOrDefault(clutch, List.of()),
                    gone.getOrDefault(clutch, List.of()),
                    chains.getOrDefault(clutch, List.of())));
        }
    }

    private static void stay(
            Tuple row, Asked asked, @Nullable String here, Map<String, Link> links, Map<UUID, List<Stay>> chains) {
        var link = new Link(
                new Holder(
                        row.get("holder_member_id", UUID.class),
                        row.get("holder_organisation_id", UUID.class),
                        row.get("holder_person_id", UUID.class)),
                row.get("name", String.class),
                when(row, "begins"),
                row.get("authorisation", String.class),
                row.get("licence_organisation", String.class),
                row.get("licence_number", String.class),
                row.get("licence_jurisdiction", String.class));
        String key = id(row, "id").toString();
        links.put(key, link);
        boolean own = Boolean.TRUE.equals(row.get("mine", Boolean.class))
                && countsIn(asked.jurisdiction(), link.licenceJurisdiction(), here);
        chains.computeIfAbsent(id(row, "of_what"), any -> new ArrayList<>())
                .add(new Stay(key, own, link.from(), Rows.instant(row.get("until"))));
    }

    /**
     * Whether what is held counts for a return to a jurisdiction: under a licence of another one it counts there, and without
     * one where the network works, as far as that was told.
     */
    static boolean countsIn(String jurisdiction, @Nullable String ofLicence, @Nullable String here) {
        if (jurisdiction.equals(NOWHERE)) {
            return true;
        }
        if (ofLicence != null) {
            return liesIn(ofLicence, jurisdiction);
        }
        return here == null || liesIn(here, jurisdiction) || liesIn(jurisdiction, here);
    }

    private static boolean liesIn(String part, String whole) {
        return part.equals(whole) || part.startsWith(whole + "-");
    }

    private static String taxon(Tuple row, Map<String, Kinds> taxa) {
        UUID id = id(row, "taxon_id");
        taxa.computeIfAbsent(
                id.toString(),
                key -> new Kinds(
                        id,
                        id(row, "taxon_group_id"),
                        row.get("scientific_name", String.class),
                        row.get("vernacular_name", String.class)));
        return id.toString();
    }

    @SuppressWarnings("unchecked")
    private List<Tuple> rows(String sql, Map<String, Object> values) {
        Query query = entities.createNativeQuery(sql, Tuple.class);
        values.forEach(query::setParameter);
        return query.getResultList();
    }

    private static UUID id(Tuple row, String column) {
        return row.get(column, UUID.class);
    }

    private static long number(Tuple row) {
        return row.get("number", Number.class).longValue();
    }

    private static int count(Tuple row) {
        return row.get("count", Number.class).intValue();
    }

    private static Instant when(Tuple row, String column) {
        return Objects.requireNonNull(Rows.instant(row.get(column)), column);
    }
}
