package org.culvert.hotspot;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.ConflictException;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.JobQueue;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.SightModule;
import org.jspecify.annotations.Nullable;

/** Takes hotspot runs on, says how far they have come, and hands out what came of them. */
@ApplicationScoped
public class HotspotRunService {
    /** A finished run's document, to the byte. */
    public record Document(String text, String sha256) {}

    @ApplicationScoped
    static class Runs implements PanacheRepositoryBase<HotspotRun, UUID> {}

    @ApplicationScoped
    static class Progresses implements PanacheRepositoryBase<RunProgress, UUID> {}

    @ApplicationScoped
    static class Results implements PanacheRepositoryBase<RunResult, UUID> {}

    @ApplicationScoped
    static class Cancellations implements PanacheRepositoryBase<RunCancellation, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of("a_run_is_called_off_once", "That run was called off already.");
        }
    }

    /** More would only keep others waiting. */
    private static final int MOST_WAITING = 100;

    /** Of more runs, the older ones are found by their list. */
    private static final int MOST_LOOKED_AT = 500;

    private final Runs runs;
    private final Progresses progresses;
    private final Results results;
    private final Cancellations cancellations;
    private final RunSettingsReader reader;
    private final JobQueue queue;
    private final ObjectMapper mapper;
    private final AuthoritySight authority;
    private final RecordViews records;

    HotspotRunService(
            Runs runs,
            Progresses progresses,
            Results results,
            Cancellations cancellations,
            RunSettingsReader reader,
            JobQueue queue,
            ObjectMapper mapper,
            AuthoritySight authority,
            RecordViews records) {
        this.runs = runs;
        this.progresses = progresses;
        this.results = results;
        this.cancellations = cancellations;
        this.reader = reader;
        this.queue = queue;
        this.mapper = mapper;
        this.authority = authority;
        this.records = records;
    }

    /** Takes a run on; it is computed by whichever node is free. */
    @Transactional
    public RunView start(RunEntry entry) {
        return start(entry, null);
    }

    /** Takes a run on as one of those that were decided on together. */
    RunView start(RunEntry entry, @Nullable UUID annualRunId) {
        long waiting = runs.count("id not in (select r.runId from RunResult r)"
                + " and id not in (select p.runId from RunProgress p where p.failedAt is not null)"
                + " and id not in (select c.runId from RunCancellation c)");
        if (waiting >= MOST_WAITING) {
            throw new ConflictException(waiting + " runs are waiting already; ask again when some of them are done.");
        }
        var run = new HotspotRun(reader.read(entry), annualRunId);
        runs.persistAndFlush(run);
        queue.enqueue(HotspotJob.NAME, run.id());
        return view(run, null, null, null);
    }

    /**
     * Calls a run off: it is not begun any more, or stops within a second.
     *
     * @throws ConflictException where it has ended already
     */
    @Transactional
    public RunView cancel(UUID id, String reason) {
        HotspotRun run = require(id);
        RunState state = getStanding(id).state();
        if (!state.isUnderWay()) {
            throw new ConflictException("That run has ended already: it is " + state.word() + ".");
        }
        cancellations.persistAndFlush(new RunCancellation(run.id(), reason));
        return getRun(id);
    }

    /** How far a run has come. */
    record Standing(RunState state, int simulationsDone, int simulationsTotal) {}

    @Transactional
    Standing getStanding(UUID id) {
        HotspotRun run = require(id);
        RunProgress progress = progresses.findById(id);
        RunState state = RunState.of(progress, results.findById(id), cancellations.count("runId", id) > 0);
        int total = run.settings.simulations();
        return new Standing(
                state, state == RunState.DONE ? total : progress == null ? 0 : progress.simulationsDone, total);
    }

    @Transactional
    public RunView getRun(UUID id) {
        HotspotRun run = require(id);
        return view(
                run,
                progresses.findById(id),
                results.findById(id),
                cancellations.find("runId", id).firstResult());
    }

    /** The runs of an annual run, in the order in which they were declared. */
    @Transactional
    List<RunView> listRunsOf(UUID annualRunId) {
        List<HotspotRun> rows = runs.list("annualRunId = ?1 order by id", annualRunId);
        return Page.of(rows, rows.size(), viewer(rows), run -> run.id().toString())
                .items();
    }

    /** Runs, newest first. */
    @Transactional
    public Page<RunView> listRuns(int limit, @Nullable UUID before) {
        List<HotspotRun> rows = runs.find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, viewer(rows), run -> run.id().toString());
    }

    /** Finished runs of the same days, the newest of each group and season alone, this one among them. */
    @Transactional
    public List<RunView> listOfSamePeriod(UUID id) {
        RunSettings settings = require(id).settings;
        List<HotspotRun> rows = runs.find("id in (select r.runId from RunResult r) order by id desc")
                .page(0, MOST_LOOKED_AT)
                .list();
        Set<List<Object>> met = new HashSet<>();
        List<HotspotRun> alike = rows.stream()
                .filter(run -> run.settings.periodFrom().equals(settings.periodFrom())
                        && run.settings.periodTo().equals(settings.periodTo()))
                .filter(run -> run.id().equals(id)
                        || !(Objects.equals(run.settings.taxonGroup(), settings.taxonGroup())
                                && run.settings.season().equals(settings.season())))
                .filter(run -> met.add(Arrays.asList(run.settings.taxonGroup(), run.settings.season())))
                .toList();
        return alike.isEmpty() ? List.of() : alike.stream().map(viewer(alike)).toList();
    }

    private Function<HotspotRun, RunView> viewer(List<HotspotRun> rows) {
        List<UUID> ids = rows.stream().map(HotspotRun::id).toList();
        Map<UUID, RunProgress> progress = ids.isEmpty()
                ? Map.of()
                : progresses.list("runId in ?1", ids).stream()
                        .collect(Collectors.toMap(row -> row.runId, Function.identity()));
        Map<UUID, RunResult> result = ids.isEmpty()
                ? Map.of()
                : results.list("runId in ?1", ids).stream()
                        .collect(Collectors.toMap(row -> row.runId, Function.identity()));
        Map<UUID, RunCancellation> cancelled = ids.isEmpty()
                ? Map.of()
                : cancellations.list("runId in ?1", ids).stream()
                        .collect(Collectors.toMap(row -> row.runId, Function.identity()));
        return run -> view(run, progress.get(run.id()), result.get(run.id()), cancelled.get(run.id()));
    }

    /**
     * The document of a finished run, to the byte unless something in it is not for the asker.
     *
     * @throws ConflictException while there is none
     */
    @Transactional
    public Document getDocument(UUID id) {
        require(id);
        RunResult result = results.findByIdOptional(id)
                .orElseThrow(() -> new ConflictException("That run has no result yet; look at its state."));
        HotspotReport whole = read(result);
        HotspotReport seen = authority.seen(whole);
        return seen == whole ? new Document(result.document, result.documentSha256) : written(seen);
    }

    /** The report of a finished run as the asker sees it. */
    @Transactional
    public HotspotReport getReport(UUID id) {
        require(id);
        return authority.seen(read(results.findByIdOptional(id)
                .orElseThrow(() -> new ConflictException("That run has no result yet; look at its state."))));
    }

    private HotspotReport read(RunResult result) {
        try {
            return mapper.readValue(result.document, HotspotReport.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a kept document cannot be read", e);
        }
    }

    private Document written(HotspotReport seen) {
        try {
            String text = mapper.writer().withAttribute(SightModule.KEPT, true).writeValueAsString(seen);
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return new Document(text, HexFormat.of().formatHex(digest));
        } catch (JsonProcessingException | NoSuchAlgorithmException e) {
            throw new IllegalStateException("a report cannot be written", e);
        }
    }

    /** The report of a finished run, or empty while there is none. */
    @Transactional
    public Optional<HotspotReport> findReport(UUID id) {
        require(id);
        return results.findByIdOptional(id).map(result -> getReport(id));
    }

    private HotspotRun require(UUID id) {
        return runs.findByIdOptional(id).orElseThrow(() -> new NotFoundException("hotspot run", id));
    }

    private RunView view(
            HotspotRun run,
            @Nullable RunProgress progress,
            @Nullable RunResult result,
            @Nullable RunCancellation cancelled) {
        RunState state = RunState.of(progress, result, cancelled != null);
        return new RunView(
                run.id(),
                run.recordedAt(),
                run.declared,
                runs.count("declared", false),
                run.settings,
                state.word(),
                result != null ? run.settings.simulations() : progress == null ? 0 : progress.simulationsDone,
                run.settings.simulations(),
                progress == null ? 0 : progress.timesBegun,
                progress == null ? null : progress.begunAt,
                result == null ? null : result.finishedAt,
                progress == null ? null : progress.failure,
                cancelled == null ? null : cancelled.reason,
                result == null ? null : result.engineVersion,
                result == null ? null : result.networkNumber,
                result == null ? null : result.inputsSha256,
                result == null ? null : result.documentSha256,
                result == null ? null : RunView.Links.of(run.id()),
                records.of(run));
    }
}
