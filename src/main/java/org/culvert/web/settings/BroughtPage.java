package org.culvert.web.settings;

import java.util.Locale;
import org.culvert.exchange.files.BroughtFileView;
import org.culvert.exchange.files.FileResult;
import org.culvert.web.traffic.TriedCounts;
import org.jspecify.annotations.Nullable;

/**
 * A file that was brought, as its page and the list of files show it.
 *
 * @param size of it, with its unit
 * @param done how much of what is done now is done, with its unit where it has one
 * @param whole likewise of all; empty where that is not known
 */
public record BroughtPage(BroughtFileView file, String size, String done, String whole) {
    private static final double KILO = 1000;

    static BroughtPage of(BroughtFileView file) {
        boolean octets = file.step().equals("octets");
        return new BroughtPage(
                file,
                size(file.octets()),
                octets ? size(file.done()) : String.valueOf(file.done()),
                file.whole() == 0 ? "" : octets ? size(file.whole()) : String.valueOf(file.whole()));
    }

    /** What came of it, in figures as they are said; empty where nothing did. */
    public record Result(String version, String features, String entered, String keptLinks, String kilometres) {}

    /** Null until it is taken. */
    public @Nullable Result result() {
        FileResult result = file.result();
        return result == null
                ? null
                : new Result(
                        said(result.networkNumber()),
                        said(result.features()),
                        said(result.entered()),
                        said(result.keptLinks()),
                        result.kilometres() == null ? "" : String.format(Locale.ROOT, "%.1f", result.kilometres()));
    }

    /** Null where it was not tried. */
    public @Nullable TriedCounts tried() {
        FileResult result = file.result();
        return result == null || result.trial() == null ? null : TriedCounts.of(result.trial());
    }

    private static String said(@Nullable Object figure) {
        return figure == null ? "" : figure.toString();
    }

    /** In powers of a thousand (SI Brochure, table 7). */
    private static String size(long octets) {
        return octets < KILO * KILO
                ? String.format(Locale.ROOT, "%.1f kB", octets / KILO)
                : String.format(Locale.ROOT, "%.1f MB", octets / (KILO * KILO));
    }
}
