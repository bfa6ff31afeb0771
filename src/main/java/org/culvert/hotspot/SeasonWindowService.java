package org.culvert.hotspot;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps season windows, which are data: which season an animal has differs from place to place. */
@ApplicationScoped
public class SeasonWindowService {
    /**
     * A season window as it is entered.
     *
     * @param from first day of the year, as {@code --MM-DD}
     * @param to last day, included; before {@code from} where the window crosses the new year
     * @param source where it comes from
     * @param readOn when the source was read
     */
    public record WindowEntry(
            @NotBlank String taxonGroup,
            @NotBlank @Size(max = 100) String name,

            @NotNull @Pattern(regexp = "northern|southern", message = "must be northern or southern")
            String hemisphere,

            @NotNull MonthDay from,
            @NotNull MonthDay to,
            @NotBlank @Size(max = 1000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /** A season window as others see it. */
    public record WindowView(
            UUID id,
            String taxonGroup,
            String name,
            String hemisphere,
            MonthDay from,
            MonthDay to,
            String source,
            LocalDate readOn,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            RecordView record) {}

    @ApplicationScoped
    static class Windows implements PanacheRepositoryBase<SeasonWindow, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of(
                    "season_windows_do_not_overlap",
                    "The group has a season window of that name in that hemisphere already, valid on some of these days.",
                    "season_windows_are_valid_for_some_time",
                    "A season window cannot cease to be valid before it becomes so.");
        }
    }

    private final Windows windows;
    private final TaxonService taxa;
    private final RegionService regions;
    private final RecordViews records;

    SeasonWindowService(Windows windows, TaxonService taxa, RegionService regions, RecordViews records) {
        this.windows = windows;
        this.taxa = taxa;
        this.regions = regions;
        this.records = records;
    }

    @Transactional
    public WindowView enter(WindowEntry entry) {
        UUID group = taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        SeasonWindow window = SeasonWindow.of(entry, group);
        windows.persistAndFlush(window);
        return view(window, entry.taxonGroup());
    }

    @Transactional
    public List<WindowView> listWindows() {
        Map<UUID, String> keys = taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::id, TaxonService.GroupView::key));
        return windows.list("order by name, hemisphere, validFrom, id").stream()
                .map(window -> view(window, keys.getOrDefault(window.taxonGroupId, "")))
                .toList();
    }

    /** The window of a group by its name, in the hemisphere of the region, as valid on a day. */
    @Transactional
    public Optional<RunSettings.Season> findSeason(String taxonGroup, String name, LocalDate on) {
        return windows.list("name = ?1 and hemisphere = ?2", name, hemisphere()).stream()
                .filter(window -> taxa.findGroup(taxonGroup)
                        .filter(group -> group.id().equals(window.taxonGroupId))
                        .isPresent())
                .filter(window ->
                        !window.validFrom.isAfter(on) && (window.validTo == null || !window.validTo.isBefore(on)))
                .findFirst()
                .map(SeasonWindow::season);
    }

    @Transactional
    public List<String> namesOf(String taxonGroup) {
        List<String> names = listWindows().stream()
                .filter(window -> window.taxonGroup().equals(taxonGroup)
                        && window.hemisphere().equals(hemisphere()))
                .map(WindowView::name)
                .distinct()
                .toList();
        return names.isEmpty() ? List.of("none is entered") : names;
    }

    private String hemisphere() {
        return regions.findRegion()
                .map(region -> region.southern() ? "southern" : "northern")
                .orElse("northern");
    }

    private WindowView view(SeasonWindow window, String taxonGroup) {
        return new WindowView(
                window.id(),
                taxonGroup,
                window.name,
                window.hemisphere,
                window.from(),
                window.to(),
                window.source,
                window.readOn,
                window.validFrom,
                window.validTo,
                records.of(window));
    }
}
