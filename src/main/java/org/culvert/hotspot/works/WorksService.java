package org.culvert.hotspot.works;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Keeps works against collisions. */
@ApplicationScoped
public class WorksService {
    static final int LONGEST_ROAD = 300;
    private static final double MOST_ENDS_METRES = 10_000;

    /**
     * Works as they are entered.
     *
     * @param words what was built or done, in words
     * @param road label of the road on the current network
     * @param fromChainageMetres where they begin
     * @param endsMetres how far beyond each end animals may walk round them
     * @param builtFrom first day of building
     * @param builtUntil last day of building; null while they are under way
     * @param endedOn day from which they no longer work; null where they still do
     * @param effortChange how looking for and answering changed meanwhile
     * @param publicityChange how many more or fewer people came to know whom to ring
     */
    public record WorksEntry(
            @NotNull WorksKind kind,
            @NotBlank @Size(max = 2000) String words,
            @NotBlank @Size(max = LONGEST_ROAD) String road,

            @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
            Double fromChainageMetres,

            @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
            Double toChainageMetres,

            @NotNull @DecimalMin("1") @DecimalMax("10000") Double endsMetres,

            @NotNull LocalDate builtFrom,
            @Nullable LocalDate builtUntil,
            @Nullable LocalDate endedOn,

            @Nullable @Size(max = 2000) String effortChange,
            @Nullable @Size(max = 2000) String publicityChange) {}

    /** What can be corrected of works; a field that is left out stays as it is. */
    public record WorksCorrection(
            Change<WorksKind> kind,
            Change<String> words,
            Change<String> road,
            Change<Double> fromChainageMetres,
            Change<Double> toChainageMetres,
            Change<Double> endsMetres,
            Change<LocalDate> builtFrom,
            Change<LocalDate> builtUntil,
            Change<LocalDate> endedOn,
            Change<String> effortChange,
            Change<String> publicityChange,
            @NotBlank @Size(max = 2000) String reason) {
        boolean movesThem() {
            return road.isMade() || fromChainageMetres.isMade() || toChainageMetres.isMade();
        }
    }

    /**
     * Works as others see them.
     *
     * @param networkNumber version of the network whose chainages these are
     */
    public record WorksView(
            UUID id,
            String kind,
            String words,
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            int networkNumber,
            double endsMetres,
            LocalDate builtFrom,
            @Nullable LocalDate builtUntil,
            @Nullable LocalDate endedOn,
            @Nullable String effortChange,
            @Nullable String publicityChange,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<Works, UUID> {}

    private final Rows rows;
    private final RoadService roads;
    private final RecordViews records;

    WorksService(Rows rows, RoadService roads, RecordViews records) {
        this.rows = rows;
        this.roads = roads;
        this.records = records;
    }

    @Transactional
    public WorksView enter(WorksEntry entry) {
        CurrentRoads current = roads.current();
        Works works = Works.of(entry, entry.road(), current.number());
        check(works);
        place(works, current);
        rows.persistAndFlush(works);
        return view(works);
    }

    @Transactional
    public WorksView getWorks(UUID id) {
        return view(require(id));
    }

    /** Works, newest record first. */
    @Transactional
    public Page<WorksView> listWorks(int limit, @Nullable UUID before) {
        List<Works> found = rows.find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(found, limit, this::view, works -> works.id().toString());
    }

    /** Corrects works. Where they are moved, they are placed on the network that is current now. */
    @Transactional
    public WorksView correct(UUID id, WorksCorrection correction) {
        Works works = require(id);
        works.correct(correction);
        check(works);
        if (correction.movesThem()) {
            place(works, roads.current());
        }
        rows.flush();
        return view(works);
    }

    Works require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("works", id));
    }

    /** Works that stood, or were being built, on any day of a period. */
    List<Works> listStanding(LocalDate from, LocalDate to) {
        return rows.list("order by id").stream()
                .filter(works -> works.stoodIn(from, to))
                .toList();
    }

    /**
     * Works that reach onto a stretch of the current roads with their ends, the first built first.
     *
     * @throws InvalidException where there is no such stretch
     */
    @Transactional
    public List<WorksView> listOn(String road, double from, double to) {
        RoadPieces pieces = RoadPieces.of(roads.current().network());
        List<RoadPieces.Part> stretch = pieces.requireStretch("", road, from, to);
        return rows.list("order by builtFrom, id").stream()
                .filter(works -> reachesOnto(works, stretch, pieces))
                .map(this::view)
                .toList();
    }

    private static boolean reachesOnto(Works works, List<RoadPieces.Part> stretch, RoadPieces pieces) {
        try {
            List<RoadPieces.Part> parts =
                    pieces.requireStretch("", works.road, works.fromChainageMetres, works.toChainageMetres).stream()
                            .map(part -> StandingWorks.widened(part, works.endsMetres))
                            .toList();
            return new StandingWorks.Places(parts, List.of()).touch(stretch);
        } catch (InvalidException noLongerThere) {
            return false;
        }
    }

    private static void place(Works works, CurrentRoads current) {
        RoadPieces pieces = RoadPieces.of(current.network());
        List<RoadPieces.Part> parts =
                pieces.requireStretch("", works.road, works.fromChainageMetres, works.toChainageMetres);
        works.lieOn(
                parts.size() == 1
                        ? parts.get(0).piece().id()
                        : parts.get(0).piece().label(),
                current.number());
    }

    private static void check(Works works) {
        List<FieldError> errors = new ArrayList<>();
        checkDay("builtFrom", works.builtFrom, errors);
        checkDay("builtUntil", works.builtUntil, errors);
        checkDay("endedOn", works.endedOn, errors);
        if (!(works.endsMetres >= 1 && works.endsMetres <= MOST_ENDS_METRES)) {
            errors.add(error("endsMetres", "That is no length of ends.", "metres, 1 to 10000"));
        }
        if (works.builtUntil != null && works.builtUntil.isBefore(works.builtFrom)) {
            errors.add(error(
                    "builtUntil",
                    "They would be finished before they were begun.",
                    "a day on or after builtFrom, or leave it out while they are under way"));
        }
        LocalDate begun = works.builtUntil == null ? works.builtFrom.minusDays(1) : works.builtUntil;
        if (works.endedOn != null && !works.endedOn.isAfter(begun)) {
            errors.add(error(
                    "endedOn",
                    "They would end before they were there.",
                    "a day after builtUntil, or leave it out where they still stand"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    private static void checkDay(String field, @Nullable LocalDate day, List<FieldError> errors) {
        if (day != null && (day.getYear() < 1900 || day.getYear() > 2200)) {
            errors.add(error(field, "No such year is meant.", "a day such as 2024-07-01"));
        }
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }

    private WorksView view(Works works) {
        return new WorksView(
                works.id(),
                works.kind,
                works.words,
                works.road,
                works.fromChainageMetres,
                works.toChainageMetres,
                works.networkNumber,
                works.endsMetres,
                works.builtFrom,
                works.builtUntil,
                works.endedOn,
                works.effortChange,
                works.publicityChange,
                records.of(works));
    }
}
