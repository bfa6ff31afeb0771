package org.culvert.hotspot;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.beside.Beside;
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

    private static final String BESIDE_WITHHELD =
            " Nor are you told what is new, what lasts, what hangs on the bandwidth or what other methods show.";

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
        var beside = new BesideSight(smallest);
        String group = report.settings().taxonGroup();
        Double grid = group == null ? null : taxa.findStrictestGrid(group).orElse(null);
        if (grid == null) {
            List<HotspotReport.Stretch> stretches = report.hotspots().stream()
                    .map(stretch -> stretch.with(CurveMaker.withoutSmall(stretch, smallest)))
                    .toList();
            return report.told(months, stretches, beside.seen(report.beside()), null);
        }
        Beside told = beside.ofASensitiveGroup(report.beside());
        int found = report.hotspots().size();
        if (grid == 0) {
            return report.told(months, List.of(), told, WITHHELD.formatted(found) + BESIDE_WITHHELD);
        }
        List<HotspotReport.Stretch> cells = report.hotspots().stream()
                .filter(stretch -> stretch.incidents() >= smallest)
                .map(stretch -> StretchCells.generalise(stretch, grid))
                .toList();
        return report.told(
                months,
                cells,
                told,
                GENERALISED.formatted(BigDecimal.valueOf(grid).toPlainString(), smallest, found - cells.size())
                        + BESIDE_WITHHELD);
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
