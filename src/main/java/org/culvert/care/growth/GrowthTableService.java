package org.culvert.care.growth;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.growth.GrowthViews.AgeCautionView;
import org.culvert.care.growth.GrowthViews.GrowthTableView;
import org.culvert.care.growth.GrowthViews.TableAdoptionView;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps tables of growth, who adopted them, and what no age is told from. */
@ApplicationScoped
public class GrowthTableService {
    @ApplicationScoped
    static class Tables implements PanacheRepositoryBase<GrowthTable, UUID> {}

    @ApplicationScoped
    static class Adoptions implements PanacheRepositoryBase<GrowthTableAdoption, UUID> {}

    @ApplicationScoped
    static class Cautions implements PanacheRepositoryBase<AgeCaution, UUID> {}

    private final Tables tables;
    private final Adoptions adoptions;
    private final Cautions cautions;
    private final TaxonService taxa;
    private final RecordViews records;
    private final Clock clock;

    GrowthTableService(
            Tables tables,
            Adoptions adoptions,
            Cautions cautions,
            TaxonService taxa,
            RecordViews records,
            Clock clock) {
        this.tables = tables;
        this.adoptions = adoptions;
        this.cautions = cautions;
        this.taxa = taxa;
        this.records = records;
        this.clock = clock;
    }

    /** Loads a table; nothing is compared with it before a vet adopts it. */
    @Transactional
    public GrowthTableView load(GrowthEntries.GrowthTableEntry entry) {
        TaxonService.TaxonView taxon = taxa.findByScientificName(entry.taxon())
                .orElseThrow(() -> InvalidException.of(
                        "taxon", "There is no taxon " + entry.taxon() + ".", "a name from /api/taxa"));
        List<GrowthEntries.GrowthRow> rows = GrowthRows.read(entry);
        requireTellsAge(entry.estimatesAge(), entry.taxon(), entry.measure().name());
        var row = new GrowthTable(entry, taxon.id(), rows);
        tables.persistAndFlush(row);
        return view(row);
    }

    /** Tables by name. */
    @Transactional
    public List<GrowthTableView> listTables() {
        return views(tables.list("order by name, id"));
    }

    @Transactional
    public GrowthTableView getTable(UUID id) {
        return view(require(id));
    }

    /** Changes a table, which wants adopting again afterwards. */
    @Transactional
    public GrowthTableView correct(UUID id, GrowthEntries.GrowthTableCorrection correction) {
        GrowthTable row = require(id);
        row.correct(correction);
        GrowthRows.require(row.rows, row.bodyMeasure(), row.estimatesAge, null);
        requireTellsAge(row.estimatesAge, taxa.getTaxon(row.taxonId).scientificName(), row.measure);
        tables.flush();
        return view(row);
    }

    /** An age is told only from what tells it, for any animal that the table is about. */
    private void requireTellsAge(boolean estimatesAge, String taxon, String measure) {
        if (estimatesAge) {
            cautions.listAll().stream()
                    .filter(caution -> caution.isAbout(taxon, measure))
                    .findFirst()
                    .ifPresent(caution -> {
                        throw InvalidException.of(
                                "estimatesAge",
                                caution.words + " " + caution.source,
                                "false, so that it tells only what is expected at an age");
                    });
        }
    }

    @Transactional
    public GrowthTableView adopt(UUID id, GrowthEntries.TableAdoptionEntry entry) {
        GrowthTable row = require(id);
        Instant at = Corrections.passed("at", entry.at(), clock);
        Instant since = row.revisedAt();
        if (entry.at() != null && since != null && at.isBefore(since)) {
            throw InvalidException.of(
                    "at", "The table was changed after that, at " + since + ".", "an instant after it, or nothing");
        }
        adoptions.persistAndFlush(new GrowthTableAdoption(row, entry, at));
        return view(row);
    }

    @Transactional
    public GrowthTableView withdraw(UUID id, UUID adoptionId, String reason) {
        GrowthTable row = require(id);
        adoptions
                .findByIdOptional(adoptionId)
                .filter(adoption -> adoption.tableId.equals(id))
                .orElseThrow(() -> new NotFoundException("adoption of that table", adoptionId))
                .withdraw(clock.instant(), reason);
        adoptions.flush();
        return view(row);
    }

    @Transactional
    public AgeCautionView enterCaution(GrowthEntries.AgeCautionEntry entry) {
        var row = new AgeCaution(entry);
        cautions.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<AgeCautionView> listCautions() {
        return cautions.list("order by scientificName, measure").stream()
                .map(this::view)
                .toList();
    }

    /** A table with the vet who adopted it as it stands, or with null. */
    record OfTaxon(GrowthTable table, @Nullable GrowthTableAdoption adoption, boolean tellsAge) {}

    /** Tables that are about a taxon: its own, and those of the ranks above it that its name tells of. */
    List<OfTaxon> tablesOf(String scientificName) {
        List<GrowthTable> all = tables.list("order by name, id");
        Map<UUID, TaxonService.TaxonView> taxonById = taxa.taxaById(
                all.stream().map(table -> table.taxonId).distinct().toList());
        List<GrowthTable> about = all.stream()
                .filter(table -> {
                    String name =
                            Objects.requireNonNull(taxonById.get(table.taxonId)).scientificName();
                    return scientificName.equals(name) || scientificName.startsWith(name + " ");
                })
                .toList();
        List<GrowthTableAdoption> told = adoptionsOf(about);
        List<AgeCaution> against = cautions.listAll();
        return about.stream()
                .map(table -> new OfTaxon(
                        table,
                        told.stream()
                                .filter(adoption -> adoption.standsFor(table))
                                .findFirst()
                                .orElse(null),
                        table.estimatesAge
                                && against.stream()
                                        .noneMatch(caution -> caution.isAbout(scientificName, table.measure))))
                .toList();
    }

    private List<GrowthTableAdoption> adoptionsOf(List<GrowthTable> rows) {
        return rows.isEmpty()
                ? List.of()
                : adoptions.list(
                        "tableId in ?1 order by id",
                        rows.stream().map(GrowthTable::id).toList());
    }

    private GrowthTable require(UUID id) {
        return tables.findByIdOptional(id).orElseThrow(() -> new NotFoundException("growth table", id));
    }

    private GrowthTableView view(GrowthTable row) {
        return views(List.of(row)).get(0);
    }

    private List<GrowthTableView> views(List<GrowthTable> rows) {
        List<GrowthTableAdoption> told = adoptionsOf(rows);
        records.lookUp(rows);
        records.lookUp(told);
        Map<UUID, TaxonService.TaxonView> taxonById =
                taxa.taxaById(rows.stream().map(row -> row.taxonId).distinct().toList());
        Map<UUID, List<GrowthTableAdoption>> byTable =
                told.stream().collect(Collectors.groupingBy(adoption -> adoption.tableId));
        List<AgeCaution> against = cautions.listAll();
        return rows.stream()
                .map(row -> view(
                        row,
                        Objects.requireNonNull(taxonById.get(row.taxonId)).scientificName(),
                        byTable.getOrDefault(row.id(), List.of()),
                        against))
                .toList();
    }

    private GrowthTableView view(
            GrowthTable row, String taxon, List<GrowthTableAdoption> told, List<AgeCaution> against) {
        return new GrowthTableView(
                row.id(),
                row.key,
                row.name,
                taxon,
                GrowthEntries.TableSex.valueOf(row.sex),
                row.bodyMeasure(),
                row.bodyMeasure().unit(),
                row.measureWords,
                row.estimatesAge,
                row.rows,
                row.source,
                row.readOn,
                row.licence,
                told.stream().anyMatch(adoption -> adoption.standsFor(row)),
                told.stream()
                        .map(adoption -> new TableAdoptionView(
                                adoption.id(),
                                adoption.tableRevision,
                                adoption.vetName,
                                adoption.vetRegistration,
                                Objects.requireNonNull(adoption.happenedAt()),
                                adoption.standsFor(row),
                                adoption.withdrawnAt,
                                adoption.withdrawnBecause,
                                records.of(adoption)))
                        .toList(),
                against.stream()
                        .filter(caution -> caution.isAbout(taxon, row.measure))
                        .map(this::view)
                        .toList(),
                records.of(row));
    }

    private AgeCautionView view(AgeCaution row) {
        return new AgeCautionView(
                row.id(),
                row.scientificName,
                GrowthEntries.BodyMeasure.valueOf(row.measure),
                row.words,
                row.source,
                row.readOn,
                records.of(row));
    }
}
