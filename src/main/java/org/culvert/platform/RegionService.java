package org.culvert.platform;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Says which region this is. */
@ApplicationScoped
public class RegionService {
    /**
     * What a region is made of.
     *
     * @param name its name
     * @param timeZone a zone of the tz database, such as {@code Pacific/Auckland}
     * @param countryCode ISO 3166-1 alpha-2
     * @param jurisdiction ISO 3166 code of the country, or of the part of it, whose law holds here: a country's limits of time
     *     hold in each of its parts, those of a part only there
     * @param south southern edge in degrees, WGS 84; likewise the others
     * @param demo whether everything in it is invented
     */
    public record RegionDescription(
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 100) String timeZone,

            @NotNull @Pattern(regexp = "[A-Z]{2}", message = "must be two capital letters")
            String countryCode,

            @Nullable
            @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?", message = "must be an ISO 3166 code such as AU-VIC")
            String jurisdiction,

            @DecimalMin("-90") @DecimalMax("90") double south,
            @DecimalMin("-180") @DecimalMax("180") double west,
            @DecimalMin("-90") @DecimalMax("90") double north,
            @DecimalMin("-180") @DecimalMax("180") double east,
            boolean demo) {}

    @ApplicationScoped
    static class Regions implements PanacheRepositoryBase<Region, UUID> {}

    private final Regions regions;
    private final Clock clock;
    private final ReadTransaction reading;

    RegionService(Regions regions, Clock clock, ReadTransaction reading) {
        this.regions = regions;
        this.clock = clock;
        this.reading = reading;
    }

    /** The region, or empty on a server that has not been told its own. */
    @Transactional
    public Optional<Region> findRegion() {
        return reading.once(Region.class, () -> regions.findAll().firstResultOptional());
    }

    /** The zone of the region; UTC until the region is told. */
    @Transactional
    public ZoneId zone() {
        return findRegion().map(Region::zone).orElse(ZoneId.of("UTC"));
    }

    @Transactional
    public RegionDescription describe() {
        return findDescription().orElseThrow(() -> new NotFoundException("region", "yet"));
    }

    /** The region in figures, or empty on a server that has not been told its own. */
    @Transactional
    public Optional<RegionDescription> findDescription() {
        return findRegion()
                .map(region -> new RegionDescription(
                        region.name,
                        region.timeZone,
                        region.countryCode,
                        region.jurisdiction,
                        region.south,
                        region.west,
                        region.north,
                        region.east,
                        region.demo));
    }

    @Transactional
    public RegionDescription settle(RegionDescription wanted) {
        try {
            ZoneId.of(wanted.timeZone());
        } catch (DateTimeException e) {
            throw InvalidException.of(
                    "timeZone", "There is no such time zone.", "a name of the tz database, such as Pacific/Auckland");
        }
        if (!(wanted.south() < wanted.north())) {
            throw InvalidException.of("south", "The southern edge is not south of the northern.", "south < north");
        }
        String jurisdiction = wanted.jurisdiction();
        if (jurisdiction != null && !jurisdiction.substring(0, 2).equals(wanted.countryCode())) {
            throw InvalidException.of(
                    "jurisdiction",
                    "That is of another country.",
                    wanted.countryCode() + ", or a part of it such as " + wanted.countryCode() + "-1");
        }
        Region region = findRegion().orElseGet(Region::new);
        @Nullable UUID known = region.id;
        if (known != null && region.demo != wanted.demo()) {
            throw InvalidException.of(
                    "demo", "Whether a region is invented never changes.", Boolean.toString(region.demo));
        }
        region.name = wanted.name();
        region.timeZone = wanted.timeZone();
        region.countryCode = wanted.countryCode();
        region.jurisdiction = jurisdiction;
        region.south = wanted.south();
        region.west = wanted.west();
        region.north = wanted.north();
        region.east = wanted.east();
        region.demo = wanted.demo();
        if (known == null) {
            region.recordedAt = clock.instant();
            regions.persistAndFlush(region);
        }
        return describe();
    }
}
