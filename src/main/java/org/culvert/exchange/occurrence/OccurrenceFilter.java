package org.culvert.exchange.occurrence;

import java.time.LocalDate;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.jspecify.annotations.Nullable;

/**
 * Which occurrences are asked for.
 *
 * @param bbox west, south, east, north; across the antimeridian where west is greater than east
 * @param layer whether they are for a layer of a map: collisions alone, and in every box those without a place
 * @param occurrenceId the only one, or null for all
 */
public record OccurrenceFilter(
        @Nullable String taxonGroup,
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        double @Nullable [] bbox,
        @Nullable String scientificName,
        @Nullable String cause,
        boolean layer,
        @Nullable String occurrenceId) {

    static OccurrenceFilter read(
            @Nullable String taxonGroup, @Nullable String from, @Nullable String to, @Nullable String bbox) {
        return new OccurrenceFilter(taxonGroup, day("from", from), day("to", to), box(bbox), null, null, false, null);
    }

    /** In one line, as it is kept of what went out. */
    String words() {
        return "taxonGroup=" + (taxonGroup == null ? "" : taxonGroup) + " from=" + (from == null ? "" : from) + " to="
                + (to == null ? "" : to) + " bbox="
                + (bbox == null ? "" : bbox[0] + "," + bbox[1] + "," + bbox[2] + "," + bbox[3])
                + (scientificName == null ? "" : " scientificName=" + scientificName)
                + (cause == null ? "" : " cause=" + cause)
                + (layer ? " collisions" : "")
                + (occurrenceId == null ? "" : " occurrenceID=" + occurrenceId);
    }

    private static @Nullable LocalDate day(String field, @Nullable String text) {
        return text == null ? null : Paging.day(field, text);
    }

    private static double @Nullable [] box(@Nullable String text) {
        if (text == null) {
            return null;
        }
        String[] parts = text.split(",", -1);
        double[] box = new double[4];
        try {
            for (int i = 0; i < 4; i++) {
                box[i] = Double.parseDouble(parts[i].strip());
            }
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            throw wrongBox();
        }
        boolean sane = parts.length == 4
                && box[0] >= -180
                && box[2] <= 180
                && box[1] >= -90
                && box[3] <= 90
                && box[0] <= box[2]
                && box[1] <= box[3];
        if (!sane) {
            throw wrongBox();
        }
        return box;
    }

    private static InvalidException wrongBox() {
        return InvalidException.of("bbox", "This is no box.", "west,south,east,north in degrees");
    }
}
