package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.platform.InvalidException;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Reads which animals and which days of the year a question is about. */
@ApplicationScoped
class SeasonReader {
    private final SeasonWindowService windows;
    private final TaxonService taxa;

    SeasonReader(SeasonWindowService windows, TaxonService taxa) {
        this.windows = windows;
        this.taxa = taxa;
    }

    /**
     * @param months as in a query: numbers with commas between them
     * @param on the day on which a window must be valid
     * @throws InvalidException naming the field that is wrong
     */
    RunSettings.Season read(
            @Nullable String taxonGroup, @Nullable String months, @Nullable String seasonWindow, LocalDate on) {
        if (months == null || months.isBlank()) {
            return read(taxonGroup, (List<Integer>) null, seasonWindow, on);
        }
        List<Integer> numbers = new ArrayList<>();
        for (String month : months.split(",", -1)) {
            try {
                numbers.add(Integer.valueOf(month.strip()));
            } catch (NumberFormatException notANumber) {
                throw wrongMonth();
            }
        }
        return read(taxonGroup, numbers, seasonWindow, on);
    }

    RunSettings.Season read(
            @Nullable String taxonGroup, @Nullable List<Integer> months, @Nullable String seasonWindow, LocalDate on) {
        if (taxonGroup != null) {
            taxa.requireGroup("taxonGroup", taxonGroup);
        }
        if (months != null && months.stream().anyMatch(month -> month < 1 || month > 12)) {
            throw wrongMonth();
        }
        if (seasonWindow == null) {
            return RunSettings.Season.ofMonths(
                    months == null || months.isEmpty()
                            ? IntStream.rangeClosed(1, 12).boxed().toList()
                            : months);
        }
        if (months != null && !months.isEmpty()) {
            throw InvalidException.of("seasonWindow", "Months are given too.", "either months or seasonWindow");
        }
        if (taxonGroup == null) {
            throw InvalidException.of(
                    "seasonWindow", "A season window belongs to a group of animals.", "a taxonGroup with it");
        }
        return windows.findSeason(taxonGroup, seasonWindow, on)
                .orElseThrow(() -> InvalidException.of(
                        "seasonWindow",
                        "The group " + taxonGroup + " has no season window of that name here, valid on " + on + ".",
                        String.join(", ", windows.namesOf(taxonGroup))));
    }

    private static InvalidException wrongMonth() {
        return InvalidException.of("months", "There is no such month.", "numbers from 1 to 12, such as 10,11,12");
    }
}
