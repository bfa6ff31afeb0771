package org.culvert.road.traffic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.road.network.LinkTraffic;
import org.jspecify.annotations.Nullable;

/** Says what is known of the traffic of one piece of road. */
@ApplicationScoped
public class LinkTrafficService {
    private static final int FIRST_YEAR = 1900;
    private static final int MOST_YEARS = 30;

    /**
     * The traffic of a link in a period.
     *
     * @param networkNumber version of the roads that it is a link of
     * @param vehiclesPerDay annual average of both directions together; null where not known
     * @param basis {@code counted}, {@code estimated}, {@code roadsFile} (an attribute of the file of roads, of no stated year)
     *     or {@code unknown}
     * @param yearsKnown how many years of the period the station knows; null where no station speaks for the link
     * @param metresToStation along the road from the middle of the link; null likewise
     * @param trafficCountIds the counts of that station that the figure hangs on, by year
     * @param rule how the figure was found, in one sentence
     */
    public record LinkTrafficView(
            UUID roadLinkId,
            String road,
            int networkNumber,
            int yearFrom,
            int yearTo,
            @Nullable Double vehiclesPerDay,
            String basis,
            @Nullable Integer yearsKnown,
            @Nullable Double metresToStation,
            List<UUID> trafficCountIds,
            String rule) {}

    private final TrafficReader reader;
    private final RoadService roads;
    private final RegionService regions;
    private final Clock clock;

    LinkTrafficService(TrafficReader reader, RoadService roads, RegionService regions, Clock clock) {
        this.reader = reader;
        this.roads = roads;
        this.regions = regions;
        this.clock = clock;
    }

    /**
     * @param id of a link of the current network, or under which a link of an older one was the same
     * @param yearFrom first calendar year; the same as the last when left out
     * @param yearTo last calendar year; the one before this when left out
     */
    @Transactional
    public LinkTrafficView find(UUID id, @Nullable Integer yearFrom, @Nullable Integer yearTo) {
        int thisYear = clock.instant().atZone(regions.zone()).getYear();
        int last = yearTo != null ? yearTo : yearFrom != null ? yearFrom : thisYear - 1;
        int first = yearFrom == null ? last : yearFrom;
        if (last < FIRST_YEAR || last > thisYear) {
            throw InvalidException.of("yearTo", "No such year is meant.", FIRST_YEAR + " to " + thisYear);
        }
        if (first > last || last - first >= MOST_YEARS) {
            throw InvalidException.of(
                    "yearFrom", "That is no period.", "at most " + last + ", and at most " + MOST_YEARS + " years");
        }
        CurrentRoads current = roads.current();
        OptionalInt found = current.findLink(id);
        int link = (found.isPresent() ? found : current.findLasting(id))
                .orElseThrow(() -> new NotFoundException("road link", id));
        PeriodTraffic traffic = reader.find(current, first, last);
        LinkTraffic links = traffic.links();
        int station = links.station(link);
        double vehicles = links.vehiclesPerDay(link);
        return new LinkTrafficView(
                current.linkId(link),
                current.network().roadOf(link).fullLabel(),
                current.number(),
                first,
                last,
                Double.isNaN(vehicles) ? null : Double.valueOf(vehicles),
                name(links.basis(link)),
                station < 0 ? null : Integer.valueOf(links.years(link)),
                station < 0 ? null : Double.valueOf(Math.rint(links.metresToStation(link))),
                station < 0 ? List.of() : traffic.stations().get(station),
                LinkTraffic.RULE);
    }

    private static String name(LinkTraffic.Basis basis) {
        return basis == LinkTraffic.Basis.ROADS_FILE
                ? "roadsFile"
                : basis.name().toLowerCase(Locale.ROOT);
    }
}
