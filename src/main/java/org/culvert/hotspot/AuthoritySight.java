package org.culvert.hotspot;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.SmallNumbers;
import org.culvert.platform.Role;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.platform.sight.Sight;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/**
 * What a roads authority sees of counts: no small numbers, and places of a sensitive species no finer than its category. Whoever
 * keeps the network's own records sees all; the document of a run stays as it is.
 */
@ApplicationScoped
public class AuthoritySight {
    private static final String WITHHELD =
            "%d stretches are not told to you: a species of this group is sensitive, and its"
                    + " places are told under an agreement only.";
    private static final String GENERALISED =
            "A species of this group is sensitive: each stretch lies somewhere within the box"
                    + " that is drawn, of cells of %s degree, and its chainages are those of the cells. Stretches with fewer than %d"
                    + " collisions are not told: %d.";

    private final Sight sight;
    private final DisclosureService disclosure;
    private final TaxonService taxa;

    AuthoritySight(Sight sight, DisclosureService disclosure, TaxonService taxa) {
        this.sight = sight;
        this.disclosure = disclosure;
        this.taxa = taxa;
    }

    private boolean seesAll() {
        return sight.viewer().hasAny(Role.COORDINATOR, Role.OFFICER, Role.ADMIN);
    }

    /** The smallest count that the asker may see, or null where every count. */
    public @Nullable Integer smallestCount() {
        return seesAll() ? null : Integer.valueOf(disclosure.settings().smallestCount());
    }

    /** Whether the asker is told no place of a group, since a species of it is sensitive. */
    public boolean withholdsPlacesOf(@Nullable String taxonGroup) {
        return taxonGroup != null
                && !seesAll()
                && taxa.findStrictestGrid(taxonGroup).isPresent();
    }

    /** The report as the asker sees it; the same one where nothing is left out. */
    HotspotReport seen(HotspotReport report) {
        Integer smallest = smallestCount();
        if (smallest == null) {
            return report;
        }
        List<HotspotReport.Month> months = withoutSmall(report.months(), smallest);
        String group = report.settings().taxonGroup();
        Double grid = group == null || report.hotspots().isEmpty()
                ? null
                : taxa.findStrictestGrid(group).orElse(null);
        if (grid == null) {
            return months.equals(report.months()) ? report : with(report, months, report.hotspots(), null);
        }
        if (grid == 0) {
            return with(
                    report,
                    months,
                    List.of(),
                    WITHHELD.formatted(report.hotspots().size()));
        }
        List<HotspotReport.Stretch> told = report.hotspots().stream()
                .filter(stretch -> stretch.incidents() >= smallest)
                .map(stretch -> StretchCells.generalise(stretch, grid))
                .toList();
        int left = report.hotspots().size() - told.size();
        return with(
                report,
                months,
                told,
                GENERALISED.formatted(BigDecimal.valueOf(grid).toPlainString(), smallest, left));
    }

    private static HotspotReport with(
            HotspotReport report,
            List<HotspotReport.Month> months,
            List<HotspotReport.Stretch> hotspots,
            @Nullable String informationWithheld) {
        return new HotspotReport(
                report.engine(),
                report.network(),
                report.settings(),
                report.inputs(),
                report.errorRate(),
                report.leftOut(),
                months,
                report.aboutIntervals(),
                hotspots,
                informationWithheld);
    }

    private static List<HotspotReport.Month> withoutSmall(List<HotspotReport.Month> months, int smallest) {
        int[] counts = months.stream()
                .mapToInt(month -> month.incidents() == null ? 0 : month.incidents())
                .toArray();
        boolean[] hidden = SmallNumbers.hidden(new int[][] {counts}, smallest)[0];
        List<HotspotReport.Month> shown = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            shown.add(hidden[i] ? new HotspotReport.Month(months.get(i).month(), null) : months.get(i));
        }
        return shown;
    }
}
