package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.RegionService;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** How many animals each carer could still take today, by their own saying. */
@ApplicationScoped
public class CarerPlaces {
    /**
     * A carer's places.
     *
     * @param places in all, of their own saying; null: not told
     * @param held animals that are with them, those offered to them among these
     * @param awayUntil the last day of an absence that holds today
     */
    public record PlacesOfCarer(
            UUID memberId,
            String callSign,
            @Nullable Integer places,
            int held,
            @Nullable LocalDate awayUntil) {
        /** None of somebody who is away, or who has not told. */
        public int free() {
            return places == null || awayUntil != null ? 0 : Math.max(0, places - held);
        }
    }

    private final CarerService carers;
    private final CarerSearch search;
    private final RosterService roster;
    private final RegionService region;
    private final Clock clock;

    CarerPlaces(CarerService carers, CarerSearch search, RosterService roster, RegionService region, Clock clock) {
        this.carers = carers;
        this.search = search;
        this.roster = roster;
        this.region = region;
        this.clock = clock;
    }

    /** All who hold animals for the network, in the order of their call signs. */
    @Transactional
    public List<PlacesOfCarer> listPlaces() {
        LocalDate day = clock.instant().atZone(region.zone()).toLocalDate();
        Map<UUID, CarerProfile> profiles =
                carers.allProfiles().stream().collect(Collectors.toMap(row -> row.memberId, Function.identity()));
        Map<UUID, LocalDate> away = new HashMap<>();
        carers.absencesOn(day)
                .forEach(row ->
                        away.merge(row.memberId, row.untilDay, (one, other) -> one.isAfter(other) ? one : other));
        Map<UUID, Map<UUID, Integer>> held = search.held(List.of());
        return roster.listCarers().stream()
                .map(carer -> {
                    CarerProfile profile = profiles.get(carer.id());
                    return new PlacesOfCarer(
                            carer.id(),
                            carer.callSign(),
                            profile == null ? null : profile.places,
                            held.getOrDefault(carer.id(), Map.of()).values().stream()
                                    .mapToInt(Integer::intValue)
                                    .sum(),
                            away.get(carer.id()));
                })
                .toList();
    }
}
