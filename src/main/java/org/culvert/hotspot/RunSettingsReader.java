package org.culvert.hotspot;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Makes settings of what was asked, and says everything that is wrong with it at once. */
@ApplicationScoped
class RunSettingsReader {
    private static final double USUAL_REACH_METRES = 500;
    private static final int USUAL_SIMULATIONS = 999;
    private static final double USUAL_ALPHA = 0.05;
    private static final int USUAL_MINIMUM = 3;
    private static final int MOST_PIECES = 2_000_000;

    private final TaxonService taxa;
    private final RoadService roads;
    private final SeasonWindowService windows;

    RunSettingsReader(TaxonService taxa, RoadService roads, SeasonWindowService windows) {
        this.taxa = taxa;
        this.roads = roads;
        this.windows = windows;
    }

    /** A run is asked for by a form as well, which reads any year. */
    private static void checkYear(String field, LocalDate day, List<FieldError> errors) {
        if (day.getYear() < 1 || day.getYear() > 9999) {
            errors.add(error(field, "No such year is meant.", "a day such as 2026-06-30"));
        }
    }

    RunSettings read(RunEntry entry) {
        List<FieldError> errors = new ArrayList<>();
        checkYear("periodFrom", entry.periodFrom(), errors);
        checkYear("periodTo", entry.periodTo(), errors);
        if (entry.periodTo().isBefore(entry.periodFrom())) {
            errors.add(error("periodTo", "The period ends before it begins.", "a day on or after periodFrom"));
        }
        if (entry.taxonGroup() != null && taxa.findGroup(entry.taxonGroup()).isEmpty()) {
            errors.add(error(
                    "taxonGroup",
                    "There is no taxon group " + entry.taxonGroup() + ".",
                    String.join(
                            ", ",
                            taxa.listGroups().stream()
                                    .map(TaxonService.GroupView::key)
                                    .toList())));
        }
        String chance = chance(entry, errors);
        double reach = reach(entry, errors);
        double piece = Objects.requireNonNullElse(entry.pieceMetres(), Math.max(10, Math.min(100, reach / 10)));
        if (piece > reach / 2) {
            errors.add(error("pieceMetres", "The pieces are too coarse for the reach.", "at most half of reachMetres"));
        }
        int simulations = Objects.requireNonNullElse(entry.simulations(), USUAL_SIMULATIONS);
        double alpha = Objects.requireNonNullElse(entry.alpha(), USUAL_ALPHA);
        int cells = entry.declaration() == null ? 1 : entry.declaration().cells();
        if ((simulations + 1) * alpha < cells) {
            errors.add(error(
                    "simulations",
                    "So few simulations cannot tell a chance of " + Words.number(alpha / cells, 6) + ".",
                    "at least " + (int) Math.ceil(cells / alpha - 1)));
        }
        RunSettings.Season season = season(entry, errors);
        List<String> alsoAsk = alsoAsk(entry, errors);
        checkRoads(entry, alsoAsk.contains(AlsoAsk.SENSITIVITY.key()) ? piece / 2 : piece, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new RunSettings(
                entry.periodFrom(),
                entry.periodTo(),
                season,
                entry.taxonGroup(),
                entry.owner(),
                reach,
                entry.sigmaMetres(),
                piece,
                simulations,
                Objects.requireNonNullElse(entry.seed(), 1L),
                chance,
                alpha,
                Objects.requireNonNullElse(entry.minimumIncidents(), USUAL_MINIMUM),
                Objects.requireNonNullElse(entry.largestUncertaintyMetres(), 2 * reach),
                entry.declaration(),
                alsoAsk);
    }

    private static List<String> alsoAsk(RunEntry entry, List<FieldError> errors) {
        List<String> asked = Objects.requireNonNullElse(entry.alsoAsk(), List.of());
        for (String one : asked) {
            if (AlsoAsk.find(one).isEmpty()) {
                errors.add(error("alsoAsk", "There is no such question.", AlsoAsk.keys()));
            }
        }
        return AlsoAsk.list().stream().map(AlsoAsk::key).filter(asked::contains).toList();
    }

    /** The half-width of the compact kernel, whose standard deviation is a root of five smaller. */
    private static double reach(RunEntry entry, List<FieldError> errors) {
        if (entry.sigmaMetres() == null) {
            return Objects.requireNonNullElse(entry.reachMetres(), USUAL_REACH_METRES);
        }
        if (entry.reachMetres() != null) {
            errors.add(error("sigmaMetres", "A reach is given too.", "either reachMetres or sigmaMetres"));
        }
        return entry.sigmaMetres() * Math.sqrt(5);
    }

    private static String chance(RunEntry entry, List<FieldError> errors) {
        ChanceKind usual = entry.taxonGroup() == null ? ChanceKind.PER_TRAFFIC : ChanceKind.PER_ALL_REPORTS;
        String chance = Objects.requireNonNullElse(entry.chance(), usual.key());
        ChanceKind kind = ChanceKind.find(chance).orElse(null);
        if (kind == null) {
            errors.add(error("chance", "There is no such kind of chance.", ChanceKind.keys()));
        } else if (kind == ChanceKind.PER_ALL_REPORTS && entry.taxonGroup() == null) {
            errors.add(error(
                    "chance",
                    "All animals cannot be compared with all animals.",
                    "a taxonGroup, or one of " + ChanceKind.PER_TRAFFIC.key() + ", " + ChanceKind.PER_KILOMETRE.key()));
        } else if (kind == ChanceKind.PER_OTHER_SEASONS && entry.months() == null && entry.seasonWindow() == null) {
            errors.add(error("chance", "The whole year has no other seasons.", "months or a seasonWindow with it"));
        }
        return chance;
    }

    private RunSettings.Season season(RunEntry entry, List<FieldError> errors) {
        List<Integer> all = IntStream.rangeClosed(1, 12).boxed().toList();
        if (entry.seasonWindow() == null) {
            return RunSettings.Season.ofMonths(entry.months() == null ? all : entry.months());
        }
        if (entry.months() != null) {
            errors.add(error("seasonWindow", "Months are given too.", "either months or seasonWindow"));
        }
        if (entry.taxonGroup() == null) {
            errors.add(error("seasonWindow", "A season window belongs to a group of animals.", "a taxonGroup with it"));
            return RunSettings.Season.ofMonths(all);
        }
        RunSettings.@Nullable Season found = windows.findSeason(
                        entry.taxonGroup(), entry.seasonWindow(), entry.periodTo())
                .orElse(null);
        if (found == null) {
            errors.add(error(
                    "seasonWindow",
                    "The group " + entry.taxonGroup() + " has no season window of that name here, valid at the end of"
                            + " the period.",
                    String.join(", ", windows.namesOf(entry.taxonGroup()))));
            return RunSettings.Season.ofMonths(all);
        }
        return found;
    }

    private void checkRoads(RunEntry entry, double piece, List<FieldError> errors) {
        CurrentRoads current = roads.current();
        double pieces = current.network().graph().totalLength() / piece
                + current.network().linkCount();
        if (pieces > MOST_PIECES) {
            errors.add(error(
                    "pieceMetres",
                    "The network would fall into more than " + MOST_PIECES + " pieces.",
                    "coarser pieces, or a larger reach"));
        }
        if (entry.owner() != null) {
            List<String> owners = EvidenceRoads.owners(current.network());
            if (!owners.contains(entry.owner())) {
                errors.add(error(
                        "owner",
                        "No road of the current network belongs to " + entry.owner() + ".",
                        owners.isEmpty() ? "the network names no owners" : String.join(", ", owners)));
            }
        }
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }
}
