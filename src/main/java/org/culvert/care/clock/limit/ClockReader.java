package org.culvert.care.clock.limit;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.care.clock.limit.Limit.Ends;
import org.culvert.care.clock.limit.Limit.Starts;
import org.culvert.care.clock.limit.Running.Doubt;
import org.culvert.care.clock.limit.Running.State;
import org.jspecify.annotations.Nullable;

/** Reads off what limits say of a case. */
public final class ClockReader {
    /** Whether the law lists a kind of animal in a way that a limit asks for. */
    public enum Listed {
        yes,
        no,
        unknown
    }

    /** What started a limit: when, where that is known, by which link, and why it is not known. */
    private record Start(
            @Nullable Instant at,
            int link,
            @Nullable UUID linkId,
            @Nullable Doubt doubt) {}

    private final ZoneId zone;
    private final Instant now;

    /**
     * @param zone in which the days of a calendar are counted
     * @param now at which instant it is asked
     */
    public ClockReader(ZoneId zone, Instant now) {
        this.zone = zone;
        this.now = now;
    }

    /**
     * The clocks of one limit in one case: none where it does not bind, several where each holder has one of their own.
     *
     * @param notices when the authority was told what this limit asks to be told, in any order
     * @param extendedUntil the latest instant until which it was extended for this case; null: it was not
     * @param listed whether the kind is listed as the limit asks; without meaning where it does not ask
     */
    public List<Running> read(
            Limit limit, History history, List<Instant> notices, @Nullable Instant extendedUntil, Listed listed) {
        if (!limit.listedAs().isEmpty() && listed == Listed.no) {
            return List.of();
        }
        boolean asked = !limit.listedAs().isEmpty() && listed == Listed.unknown;
        List<Running> clocks = new ArrayList<>();
        for (Start start : starts(limit, history)) {
            Running clock = run(limit, history, notices, extendedUntil, start, asked ? Doubt.listingNotKnown : null);
            Instant from = clock.startedAt() == null ? history.foundAt() : clock.startedAt();
            Instant to = clock.endedAt() == null ? now : clock.endedAt();
            if (limit.holdsBetween(from, to.isBefore(from) ? from : to, zone)) {
                clocks.add(clock);
            }
        }
        return clocks;
    }

    private List<Start> starts(Limit limit, History history) {
        List<Held> custody = history.custody();
        if (custody.isEmpty()) {
            // An animal that was left well at the place, or found dead, was in nobody's care
            return history.endedAt() == null && limit.starts() != Starts.deathInCare
                    ? List.of(new Start(null, -1, null, Doubt.nobodyHoldsIt))
                    : List.of();
        }
        List<Integer> bound = Stream.iterate(0, link -> link + 1)
                .limit(custody.size())
                .filter(link -> limit.binds().meets(custody.get(link)))
                .toList();
        if (bound.isEmpty()) {
            return List.of();
        }
        int first = bound.get(0);
        return switch (limit.starts()) {
            case takenIntoThisCustody ->
                bound.stream()
                        .map(link -> new Start(
                                custody.get(link).from(),
                                link,
                                custody.get(link).id(),
                                null))
                        .toList();
            case found -> List.of(new Start(history.foundAt(), first, null, null));
            case received -> List.of(new Start(custody.get(first).from(), first, null, null));
            case stabilised -> stabilised(history, first);
            case deathInCare ->
                history.dead() && history.endedAt() != null
                        ? List.of(new Start(history.endedAt(), bound.get(bound.size() - 1), null, null))
                        : List.of();
        };
    }

    private static List<Start> stabilised(History history, int link) {
        Optional<Instant> told = history.stabilised();
        if (told.isPresent()) {
            return List.of(new Start(told.get(), link, null, null));
        }
        return List.of(new Start(null, link, null, Doubt.stabilisedNotTold));
    }

    private Running run(
            Limit limit,
            History history,
            List<Instant> notices,
            @Nullable Instant extendedUntil,
            Start start,
            @Nullable Doubt listing) {
        Instant counted = start.at();
        if (start.doubt() == Doubt.stabilisedNotTold) {
            counted = history.visits().isEmpty()
                    ? history.custody().get(start.link()).from()
                    : history.visits().get(0).arrivedAt();
        }
        Instant own = counted == null ? null : limit.length().after(counted, zone);
        boolean moved = extendedUntil != null && (own == null || extendedUntil.isAfter(own));
        Instant due = moved ? extendedUntil : own;
        Instant warned = due == null ? null : due.minus(Duration.ofHours(limit.warnBeforeHours()));
        Optional<Ended> ended = ended(limit, history, notices, start, counted);
        // That it ended in time counted from the earliest start is so whenever it started
        boolean endedInTime =
                ended.isPresent() && due != null && !ended.get().at().isAfter(due);
        Doubt doubt = start.doubt() != null ? start.doubt() : listing;
        State state;
        if (endedInTime) {
            state = State.endedInTime;
        } else if (doubt != null || due == null) {
            state = State.cantTell;
        } else if (ended.isPresent()) {
            state = State.endedLate;
        } else if (now.isAfter(due)) {
            state = State.overdue;
        } else {
            state = now.isBefore(Objects.requireNonNull(warned)) ? State.running : State.warned;
        }
        return new Running(
                state,
                start.linkId(),
                start.at(),
                due,
                warned,
                moved ? extendedUntil : null,
                ended.map(Ended::at).orElse(null),
                ended.map(Ended::by).orElse(null),
                state == State.cantTell ? doubt : null);
    }

    private record Ended(Instant at, Ends by) {}

    private static Optional<Ended> ended(
            Limit limit, History history, List<Instant> notices, Start start, @Nullable Instant counted) {
        List<Held> after = start.link() < 0
                ? List.of()
                : history.custody().subList(start.link() + 1, history.custody().size());
        List<Ended> ends = new ArrayList<>();
        for (Ends by : limit.ends()) {
            Optional<Instant> at = switch (by) {
                case handedToAuthorisedHolder ->
                    after.stream().filter(Held::authorised).map(Held::from).findFirst();
                case handedToClinic ->
                    after.stream().filter(Held::clinic).map(Held::from).findFirst();
                case custodyEnded ->
                    start.link() < 0
                            ? Optional.empty()
                            : Optional.ofNullable(
                                    history.custody().get(start.link()).to());
                case caseEnded -> Optional.ofNullable(history.endedAt());
                case toldAuthority ->
                    notices.stream()
                            .filter(told -> counted == null || !told.isBefore(counted))
                            .min(Comparator.naturalOrder());
            };
            at.ifPresent(instant -> ends.add(new Ended(instant, by)));
        }
        return ends.stream().min(Comparator.comparing(Ended::at).thenComparing(Ended::by));
    }
}
