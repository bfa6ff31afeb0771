package org.culvert.exchange.occurrence;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.function.Function;
import org.culvert.platform.CsvText;
import org.jspecify.annotations.Nullable;

/**
 * The columns of {@code occurrence.csv}, each with the term of Darwin Core or Dublin Core that it holds (read in the list of
 * terms for an occurrence core in tdwg/dwc, build/xml/occurrence_core_list.csv, commit 1d8e9d2). What a caller said of the
 * place is not among them, nor is anybody's name.
 */
final class ArchiveTerms {
    static final String DWC = "http://rs.tdwg.org/dwc/terms/";
    static final String DCTERMS = "http://purl.org/dc/terms/";

    /**
     * A column.
     *
     * @param cell what stands in it, of a row as its asker sees it; null: nothing
     */
    record Column(String name, String term, Function<JsonNode, @Nullable Object> cell) {}

    private static final String NOT_KNOWN_WHEN =
            "When it happened is not known; this is the day on which it was reported.";

    private ArchiveTerms() {}

    /** @param licence under which they may be used, or null where none is given */
    static List<Column> columns(@Nullable String licence) {
        return List.of(
                dwc("occurrenceID", row -> text(row, "occurrenceID")),
                dwc("basisOfRecord", row -> text(row, "basisOfRecord")),
                dwc("occurrenceStatus", row -> "present"),
                dwc("eventDate", ArchiveTerms::eventDate),
                dwc("eventRemarks", row -> isOpen(row) ? NOT_KNOWN_WHEN : null),
                // Which kind is not known of a group alone: that it is an animal is
                dwc(
                        "scientificName",
                        row -> row.hasNonNull("scientificName") ? text(row, "scientificName") : "Animalia"),
                dwc("taxonRank", row -> row.hasNonNull("scientificName") ? text(row, "taxonRank") : "kingdom"),
                dwc("kingdom", row -> "Animalia"),
                dwc("vernacularName", row -> CsvText.harmless(text(row, "vernacularName"))),
                dwc("individualCount", row -> row.path("individualCount").asInt()),
                dwc("decimalLatitude", row -> number(row, "decimalLatitude")),
                dwc("decimalLongitude", row -> number(row, "decimalLongitude")),
                dwc("geodeticDatum", row -> text(row, "geodeticDatum")),
                dwc("coordinateUncertaintyInMeters", row -> number(row, "coordinateUncertaintyInMeters")),
                dwc("countryCode", row -> text(row, "countryCode")),
                dwc("locality", row -> CsvText.harmless(text(row, "locality"))),
                dwc("dataGeneralizations", row -> text(row, "dataGeneralizations")),
                dwc("informationWithheld", ArchiveTerms::withheld),
                dwc("occurrenceRemarks", row -> "cause: " + text(row, "cause")),
                new Column("license", DCTERMS + "license", row -> licence));
    }

    private static Column dwc(String term, Function<JsonNode, @Nullable Object> cell) {
        return new Column(term, DWC + term, cell);
    }

    private static @Nullable String text(JsonNode row, String field) {
        return row.hasNonNull(field) ? row.get(field).asText() : null;
    }

    private static @Nullable Object number(JsonNode row, String field) {
        return row.hasNonNull(field)
                ? row.get(field).decimalValue().stripTrailingZeros().toPlainString()
                : null;
    }

    /** ISO 8601-1 has no span that is open at its start, and those who read an archive know no other. */
    private static @Nullable String eventDate(JsonNode row) {
        String told = text(row, "eventDate");
        return told != null && isOpen(row)
                ? told.substring("../".length(), "../".length() + "yyyy-mm-dd".length())
                : told;
    }

    private static boolean isOpen(JsonNode row) {
        return row.path("eventDate").asText().startsWith("../");
    }

    /** Whoever sees the place exactly is not told the caller's words either. */
    private static String withheld(JsonNode row) {
        String told = text(row, "informationWithheld");
        String always = "Who told of it and in what words.";
        return told == null ? always : told + " " + always;
    }
}
