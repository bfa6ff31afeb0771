package org.culvert.animal.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.intake.SurgeCountsView.SurgeCount;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Shows who was taken in, and counts them. */
@ApplicationScoped
public class IntakeReader {
    private static final String RESOURCE = "surge-intake";

    /**
     * Which of them.
     *
     * @param sector code of a sector
     * @param taxon scientific name as it is identified now
     */
    public record IntakeFilter(
            @Nullable String sector,
            @Nullable String temporaryNumber,
            @Nullable String taxon,
            SurgeEntries.@Nullable IntakeVitality vitality) {}

    private final SurgeRegister surges;
    private final IntakeService.Intakes intakes;
    private final CaseService cases;
    private final TaxonService taxa;
    private final RecordViews records;
    private final Sight sight;
    private final EntityManager entities;

    IntakeReader(
            SurgeRegister surges,
            IntakeService.Intakes intakes,
            CaseService cases,
            TaxonService taxa,
            RecordViews records,
            Sight sight,
            EntityManager entities) {
        this.surges = surges;
        this.intakes = intakes;
        this.cases = cases;
        this.taxa = taxa;
        this.records = records;
        this.sight = sight;
        this.entities = entities;
    }

    /** Those who were taken in, the latest first: of those who see only their own organisation's, these. */
    @Transactional
    public Page<SurgeIntakeView> listIntakes(UUID surgeId, IntakeFilter filter, int limit, @Nullable UUID before) {
        surges.require(surgeId);
        List<UUID> ids = matching(surgeId, filter);
        if (ids.isEmpty()) {
            return new Page<>(List.of(), null);
        }
        List<SurgeIntake> rows = intakes.find("id in ?1 and (?2 is null or id < ?2) order by id desc", own(ids), before)
                .page(0, limit + 1)
                .list();
        Map<UUID, SurgeIntakeView> views =
                views(rows).stream().collect(Collectors.toMap(SurgeIntakeView::id, Function.identity()));
        return Page.of(
                rows,
                limit,
                row -> Objects.requireNonNull(views.get(row.id())),
                row -> row.id().toString());
    }

    private List<UUID> own(List<UUID> ids) {
        if (!sight.seesOwnOnly(RESOURCE)) {
            return ids;
        }
        String among = ids.stream().map(id -> "'" + id + "'").collect(Collectors.joining(",", "h.id in (", ")"));
        return sight.listOwn(RESOURCE, null, ids.size(), among);
    }

    private List<UUID> matching(UUID surgeId, IntakeFilter filter) {
        UUID taxon = filter.taxon() == null
                ? null
                : taxa.findByScientificName(filter.taxon())
                        .orElseThrow(() -> InvalidException.of(
                                "taxon", "There is no taxon " + filter.taxon() + ".", "a name from /api/taxa"))
                        .id();
        List<?> found = entities.createNativeQuery("""
                        select i.id from surge_intakes i join surge_sectors s on s.id = i.sector_id
                        join cases c on c.id = i.case_id join animals a on a.id = c.animal_id
                        where i.surge_id = :surge
                          and (cast(:sector as text) is null or s.code = upper(cast(:sector as text)))
                          and (cast(:number as text) is null
                               or upper(i.temporary_number) = upper(cast(:number as text)))
                          and (cast(:vitality as text) is null or i.vitality = cast(:vitality as text))
                          and (cast(:taxon as text) is null or a.taxon_id = cast(cast(:taxon as text) as uuid))
                        """)
                .setParameter("surge", surgeId)
                .setParameter("sector", filter.sector())
                .setParameter(
                        "number",
                        filter.temporaryNumber() == null
                                ? null
                                : filter.temporaryNumber().strip())
                .setParameter(
                        "vitality",
                        filter.vitality() == null ? null : filter.vitality().name())
                .setParameter("taxon", taxon == null ? null : taxon.toString())
                .getResultList();
        return found.stream().map(UUID.class::cast).toList();
    }

    /** Views of some of one surge, in their order. */
    List<SurgeIntakeView> views(List<SurgeIntake> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        records.lookUp(rows);
        Map<UUID, String> codes = surges.sectorsOf(rows.get(0).surgeId).stream()
                .collect(Collectors.toMap(SurgeSector::id, sector -> sector.code));
        Map<UUID, CaseView> byCase =
                cases.casesById(rows.stream().map(row -> row.caseId).toList());
        return rows.stream()
                .map(row -> view(
                        row,
                        Objects.requireNonNull(codes.get(row.sectorId)),
                        Objects.requireNonNull(byCase.get(row.caseId))))
                .toList();
    }

    private SurgeIntakeView view(SurgeIntake row, String sector, CaseView of) {
        return new SurgeIntakeView(
                row.id(),
                row.surgeId,
                sector,
                row.temporaryNumber,
                row.caseId,
                of.number(),
                of.animal().scientificName(),
                of.animal().taxonGroup().equals(TaxonService.NOT_KNOWN_YET),
                SurgeEntries.IntakeVitality.valueOf(row.vitality),
                row.triage == null ? null : SurgeEntries.Triage.valueOf(row.triage),
                row.condition,
                row.foundAt,
                row.foundNotBefore,
                Objects.requireNonNull(row.happenedAt()),
                row.holderId,
                of.origin(),
                of.state(),
                records.of(row));
    }

    /** How many are where now, by sector and by taxon. */
    @Transactional
    public SurgeCountsView count(UUID surgeId) {
        surges.require(surgeId);
        List<?> found =
                entities.createNativeQuery("""
                        select w.code, w.scientific_name, count(*),
                               count(*) filter (where not w.dead and not w.moved),
                               count(*) filter (where not w.dead and w.moved), count(*) filter (where w.dead)
                        from (select s.code, t.scientific_name,
                                     coalesce(f.fate in ('died', 'euthanased', 'deadWhenFound', 'diedOnTheWay',
                                                         'deadOnReachingClinic'), false) as dead,
                                     f.id is not null or l.holder_member_id is distinct from i.holder_id as moved
                              from surge_intakes i
                              join surge_sectors s on s.id = i.sector_id
                              join cases c on c.id = i.case_id
                              join animals a on a.id = c.animal_id
                              join taxa t on t.id = a.taxon_id
                              left join fates f on f.case_id = c.id and f.withdrawn_at is null
                              left join custody_links l on l.case_id = c.id and upper_inf(l.held)
                              where i.surge_id = :surge) w
                        group by w.code, w.scientific_name order by w.code, w.scientific_name
                        """).setParameter("surge", surgeId).getResultList();
        List<SurgeCount> cells = new ArrayList<>();
        List<String> taxaOfCells = new ArrayList<>();
        for (Object one : found) {
            Object[] row = (Object[]) one;
            long[] counts = Arrays.stream(row, 2, 6)
                    .mapToLong(count -> ((Number) count).longValue())
                    .toArray();
            cells.add(new SurgeCount((String) row[0], counts[0], counts[1], counts[2], counts[3]));
            taxaOfCells.add((String) row[1]);
        }
        List<SurgeCount> byTaxon = new ArrayList<>();
        for (String name : taxaOfCells.stream().distinct().sorted().toList()) {
            List<SurgeCount> of = new ArrayList<>();
            for (int i = 0; i < cells.size(); i++) {
                if (taxaOfCells.get(i).equals(name)) {
                    of.add(cells.get(i));
                }
            }
            byTaxon.add(sum(name, of));
        }
        List<SurgeCount> bySector = cells.stream()
                .collect(Collectors.groupingBy(SurgeCount::of, java.util.TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(entry -> sum(entry.getKey(), entry.getValue()))
                .toList();
        SurgeCount all = sum("", cells);
        return new SurgeCountsView(all.all(), all.tent(), all.movedOn(), all.dead(), bySector, byTaxon);
    }

    private static SurgeCount sum(String of, List<SurgeCount> some) {
        return new SurgeCount(
                of,
                some.stream().mapToLong(SurgeCount::all).sum(),
                some.stream().mapToLong(SurgeCount::tent).sum(),
                some.stream().mapToLong(SurgeCount::movedOn).sum(),
                some.stream().mapToLong(SurgeCount::dead).sum());
    }
}
