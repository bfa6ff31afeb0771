package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.incubation.LoggerFile;
import org.culvert.care.incubation.TemperatureSeries;
import org.culvert.care.incubation.TemperatureSeries.Reading;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.TooLargeException;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/**
 * Keeps temperatures of the substrate. A source says one thing at a time: what it said already is left out when it comes again,
 * since loggers give out all they hold, and another temperature at the same time is refused.
 */
@ApplicationScoped
public class TemperatureService {
    private static final int LARGEST_FILE = 8_000_000;
    private static final Instant EARLIEST = Instant.parse("2000-01-01T00:00:00Z");

    private final ClutchRepositories.Clutches clutches;
    private final ClutchRepositories.TemperatureRecords records;
    private final TemperatureStore store;
    private final ClutchReader reader;
    private final RegionService region;
    private final Clock clock;

    TemperatureService(
            ClutchRepositories.Clutches clutches,
            ClutchRepositories.TemperatureRecords records,
            TemperatureStore store,
            ClutchReader reader,
            RegionService region,
            Clock clock) {
        this.clutches = clutches;
        this.records = records;
        this.store = store;
        this.reader = reader;
        this.region = region;
        this.clock = clock;
    }

    /** One temperature, read by somebody. */
    @Transactional
    public ClutchViews.ClutchView add(UUID id, ClutchEntries.TemperatureEntry entry) {
        Clutch clutch = require(id);
        Instant at = Corrections.passed("at", entry.at(), clock).truncatedTo(ChronoUnit.MILLIS);
        if (at.isBefore(EARLIEST)) {
            throw InvalidException.of("at", "No such time is meant.", "a time from 2000 on");
        }
        Double known = store.known(id, entry.source(), at, at).get(at);
        if (known != null) {
            throw new ConflictException("This source has told the temperature at that time already: " + known + " °C.");
        }
        keep(id, entry.source(), "byHand", List.of(new Reading(at, entry.celsius())), null);
        return reader.view(clutch);
    }

    /**
     * The file of a logger, all of it or nothing.
     *
     * @throws InvalidException naming the rows that are wrong
     */
    @Transactional
    public ClutchViews.LoggerFileView addFile(UUID id, ClutchEntries.LoggerFileEntry entry, InputStream csv) {
        Clutch clutch = require(id);
        String source = source(entry.source());
        byte[] file = bytes(csv);
        LoggerFile.Read read = LoggerFile.read(
                text(file),
                new LoggerFile.Form(
                        entry.timeColumn(), entry.temperatureColumn(), offset(entry.utcOffset()), region.zone()));
        List<FieldError> wrong = new ArrayList<>(read.troubles().stream()
                .map(trouble -> new FieldError(trouble.field(), trouble.detail(), trouble.wanted(), null))
                .toList());
        int known = read.repeated();
        List<Reading> fresh = new ArrayList<>();
        if (wrong.isEmpty()) {
            Map<Instant, Double> before = before(id, source, read.rows());
            Instant latest = clock.instant().plusSeconds(300);
            for (LoggerFile.Row row : read.rows()) {
                Double told = before.get(row.at());
                if (row.at().isBefore(EARLIEST) || row.at().isAfter(latest)) {
                    wrong.add(error(
                            "Row " + row.line() + ": " + row.at()
                                    + " cannot be meant: the clock of the logger may be wrong.",
                            "a time from 2000 on that has passed"));
                } else if (told == null) {
                    fresh.add(new Reading(row.at(), row.celsius()));
                } else if (told == row.celsius()) {
                    known++;
                } else {
                    wrong.add(error(
                            "Row " + row.line() + ": at " + row.at() + " this source has told " + told + " °C already.",
                            "the same temperature, or take back what was entered before"));
                }
            }
        }
        if (!wrong.isEmpty()) {
            throw new InvalidException(shortened(wrong));
        }
        if (!fresh.isEmpty()) {
            keep(id, source, "loggerFile", fresh, sha256(file));
        }
        return new ClutchViews.LoggerFileView(fresh.size(), known, reader.view(clutch));
    }

    /** What stands, in the order of time. */
    @Transactional
    public Page<ClutchViews.TemperatureReadingView> list(UUID id, int limit, @Nullable String cursor) {
        require(id);
        return Page.of(
                store.page(id, after(cursor), limit + 1),
                limit,
                kept -> new ClutchViews.TemperatureReadingView(kept.at(), kept.celsius(), kept.source()),
                kept -> Long.toString(kept.number()));
    }

    /** All that stands, for a picture. */
    @Transactional
    public TemperatureSeries series(UUID id) {
        require(id);
        return TemperatureSeries.of(store.readings(id));
    }

    private void keep(UUID id, String source, String kind, List<Reading> readings, @Nullable String sha256) {
        var record = new TemperatureRecord(id, source, kind, readings, sha256);
        records.persistAndFlush(record);
        store.insert(record, readings);
    }

    private Map<Instant, Double> before(UUID id, String source, List<LoggerFile.Row> rows) {
        Instant first =
                rows.stream().map(LoggerFile.Row::at).min(Instant::compareTo).orElseThrow();
        Instant last =
                rows.stream().map(LoggerFile.Row::at).max(Instant::compareTo).orElseThrow();
        return store.known(id, source, first, last);
    }

    private static List<FieldError> shortened(List<FieldError> wrong) {
        if (wrong.size() <= LoggerFile.MOST_TROUBLES + 1) {
            return wrong;
        }
        List<FieldError> some = new ArrayList<>(wrong.subList(0, LoggerFile.MOST_TROUBLES));
        some.add(error((wrong.size() - some.size()) + " more rows are wrong.", "each row as the ones before"));
        return some;
    }

    private static FieldError error(String detail, String wanted) {
        return new FieldError("csv", detail, wanted, null);
    }

    private static @Nullable ZoneOffset offset(@Nullable String told) {
        try {
            return told == null ? null : ZoneOffset.of(told.strip());
        } catch (DateTimeException e) {
            throw InvalidException.of("utcOffset", "This is no offset from UTC.", "such as +10:00, or Z");
        }
    }

    private static @Nullable Long after(@Nullable String cursor) {
        if (cursor == null) {
            return null;
        }
        if (!cursor.matches("\\d{1,18}")) {
            throw InvalidException.of("cursor", "This is no cursor.", "next of the page before");
        }
        return Long.valueOf(cursor);
    }

    private static String source(@Nullable String told) {
        String source = told == null ? "" : told.strip();
        if (source.isEmpty() || source.length() > 200 || source.chars().anyMatch(Character::isISOControl)) {
            throw InvalidException.of("source", "It does not say which logger.", "a name, at most 200 characters");
        }
        return source;
    }

    private static byte[] bytes(InputStream csv) {
        try {
            byte[] file = csv.readNBytes(LARGEST_FILE + 1);
            if (file.length > LARGEST_FILE) {
                throw new TooLargeException(LARGEST_FILE);
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** UTF-8, or else Latin-1, in which older loggers write their degrees. */
    private static String text(byte[] file) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file))
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            return new String(file, StandardCharsets.ISO_8859_1);
        }
    }

    private static String sha256(byte[] file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private Clutch require(UUID id) {
        return clutches.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clutch", id));
    }
}
