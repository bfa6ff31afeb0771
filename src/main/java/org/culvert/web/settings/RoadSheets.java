package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.call.PlaceMoveService;
import org.culvert.hotspot.AnnualRunEntry;
import org.culvert.hotspot.AnnualRunService;
import org.culvert.hotspot.AnnualRunView;
import org.culvert.hotspot.effort.RoadSurveyService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkView;
import org.culvert.road.traffic.TrafficCountService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;
import org.jspecify.annotations.Nullable;

/** Roads, what drives on them, and who looked along them. */
@ApplicationScoped
class RoadSheets implements SheetSource {
    /**
     * A year asked for group by group.
     *
     * @param taxonGroups each in the whole year; none, and no season: all animals at once
     * @param seasons groups in a part of the year
     */
    record YearAsked(
            @NotNull LocalDate periodFrom,
            @NotNull LocalDate periodTo,
            @NotBlank @Size(max = 1000) String plan,
            @NotNull List<String> taxonGroups,
            @Nullable @Valid List<SeasonAsked> seasons,
            @Nullable @DecimalMin("20") @DecimalMax("5000") Double reachMetres,
            @Nullable @DecimalMin("10") @DecimalMax("2500") Double sigmaMetres,

            @Nullable @DecimalMin("0.0001") @DecimalMax("0.5")
            Double alpha) {
        AnnualRunEntry asked() {
            List<AnnualRunEntry.Cell> cells = new ArrayList<>();
            taxonGroups.forEach(group -> cells.add(new AnnualRunEntry.Cell(group, null, null)));
            for (int i = 0; i < told().size(); i++) {
                cells.add(told().get(i).cell("seasons[" + i + "]"));
            }
            if (cells.isEmpty()) {
                cells.add(new AnnualRunEntry.Cell(null, null, null));
            }
            return new AnnualRunEntry(periodFrom, periodTo, plan, cells, reachMetres, sigmaMetres, null, alpha);
        }

        private List<SeasonAsked> told() {
            return seasons == null ? List.of() : seasons;
        }

        /** What is wrong with a cell is said of the line that it was made of. */
        InvalidException asTold(InvalidException wrong) {
            return new InvalidException(wrong.errors().stream()
                    .map(error -> {
                        Matcher cell = CELL.matcher(error.field());
                        int at = cell.matches() ? Integer.parseInt(cell.group(1)) : 0;
                        String field = !cell.matches()
                                ? error.field()
                                : at < taxonGroups.size()
                                        ? "taxonGroups"
                                        : "seasons[" + (at - taxonGroups.size()) + "]" + cell.group(2);
                        return new FieldError(field, error.detail(), error.wanted(), error.otherReading());
                    })
                    .toList());
        }
    }

    /**
     * A group in a part of the year.
     *
     * @param taxonGroup key of a group; left out: all animals
     * @param months numbers of months: {@code 10, 11, 12}
     * @param seasonWindow name of a season of the group, instead of months
     */
    record SeasonAsked(
            @Nullable String taxonGroup,
            @Nullable String months,
            @Nullable String seasonWindow) {
        AnnualRunEntry.Cell cell(String field) {
            return new AnnualRunEntry.Cell(taxonGroup, months == null ? null : numbers(field, months), seasonWindow);
        }

        private static List<Integer> numbers(String field, String months) {
            if (!months.matches("\\s*\\d{1,2}(\\s*[,;\\s]\\s*\\d{1,2})*\\s*")) {
                throw InvalidException.of(
                        field + ".months",
                        "\"" + months + "\" are no months.",
                        "numbers of months, such as 10, 11, 12");
            }
            return Arrays.stream(months.strip().split("[,;\\s]+", -1))
                    .map(Integer::valueOf)
                    .toList();
        }
    }

    private static final Pattern CELL = Pattern.compile("cells(?:\\[|\\.)(\\d+)\\]?(.*)");

    private final RoadNetworkService networks;
    private final TrafficCountService counts;
    private final RoadSurveyService surveys;
    private final PlaceMoveService moves;
    private final AnnualRunService runs;
    private final FormBodies bodies;

    RoadSheets(
            RoadNetworkService networks,
            TrafficCountService counts,
            RoadSurveyService surveys,
            PlaceMoveService moves,
            AnnualRunService runs,
            FormBodies bodies) {
        this.networks = networks;
        this.counts = counts;
        this.surveys = surveys;
        this.moves = moves;
        this.runs = runs;
        this.bodies = bodies;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("road-networks", Purpose.roads, networks::listNetworks)
                        .titled("name", "number")
                        .one(this::network)
                        .act(
                                new Act<>(
                                        "place-moves",
                                        "POST /api/road-networks/{id}/place-moves",
                                        null,
                                        true,
                                        NetworkSheets.Nothing.class,
                                        Set.of()),
                                (id, nothing) -> moves.start(id)),
                Sheet.paged("annual-runs", Purpose.roads, most -> runs.listAnnualRuns(most, null))
                        .titled("plan")
                        .entered(YearAsked.class, year -> declare(year).id()),
                Sheet.paged(
                                "traffic-counts",
                                Purpose.roads,
                                most -> counts.listCounts(null, null, null, null, null, most, null))
                        .titled("road", "station", "year")
                        .one(counts::getCount)
                        .entered(
                                TrafficCountService.TrafficCountEntry.class,
                                entry -> counts.enter(entry).id())
                        .corrected(
                                "traffic-count",
                                TrafficCountService.TrafficCountCorrection.class,
                                counts::correct,
                                "place")
                        .changed(
                                "withdrawal",
                                "traffic-count",
                                TrafficCountService.TrafficCountWithdrawal.class,
                                (id, why) -> counts.withdraw(id, why.reason())),
                Sheet.paged("road-surveys", Purpose.roads, most -> surveys.listSurveys(null, null, null, most, null))
                        .titled("road", "startedAt")
                        .ofThingsDone()
                        .one(surveys::getSurvey)
                        .entered(
                                RoadSurveyService.RoadSurveyEntry.class,
                                entry -> surveys.enter(entry).id())
                        .corrected("road-survey", RoadSurveyService.RoadSurveyCorrection.class, surveys::correct)
                        .changed(
                                "withdrawal",
                                "road-survey",
                                RoadSurveyService.RoadSurveyWithdrawal.class,
                                (id, why) -> surveys.withdraw(id, why.reason())));
    }

    private RoadNetworkView network(UUID id) {
        return networks.listNetworks().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("road network", id));
    }

    private AnnualRunView declare(YearAsked year) {
        try {
            return runs.declare(bodies.checked(year.asked()));
        } catch (InvalidException wrong) {
            throw year.asTold(wrong);
        }
    }
}
