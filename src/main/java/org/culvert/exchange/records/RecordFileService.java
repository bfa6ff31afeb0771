package org.culvert.exchange.records;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.reading.Axes;
import org.culvert.exchange.reading.Separator;
import org.culvert.exchange.records.RecordInspectionView.RecordFormerReading;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps files of old records as they come, looks through them, and forgets them. */
@ApplicationScoped
public class RecordFileService {
    /** Why a file is not wanted any more. */
    public record CallingOffEntry(
            @NotBlank @Size(max = 2000) String reason) {}

    /** How long a file waits for somebody to take it in: common practice, no source. */
    private static final int DAYS_KEPT = 90;

    private static final int LONGEST_NAME = 200;

    /** Of what was found, which is kept whole whoever asks. */
    private static final ObjectMapper MAPPER =
            new ObjectMapper().registerModule(new SimpleModule().addSerializer(String.class, new WithoutNul()));

    /** The database keeps no NUL. */
    private static final class WithoutNul extends StdSerializer<String> {
        private static final long serialVersionUID = 1L;

        WithoutNul() {
            super(String.class);
        }

        @Override
        public void serialize(String text, JsonGenerator out, SerializerProvider provider) throws IOException {
            out.writeString(text.replace('\0', '␀'));
        }
    }

    @ApplicationScoped
    static class Files implements PanacheRepositoryBase<RecordFile, UUID> {}

    private final Files files;
    private final RecordFileParts parts;
    private final RecordFileText text;
    private final RecordInspector inspector;
    private final RegionService regions;
    private final RecordViews records;
    private final EntityManager entities;
    private final Actor actor;
    private final Clock clock;

    RecordFileService(
            Files files,
            RecordFileParts parts,
            RecordFileText text,
            RecordInspector inspector,
            RegionService regions,
            RecordViews records,
            EntityManager entities,
            Actor actor,
            Clock clock) {
        this.files = files;
        this.parts = parts;
        this.text = text;
        this.inspector = inspector;
        this.regions = regions;
        this.records = records;
        this.entities = entities;
        this.actor = actor;
        this.clock = clock;
    }

    /**
     * Keeps a file and looks through it.
     *
     * @throws InvalidException if it is no text of a table
     * @throws ConflictException if it is there already
     */
    @Transactional
    public RecordFileView bring(@Nullable String fileName, InputStream octets) {
        String name = fileName == null || fileName.isBlank() ? "records.csv" : fileName.strip();
        if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            throw InvalidException.of("fileName", "This is no name of a file.", "at most " + LONGEST_NAME + " letters");
        }
        RecordFile row = keep(name, octets);
        RecordFileText.Inspected inspected = text.inspect(row.contentId, row.encoding, null, null, today(), box());
        if (inspected.table().rows() == 0) {
            throw InvalidException.of(
                    "body", "There is no row below the headings.", "a table as text, with a row for each record");
        }
        RecordInspectionView found = inspector.view(
                row.encodingIsSure,
                inspected,
                findFormer(row.id(), inspected.start().headings()));
        entities.createNativeQuery("insert into personal.record_file_inspections (record_file_id, found)"
                        + " values (?1, cast(?2 as jsonb))")
                .setParameter(1, row.id())
                .setParameter(2, json(found))
                .executeUpdate();
        return view(row, found);
    }

    private RecordFile keep(String name, InputStream octets) {
        UUID contentId = UUID.randomUUID();
        RecordFileParts.Seen seen;
        try {
            seen = parts.keep(contentId, octets);
        } catch (IOException e) {
            throw new UncheckedIOException("the file cannot be read", e);
        }
        if (seen.octets() == 0) {
            throw InvalidException.of("body", "The file is empty.", "a table as text");
        }
        requireText(seen.beginning());
        requireNew(seen.sha256());
        var row = new RecordFile(name, contentId, seen, today().plusDays(DAYS_KEPT));
        files.persistAndFlush(row);
        return row;
    }

    /** A workbook is a ZIP archive, or an older compound file: such octets are no text in any encoding. */
    private static void requireText(byte[] beginning) {
        boolean zip = beginning.length >= 4 && beginning[0] == 'P' && beginning[1] == 'K' && beginning[2] == 3;
        boolean compound = beginning.length >= 4 && (beginning[0] & 0xff) == 0xd0 && (beginning[1] & 0xff) == 0xcf;
        boolean pdf = beginning.length >= 4 && beginning[0] == '%' && beginning[1] == 'P' && beginning[2] == 'D';
        if (zip || compound || pdf) {
            throw InvalidException.of(
                    "body",
                    "This is " + (pdf ? "a PDF" : "a workbook or an archive") + ", and no text.",
                    "a table as text: save the sheet as CSV, best in UTF-8");
        }
    }

    private void requireNew(byte[] sha256) {
        files.find("sha256 = ?1 and calledOffAt is null", (Object) sha256)
                .firstResultOptional()
                .ifPresent(before -> {
                    throw new ConflictException(
                            "The same file is there already, octet by octet: record file " + before.id() + ".");
                });
    }

    /** What a file shows if its text is taken apart in another way. Nothing is kept of it. */
    @Transactional
    public RecordInspectionView inspect(
            UUID id, @Nullable String encoding, @Nullable Separator separator, @Nullable Long headingRow) {
        RecordFile row = require(id);
        RecordFileText.Inspected inspected = inspected(row, encoding, separator, headingRow);
        return inspector.view(
                row.encodingIsSure,
                inspected,
                findFormer(row.id(), inspected.start().headings()));
    }

    RecordFileText.Inspected inspected(
            RecordFile row, @Nullable String encoding, @Nullable Separator separator, @Nullable Long headingRow) {
        requireKept(row);
        String named = encoding == null ? row.encoding : encoding;
        if (!RecordFileText.encodings().contains(named)) {
            throw InvalidException.of(
                    "encoding", "No such encoding is read.", "one of " + String.join(", ", RecordFileText.encodings()));
        }
        return text.inspect(row.contentId, named, separator, headingRow, today(), box());
    }

    private static void requireKept(RecordFile row) {
        if (row.calledOffAt != null) {
            throw new ConflictException("That file was called off: " + row.calledOffBecause);
        }
        if (row.erasedAt != null) {
            throw new ConflictException(
                    "The octets of that file are no longer kept: bring it again, if it is still wanted.");
        }
    }

    @Transactional
    public RecordFileView getFile(UUID id) {
        return view(require(id), findInspection(id));
    }

    /** Files, the newest first; without what was found in them. */
    @Transactional
    public Page<RecordFileView> listFiles(int limit, @Nullable UUID before) {
        List<RecordFile> found = files.find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        records.lookUp(found);
        return Page.of(found, limit, row -> view(row, null), row -> row.id().toString());
    }

    /** Forgets a file that nobody wants; that it was there stays. */
    @Transactional
    public RecordFileView callOff(UUID id, CallingOffEntry entry) {
        RecordFile row = files.findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
                .orElseThrow(() -> new NotFoundException("record file", id));
        requireKept(row);
        boolean taken = !entities.createNativeQuery("select t.id from record_takings t"
                        + " join record_trials r on r.id = t.trial_id"
                        + " left join record_taking_progress p on p.taking_id = t.id"
                        + " where r.record_file_id = ?1 and p.failed_at is null limit 1")
                .setParameter(1, id)
                .getResultList()
                .isEmpty();
        if (taken) {
            throw new ConflictException("Rows of that file were taken in; it can no longer be called off.");
        }
        row.callOff(clock.instant(), actor.accountId(), entry.reason());
        files.flush();
        forget(id);
        entities.refresh(row);
        return getFile(id);
    }

    /** Files whose time is over. */
    @Transactional
    void forgetDue() {
        files.list("erasedAt is null and keepUntil < ?1", today()).forEach(row -> forget(row.id()));
    }

    private void forget(UUID id) {
        entities.createNativeQuery("select cast(personal.forget_record_file(?1, ?2) as text)")
                .setParameter(1, id)
                .setParameter(2, clock.instant())
                .getResultList();
    }

    /** A file whose octets are there to be read. */
    RecordFile requireWhole(UUID id) {
        RecordFile row = require(id);
        requireKept(row);
        return row;
    }

    RecordFile require(UUID id) {
        return files.findByIdOptional(id).orElseThrow(() -> new NotFoundException("record file", id));
    }

    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), regions.zone());
    }

    Axes.@Nullable Box box() {
        return regions.findRegion()
                .map(region -> new Axes.Box(region.south(), region.west(), region.north(), region.east()))
                .orElse(null);
    }

    private @Nullable RecordInspectionView findInspection(UUID id) {
        List<?> found = entities.createNativeQuery(
                        "select cast(found as text) from personal.record_file_inspections where record_file_id = ?1")
                .setParameter(1, id)
                .getResultList();
        Object text = found.isEmpty() ? null : found.get(0);
        if (text == null) {
            return null;
        }
        try {
            return MAPPER.readValue((String) text, RecordInspectionView.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what was found in a file cannot be read", e);
        }
    }

    /** The last reading of another file with the same headings, one with a name before others. */
    @Nullable
    RecordFormerReading findFormer(UUID id, List<String> headings) {
        List<RecordReading> found = entities.createNativeQuery(
                        "select * from record_readings where md5(headings::text) = md5(cast(?1 as jsonb)::text)"
                                + " and headings = cast(?1 as jsonb) and record_file_id <> ?2"
                                + " order by name is null, recorded_at desc, id desc limit 1",
                        RecordReading.class)
                .setParameter(1, json(headings))
                .setParameter(2, id)
                .getResultList();
        return found.stream()
                .findFirst()
                .map(reading -> new RecordFormerReading(reading.id(), reading.name, reading.settings))
                .orElse(null);
    }

    private String json(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what was found in a file cannot be written", e);
        }
    }

    private RecordFileView view(RecordFile row, @Nullable RecordInspectionView inspection) {
        return new RecordFileView(
                row.id(),
                row.fileName,
                row.octets,
                HexFormat.of().formatHex(row.sha256),
                row.keepUntil,
                row.calledOffAt,
                row.calledOffBecause,
                row.erasedAt,
                findReading(row.id()),
                inspection,
                records.of(row));
    }

    private @Nullable UUID findReading(UUID id) {
        return entities
                .createQuery(
                        "select r.id from RecordReading r where r.recordFileId = ?1 order by r.recordedAt desc, r.id desc",
                        UUID.class)
                .setParameter(1, id)
                .setMaxResults(1)
                .getResultList()
                .stream()
                .findFirst()
                .orElse(null);
    }
}
