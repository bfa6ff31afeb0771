package org.culvert.exchange.files;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.JobQueue;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.platform.SignInException;
import org.culvert.platform.file.FileParts;
import org.culvert.platform.file.ReadingWatch.Step;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps files as they are brought, has them read, and says how far that is and what came of it. */
@ApplicationScoped
public class BroughtFileService {
    /** How long a file of which nothing was taken can be read again: common practice, no source. */
    private static final int DAYS_KEPT = 30;

    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_TAKING_SECONDS = 3600;

    /** A file that stops the server each time it is read is not read for ever: common practice, no source. */
    private static final int MOST_TIMES_BEGUN = 5;

    private static final TypeReference<Map<String, Object>> AS_OBJECT = new TypeReference<>() {};

    /** Of what was told, which is kept whole whoever asks. */
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();

    @ApplicationScoped
    static class Files implements PanacheRepositoryBase<BroughtFile, UUID> {}

    @ApplicationScoped
    static class Progresses implements PanacheRepositoryBase<BroughtFileProgress, UUID> {}

    private final Files files;
    private final Progresses progresses;
    private final FileParts parts;
    private final JobQueue queue;
    private final RegionService regions;
    private final RecordViews records;
    private final EntityManager entities;
    private final Actor actor;
    private final Clock clock;

    BroughtFileService(
            Files files,
            Progresses progresses,
            DataSource database,
            JobQueue queue,
            RegionService regions,
            RecordViews records,
            EntityManager entities,
            Actor actor,
            Clock clock) {
        this.files = files;
        this.progresses = progresses;
        this.parts = new FileParts(database, "personal.brought_file_parts");
        this.queue = queue;
        this.regions = regions;
        this.records = records;
        this.entities = entities;
        this.actor = actor;
        this.clock = clock;
    }

    /**
     * Keeps a file, and has it read.
     *
     * @param entry what is told beside it, as its kind has it
     * @throws ConflictException if the same file is being read already
     */
    @Transactional
    public BroughtFileView bring(BroughtFileKind kind, Object entry, String fileName, InputStream octets) {
        if (fileName.isBlank()
                || fileName.length() > LONGEST_NAME
                || fileName.chars().anyMatch(Character::isISOControl)) {
            throw InvalidException.of("file", "This is no name of a file.", "at most " + LONGEST_NAME + " letters");
        }
        UUID contentId = UUID.randomUUID();
        entities.createNativeQuery("insert into personal.brought_contents (id, keep_until) values (?1, ?2)")
                .setParameter(1, contentId)
                .setParameter(2, today().plusDays(DAYS_KEPT))
                .executeUpdate();
        FileParts.Kept kept;
        try {
            kept = parts.keep(contentId, octets);
        } catch (IOException e) {
            throw new UncheckedIOException("the file cannot be read", e);
        }
        if (kept.octets() == 0) {
            throw InvalidException.of("file", "The file is empty.", "a file with features");
        }
        return order(new BroughtFile(kind, fileName.strip(), kept, contentId, told(kind, entry)));
    }

    /**
     * Has a file read once more, with other answers, without its being sent.
     *
     * @throws ConflictException if it was taken, is being read, or is kept no longer
     */
    @Transactional
    public BroughtFileView readAgain(BroughtFileKind kind, UUID id, Object entry) {
        BroughtFile before = require(kind, id);
        if (!isKept(before.contentId)) {
            throw new ConflictException("That file was taken, or is kept no longer: bring it again, if it is wanted.");
        }
        return order(new BroughtFile(
                kind,
                before.fileName,
                new FileParts.Kept(before.octets, before.sha256),
                before.contentId,
                told(kind, entry)));
    }

    private BroughtFileView order(BroughtFile row) {
        requireAlone(row);
        files.persistAndFlush(row);
        queue.enqueue(BroughtFileJob.NAME, row.id());
        return view(row, null, true);
    }

    private static Map<String, Object> told(BroughtFileKind kind, Object entry) {
        return MAPPER.convertValue(kind.entry().cast(entry), AS_OBJECT);
    }

    /** Whoever sends a file a second time, from another page, is told where the first is. */
    private void requireAlone(BroughtFile row) {
        lock();
        List<UUID> same = Rows.column(
                entities.createNativeQuery("select f.id from brought_files f"
                                + " left join brought_file_progress p on p.brought_file_id = f.id"
                                + " where f.kind = ?1 and f.sha256 = ?2 and p.finished_at is null and p.failed_at is null"
                                + " limit 1")
                        .setParameter(1, row.kind)
                        .setParameter(2, row.sha256),
                UUID.class);
        if (!same.isEmpty()) {
            throw new ConflictException("The same file is being read now: brought file " + same.get(0) + ".");
        }
    }

    /** Orders are given, begun and called off one after the other. */
    private void lock() {
        entities.createNativeQuery("select cast(pg_advisory_xact_lock(hashtext('brought files')) as text)")
                .getResultList();
    }

    /**
     * Calls off a file that nobody has begun to read. Its octets stay for another reading.
     *
     * @throws SignInException when somebody else brought it
     * @throws ConflictException when its reading was begun
     */
    @Transactional
    public BroughtFileView callOff(BroughtFileKind kind, UUID id) {
        BroughtFile row = require(kind, id);
        if (!row.recordedBy().equals(actor.accountId())) {
            throw SignInException.notTheirs("Somebody else brought that file: whoever brought it calls it off.");
        }
        lock();
        if (progresses.findByIdOptional(id).isPresent()) {
            throw new ConflictException("The reading of that file was begun: it is taken whole, or nothing of it is.");
        }
        progresses.persistAndFlush(BroughtFileProgress.ofNothing(
                id, now(), FileFailure.of("It was called off before anybody began to read it.")));
        return getFile(kind, id);
    }

    /** @throws NotFoundException where there is none of the kind */
    @Transactional
    public BroughtFileView getFile(BroughtFileKind kind, UUID id) {
        BroughtFile row = require(kind, id);
        return view(row, progresses.findById(id), isKept(row.contentId));
    }

    private BroughtFile require(BroughtFileKind kind, UUID id) {
        return files.find("id = ?1 and kind = ?2", id, kind.name())
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("file", id));
    }

    /** The last files of a kind first. */
    @Transactional
    public Page<BroughtFileView> listFiles(BroughtFileKind kind, int limit, @Nullable UUID before) {
        List<BroughtFile> found = files.find(
                        "kind = ?1 and (?2 is null or id < ?2) order by id desc", kind.name(), before)
                .page(0, limit + 1)
                .list();
        records.lookUp(found);
        Map<UUID, BroughtFileProgress> progress =
                progresses
                        .list(
                                "broughtFileId in ?1",
                                found.stream().map(BroughtFile::id).toList())
                        .stream()
                        .collect(Collectors.toMap(one -> one.broughtFileId, Function.identity()));
        Set<UUID> kept = kept(found);
        return Page.of(
                found,
                limit,
                row -> view(row, progress.get(row.id()), kept.contains(row.contentId)),
                row -> row.id().toString());
    }

    private Set<UUID> kept(List<BroughtFile> rows) {
        if (rows.isEmpty()) {
            return Set.of();
        }
        return new HashSet<>(Rows.column(
                entities.createNativeQuery(
                                "select id from personal.brought_contents where erased_at is null and id in (:ids)")
                        .setParameter(
                                "ids", rows.stream().map(row -> row.contentId).toList()),
                UUID.class));
    }

    private boolean isKept(UUID contentId) {
        return !entities.createNativeQuery(
                        "select id from personal.brought_contents where id = ?1 and erased_at is null")
                .setParameter(1, contentId)
                .getResultList()
                .isEmpty();
    }

    private BroughtFileView view(BroughtFile row, @Nullable BroughtFileProgress progress, boolean kept) {
        String state = "waiting";
        if (progress != null) {
            state = progress.result != null
                    ? progress.result.isOfATrial() ? "tried" : "taken"
                    : progress.failedAt != null ? "failed" : "underway";
        }
        return new BroughtFileView(
                row.id(),
                BroughtFileKind.valueOf(row.kind),
                row.fileName,
                row.octets,
                row.told,
                state,
                progress == null ? Step.octets.name() : progress.step,
                progress == null ? 0 : progress.done,
                progress == null ? 0 : progress.whole,
                progress == null ? null : progress.finishedAt == null ? progress.failedAt : progress.finishedAt,
                progress == null ? null : progress.result,
                progress == null ? null : progress.failure,
                kept,
                records.of(row));
    }

    /** What a job is to do. */
    record Order(UUID id, UUID account, Object entry, String fileName, long octets, UUID contentId) {}

    /** What is asked for, or null where it has come to its end before. */
    @Nullable
    Order begin(UUID id) {
        return QuarkusTransaction.requiringNew().call(() -> {
            lock();
            BroughtFile row = files.findById(id);
            BroughtFileProgress before = progresses.findById(id);
            if (row == null || before != null && before.isOver()) {
                return null;
            }
            if (before == null) {
                progresses.persist(new BroughtFileProgress(id, now()));
            } else if (before.timesBegun >= MOST_TIMES_BEGUN) {
                before.fail(
                        now(),
                        FileFailure.of("The server stopped " + MOST_TIMES_BEGUN + " times while it read this file."));
                return null;
            } else {
                before.beginAgain(now());
            }
            Object entry = MAPPER.convertValue(
                    row.told, BroughtFileKind.valueOf(row.kind).entry());
            return new Order(id, row.recordedBy(), entry, row.fileName, row.octets, row.contentId);
        });
    }

    InputStream open(Order order) {
        return parts.open(order.contentId());
    }

    void note(UUID id, Step step, long done, long whole) {
        QuarkusTransaction.requiringNew().run(() -> progresses.findById(id).note(step, done, whole));
    }

    /** Makes the change and ends the reading in one transaction: who begins it again finds that it is done, or nothing of it. */
    void finish(Order order, Supplier<FileResult> change) {
        QuarkusTransaction.requiringNew().timeout(LONGEST_TAKING_SECONDS).run(() -> {
            FileResult result = change.get();
            BroughtFileProgress progress = progresses.findById(order.id());
            if (progress.isOver()) {
                throw new IllegalStateException("the file was taken by another meanwhile");
            }
            progress.finish(now(), result);
            if (!result.isOfATrial()) {
                forget(order.contentId());
            }
        });
    }

    void fail(UUID id, FileFailure why) {
        QuarkusTransaction.requiringNew().run(() -> {
            BroughtFileProgress progress = progresses.findById(id);
            if (progress != null && !progress.isOver()) {
                progress.fail(now(), why);
            }
        });
    }

    /** Files whose time is over; one that is being read is left alone. */
    @Transactional
    void forgetDue() {
        Rows.column(entities.createNativeQuery("""
                                select c.id from personal.brought_contents c
                                where c.erased_at is null and c.keep_until < ?1 and not exists (
                                    select 1 from brought_files f
                                    left join brought_file_progress p on p.brought_file_id = f.id
                                    where f.content_id = c.id and p.finished_at is null and p.failed_at is null)
                                """).setParameter(1, today()), UUID.class)
                .forEach(this::forget);
    }

    private void forget(UUID contentId) {
        for (String statement : List.of(
                "update personal.brought_file_parts set octets = null, erased_at = ?1"
                        + " where content_id = ?2 and erased_at is null",
                "update personal.brought_contents set erased_at = ?1 where id = ?2 and erased_at is null")) {
            entities.createNativeQuery(statement)
                    .setParameter(1, now().atOffset(ZoneOffset.UTC))
                    .setParameter(2, contentId)
                    .executeUpdate();
        }
    }

    private Instant now() {
        return clock.instant();
    }

    private LocalDate today() {
        return LocalDate.ofInstant(now(), regions.zone());
    }
}
