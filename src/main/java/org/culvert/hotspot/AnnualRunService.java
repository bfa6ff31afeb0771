package org.culvert.hotspot;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/**
 * Takes declared annual runs on. Each cell is made at alpha divided by the number of cells, so that the chance of a false
 * hotspot in any of them is at most alpha, however they depend on each other (Bonferroni's inequality).
 */
@ApplicationScoped
public class AnnualRunService {
    private static final double USUAL_ALPHA = 0.05;
    private static final int USUAL_SIMULATIONS = 999;

    /** A cell's level is told by this many simulated sets beyond the fewest that could reach it. */
    private static final int SETS_BEYOND = 4;

    @ApplicationScoped
    static class AnnualRuns implements PanacheRepositoryBase<AnnualRun, UUID> {}

    private final AnnualRuns annualRuns;
    private final HotspotRunService runs;
    private final RecordViews records;

    AnnualRunService(AnnualRuns annualRuns, HotspotRunService runs, RecordViews records) {
        this.annualRuns = annualRuns;
        this.runs = runs;
        this.records = records;
    }

    /**
     * Declares the cells, all or none.
     *
     * @throws InvalidException naming every cell that cannot be run, and why
     */
    @Transactional
    public AnnualRunView declare(AnnualRunEntry entry) {
        int cells = entry.cells().size();
        double alpha = Objects.requireNonNullElse(entry.alpha(), USUAL_ALPHA);
        int simulations = Math.max(USUAL_SIMULATIONS, (int) Math.ceil(SETS_BEYOND * cells / alpha) - 1);
        checkApart(entry.cells());
        var annual = new AnnualRun(entry.plan(), cells);
        annualRuns.persistAndFlush(annual);
        List<FieldError> errors = new ArrayList<>();
        for (int i = 0; i < cells; i++) {
            AnnualRunEntry.Cell cell = entry.cells().get(i);
            try {
                runs.start(
                        new RunEntry(
                                entry.periodFrom(),
                                entry.periodTo(),
                                cell.months(),
                                cell.seasonWindow(),
                                cell.taxonGroup(),
                                null,
                                entry.reachMetres(),
                                entry.sigmaMetres(),
                                null,
                                simulations,
                                entry.seed(),
                                null,
                                alpha,
                                null,
                                null,
                                new RunEntry.Declaration(cells, entry.plan()),
                                null),
                        annual.id());
            } catch (InvalidException e) {
                for (FieldError error : e.errors()) {
                    boolean ofCell =
                            Set.of("taxonGroup", "months", "seasonWindow").contains(error.field());
                    String field = ofCell ? "cells." + i + "." + error.field() : error.field();
                    errors.add(new FieldError(field, error.detail(), error.wanted(), error.otherReading()));
                }
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors.stream().distinct().toList());
        }
        return view(annual);
    }

    private static void checkApart(List<AnnualRunEntry.Cell> cells) {
        Set<AnnualRunEntry.Cell> met = new HashSet<>();
        for (int i = 0; i < cells.size(); i++) {
            if (!met.add(cells.get(i))) {
                throw InvalidException.of(
                        "cells." + i, "This group and season is declared twice.", "each group and season once");
            }
        }
    }

    @Transactional
    public AnnualRunView getAnnualRun(UUID id) {
        return view(annualRuns.findByIdOptional(id).orElseThrow(() -> new NotFoundException("annual run", id)));
    }

    /** Annual runs, newest first. */
    @Transactional
    public Page<AnnualRunView> listAnnualRuns(int limit, @Nullable UUID before) {
        List<AnnualRun> rows = annualRuns
                .find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, this::view, annual -> annual.id().toString());
    }

    /** The newest annual run all of whose cells are done, or empty where there is none. */
    @Transactional
    public Optional<AnnualRunView> findLatestWhole() {
        return annualRuns
                .find(
                        "from AnnualRun annual where annual.cells = (select count(*) from RunResult result, HotspotRun run"
                                + " where result.runId = run.id and run.annualRunId = annual.id) order by annual.id desc")
                .firstResultOptional()
                .map(this::view);
    }

    private AnnualRunView view(AnnualRun annual) {
        List<RunView> ofCells = runs.listRunsOf(annual.id());
        RunSettings first = ofCells.get(0).settings();
        String sentence = "If only the kinds of chance that are named by its runs were at work, all "
                + annual.cells + " together would name any hotspot in at most "
                + Words.number(100 * first.alpha(), 4) + " % of cases; each is made at "
                + Words.number(100 * first.runAlpha(), 4) + " %. A run besides these is exploratory.";
        return new AnnualRunView(
                annual.id(),
                annual.plan,
                annual.cells,
                sentence,
                (int) ofCells.stream()
                        .filter(run -> run.state().equals(RunState.DONE.word()))
                        .count(),
                ofCells.get(0).exploratoryRunsSoFar(),
                ofCells,
                records.of(annual));
    }
}
