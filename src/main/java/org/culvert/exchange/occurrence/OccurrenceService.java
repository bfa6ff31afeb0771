package org.culvert.exchange.occurrence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.Rows;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.jspecify.annotations.Nullable;

/**
 * Lists occurrences: exactly for officers and coordinators, exactly for recipients as far as their agreements reach, and for
 * everybody else roughly, late, and without what is withheld. Whoever sees rough values is filtered by them.
 */
@ApplicationScoped
public class OccurrenceService {
    private static final int IDENTIFIER_LENGTH = 32;

    /** Coarse values of the public; the grid is that of the strictest species there, and 0.01 degree at least. */
    private static final String ALL = """
            with o as materialized (
              select * from occurrence_rows
            ), x as materialized (
              select * from every_incident_strictness
            ), told as (
              select left(encode(sha256(convert_to(s.secret || o.incident_id
                       || coalesce(o.taxon_id, o.taxon_group_id, o.incident_id), 'UTF8')), 'hex'), 32) as occurrence_id,
                     o.incident_id, o.individual_count, i.cause, i.happened_at, i.happened_not_before, i.reported_at,
                     (coalesce(i.happened_at, i.reported_at) at time zone :zone)::date as day,
                     (i.reported_at at time zone :zone)::date as reported_on,
                     t.scientific_name, coalesce(t.vernacular_name, g.name) as vernacular_name, t.taxon_rank,
                     g.key as taxon_group, p.decimal_latitude as latitude, p.decimal_longitude as longitude,
                     p.coordinate_uncertainty_in_meters as uncertainty, p.verbatim, p.road_name, x.strictness,
                     greatest(x.strictness, 0.01) as grid
              from o
              cross join occurrence_secrets s
              join incidents i on i.id = o.incident_id
              join x on x.id = o.incident_id
              left join taxa t on t.id = o.taxon_id
              left join taxon_groups g on g.id = o.taxon_group_id
              left join places p on p.id = i.place_id
            ), rough as (
              select told.*,
                     (least(floor(latitude / grid), round(90 / grid) - 1) + 0.5) * grid as cell_latitude,
                     (least(floor(longitude / grid), round(180 / grid) - 1) + 0.5) * grid as cell_longitude,
                     case when strictness > 0 then make_date(extract(year from day)::integer, 1, 1) else day end as first_day,
                     case when strictness > 0 then make_date(extract(year from day)::integer, 12, 31) else day end as last_day,
                     case when strictness > 0
                          then make_date(extract(year from reported_on)::integer, 12, 31) else reported_on end as public_from
              from told
            )
            """;

    private static final String AGREED = """
            (select min(a.id::text) from agreements a
             where a.recipient_account_id = :account and a.ended_at is null and :today between a.valid_from and a.valid_to
               and (a.taxon_groups = '[]' and a.scientific_names = '[]'
                    or a.taxon_groups @> to_jsonb(taxon_group) or a.scientific_names @> to_jsonb(scientific_name))
               and (a.south is null
                    or latitude between a.south and a.north and longitude between a.west and a.east))
            """;

    private enum Tier {
        EXACT,
        AGREED,
        PUBLIC
    }

    private final AgreementService agreements;
    private final DisclosureService disclosure;
    private final RegionService region;
    private final Sight sight;
    private final EntityManager entities;
    private final Clock clock;

    OccurrenceService(
            AgreementService agreements,
            DisclosureService disclosure,
            RegionService region,
            Sight sight,
            EntityManager entities,
            Clock clock) {
        this.agreements = agreements;
        this.disclosure = disclosure;
        this.region = region;
        this.sight = sight;
        this.entities = entities;
        this.clock = clock;
    }

    /** One page, in an order that tells nothing. What goes out exactly under an agreement is kept as gone out. */
    @Transactional
    public Page<OccurrenceView> listOccurrences(OccurrenceFilter filter, int limit, @Nullable String after) {
        if (after != null && !isIdentifier(after)) {
            throw InvalidException.of("cursor", "This is no cursor.", "the next of the page before");
        }
        Asked asked = asked(filter);
        if (after != null) {
            asked.want("occurrence_id > :after", "after", after);
        }
        List<Object[]> rows = read(asked, limit);
        String country =
                region.findDescription().map(told -> told.countryCode()).orElse(null);
        Page<OccurrenceView> page = Page.of(rows, limit, row -> view(row, asked.tier, country), row -> (String) row[0]);
        if (asked.tier == Tier.AGREED) {
            keep(rows.subList(0, page.items().size()), filter);
        }
        return page;
    }

    /** How many there are in all pages together, for whoever asks. */
    @Transactional
    public long countOccurrences(OccurrenceFilter filter) {
        Asked asked = asked(filter);
        Query query = entities.createNativeQuery(ALL + " select count(*) " + asked.from());
        asked.values.forEach(query::setParameter);
        return ((Number) query.getSingleResult()).longValue();
    }

    /** Whether a text has the form of an occurrence's identifier. */
    public static boolean isIdentifier(String text) {
        return text.matches("[0-9a-f]{" + IDENTIFIER_LENGTH + "}");
    }

    /** Whether the asker keeps the network's own records, so that neither categories nor agreements matter. */
    boolean tellsExactly() {
        return sight.viewer().hasAny(Role.OFFICER, Role.COORDINATOR);
    }

    private Tier tier(LocalDate today) {
        Viewer viewer = sight.viewer();
        if (tellsExactly()) {
            return Tier.EXACT;
        }
        UUID account = viewer.accountId();
        return viewer.hasAny(Role.RECIPIENT) && account != null && agreements.holds(account, today)
                ? Tier.AGREED
                : Tier.PUBLIC;
    }

    /** What is asked for, as conditions on rows and the values in them. */
    private static final class Asked {
        final Tier tier;
        final Map<String, Object> values = new LinkedHashMap<>();
        final List<String> wanted = new ArrayList<>();

        Asked(Tier tier) {
            this.tier = tier;
        }

        void want(String condition, String name, Object value) {
            wanted.add(condition);
            values.put(name, value);
        }

        String from() {
            String agreed = tier == Tier.AGREED ? AGREED : "cast(null as text)";
            return " from (select rough.*, " + agreed + " as agreement from rough) occurrence"
                    + (wanted.isEmpty() ? "" : " where " + String.join(" and ", wanted));
        }
    }

    private Asked asked(OccurrenceFilter filter) {
        ZoneId zone = region.zone();
        LocalDate today = clock.instant().atZone(zone).toLocalDate();
        var asked = new Asked(tier(today));
        asked.values.put("zone", zone.getId());
        if (asked.tier == Tier.AGREED) {
            asked.values.put("account", Objects.requireNonNull(sight.viewer().accountId()));
            asked.want("agreement is not null", "today", today);
        }
        boolean rough = asked.tier == Tier.PUBLIC;
        if (rough) {
            asked.want(
                    "strictness < " + Sight.WITHHELD + " and latitude is not null and public_from <= :latest",
                    "latest",
                    today.minusDays(disclosure.settings().publicDelayDays()));
        }
        if (filter.layer()) {
            asked.wanted.add("cause in (select key from causes where collision)");
        }
        if (filter.occurrenceId() != null) {
            asked.want("occurrence_id = :occurrenceId", "occurrenceId", filter.occurrenceId());
        }
        if (filter.taxonGroup() != null) {
            asked.want("taxon_group = :taxonGroup", "taxonGroup", filter.taxonGroup());
        }
        if (filter.scientificName() != null) {
            asked.want("scientific_name = :scientificName", "scientificName", filter.scientificName());
        }
        if (filter.cause() != null) {
            asked.want("cause = :cause", "cause", filter.cause());
        }
        if (filter.from() != null) {
            asked.want((rough ? "last_day" : "day") + " >= :from", "from", filter.from());
        }
        if (filter.to() != null) {
            asked.want((rough ? "first_day" : "day") + " <= :to", "to", filter.to());
        }
        within(asked, filter, rough ? "cell_" : "");
        return asked;
    }

    private static void within(Asked asked, OccurrenceFilter filter, String prefix) {
        double[] box = filter.bbox();
        if (box == null) {
            return;
        }
        String longitude = prefix + "longitude";
        String between = box[0] <= box[2]
                ? longitude + " between :west and :east"
                : "(" + longitude + " >= :west or " + longitude + " <= :east)";
        asked.wanted.add("(" + between + " and " + prefix + "latitude between :south and :north"
                + (filter.layer() ? " or latitude is null" : "") + ")");
        asked.values.put("west", box[0]);
        asked.values.put("south", box[1]);
        asked.values.put("east", box[2]);
        asked.values.put("north", box[3]);
    }

    @SuppressWarnings("unchecked")
    private List<Object[]> read(Asked asked, int limit) {
        Query query =
                entities.createNativeQuery(ALL + """
                select occurrence_id, incident_id, individual_count, cause, happened_at, happened_not_before, reported_at,
                       cast(day as text), scientific_name, vernacular_name, taxon_rank, taxon_group, latitude, longitude,
                       uncertainty, verbatim, road_name, strictness, agreement
                """ + asked.from() + " order by occurrence_id limit " + (limit + 1));
        asked.values.forEach(query::setParameter);
        return query.getResultList();
    }

    private void keep(List<Object[]> rows, OccurrenceFilter filter) {
        UUID account = Objects.requireNonNull(sight.viewer().accountId());
        Map<String, Integer> byAgreement = new TreeMap<>();
        rows.forEach(row -> byAgreement.merge((String) row[18], 1, Integer::sum));
        byAgreement.forEach((agreement, records) ->
                agreements.disclose(UUID.fromString(agreement), account, records, filter.words()));
    }

    private static OccurrenceView view(Object[] row, Tier tier, @Nullable String country) {
        Double latitude = Rows.number(row[12]);
        return new OccurrenceView(
                (String) row[0],
                "HumanObservation",
                eventDate(row),
                (String) row[8],
                (String) row[9],
                (String) row[10],
                (String) row[11],
                ((Number) row[2]).intValue(),
                (String) row[3],
                latitude,
                Rows.number(row[13]),
                Rows.number(row[14]),
                latitude == null ? null : "EPSG:4326",
                country,
                (String) row[15],
                (String) row[16],
                null,
                null,
                (UUID) row[1],
                tier != Tier.PUBLIC,
                ((Number) row[17]).doubleValue(),
                (String) row[7]);
    }

    /** The time, or the span within which it must have happened. */
    private static String eventDate(Object[] row) {
        Instant happened = Rows.instant(row[4]);
        if (happened != null) {
            return happened.toString();
        }
        Instant notBefore = Rows.instant(row[5]);
        Instant reported = Objects.requireNonNull(Rows.instant(row[6]));
        return notBefore == null ? "../" + reported : notBefore + "/" + reported;
    }
}
