package org.culvert.exchange.occurrence;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.platform.CsvText;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/**
 * Makes a Darwin Core Archive of what was found: {@code occurrence.csv}, {@code meta.xml} and {@code eml.xml} in one zip. Each
 * row is written as its asker sees it. A release is no occurrence, and is in none.
 */
@ApplicationScoped
public class ArchiveService {
    private static final int FINGERPRINT_LENGTH = 32;

    private final OccurrenceService occurrences;
    private final DisclosureService disclosure;
    private final RosterService roster;
    private final RegionService regions;
    private final ObjectMapper mapper;
    private final Clock clock;

    ArchiveService(
            OccurrenceService occurrences,
            DisclosureService disclosure,
            RosterService roster,
            RegionService regions,
            ObjectMapper mapper,
            Clock clock) {
        this.occurrences = occurrences;
        this.disclosure = disclosure;
        this.roster = roster;
        this.regions = regions;
        this.mapper = mapper;
        this.clock = clock;
    }

    /**
     * Writes an archive page by page to a file, which whoever asked deletes. It is whole before anybody gets the first octet.
     *
     * @throws UncheckedIOException if it cannot be written
     */
    Path make(OccurrenceFilter filter) {
        try {
            Path file = Files.createTempFile("culvert-archive-", ".zip");
            try (OutputStream out = Files.newOutputStream(file);
                    var zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
                write(zip, filter);
            } catch (IOException | RuntimeException e) {
                Files.deleteIfExists(file);
                throw e;
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException("an archive of occurrences cannot be written", e);
        }
    }

    private void write(ZipOutputStream zip, OccurrenceFilter filter) throws IOException {
        DisclosureService.DisclosureSettingsView settings = disclosure.settings();
        List<ArchiveTerms.Column> columns = ArchiveTerms.columns(settings.archiveLicence());
        MessageDigest digest = sha256();
        zip.putNextEntry(new ZipEntry("occurrence.csv"));
        var rows =
                new BufferedWriter(new OutputStreamWriter(new DigestOutputStream(zip, digest), StandardCharsets.UTF_8));
        CSVPrinter printer = CsvText.printer(
                rows, columns.stream().map(ArchiveTerms.Column::name).toList());
        String after = null;
        do {
            Page<OccurrenceView> page = occurrences.listOccurrences(filter, Paging.MAXIMUM_LIMIT, after);
            for (OccurrenceView occurrence : page.items()) {
                JsonNode seen = mapper.valueToTree(occurrence);
                printer.printRecord(columns.stream()
                        .map(column -> column.cell().apply(seen))
                        .toList());
            }
            after = page.next();
        } while (after != null);
        // Only flushed: closing it would close the zip
        printer.flush();
        rows.flush();
        zip.closeEntry();
        entry(zip, "meta.xml", ArchiveXml.meta(columns));
        entry(
                zip,
                "eml.xml",
                ArchiveXml.eml(
                        dataset(HexFormat.of().formatHex(digest.digest()).substring(0, FINGERPRINT_LENGTH), settings)));
        zip.finish();
    }

    private ArchiveXml.Dataset dataset(String fingerprint, DisclosureService.DisclosureSettingsView settings) {
        String region = regions.findDescription()
                .map(RegionService.RegionDescription::name)
                .orElse(null);
        String creator = creator(region);
        LocalDate today = LocalDate.ofInstant(clock.instant(), regions.zone());
        return new ArchiveXml.Dataset(
                "culvert-occurrences/" + fingerprint,
                "Animals found" + (region == null ? "" : " in " + region) + ", as told to " + creator,
                creator,
                today,
                "One row for each kind of animal that was found in need of help, or dead, at one place and time. What was let"
                        + " go after care is not among them. They come from calls and not from a survey: where few people"
                        + " are, few animals are found. Places and times of sensitive species are told roughly, or not at"
                        + " all; each row says so.",
                settings.archiveLicence(),
                settings.archiveContact());
    }

    private String creator(@Nullable String region) {
        return roster.listOrganisations("network").stream()
                .map(RosterService.OrganisationView::name)
                .findFirst()
                .orElse(region == null ? "a wildlife rescue network" : "the wildlife rescue network of " + region);
    }

    private static void entry(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }
}
