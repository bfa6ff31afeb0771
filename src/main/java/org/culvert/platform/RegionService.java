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
     * @param south southern edge in degrees, WGS 84; likewise the others
     * @param demo whether everything in it is invented
     */
    public record RegionDescription(
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 100) String timeZone,

            @NotNull @Pattern(regexp = "[A-Z]{2}", message = "must be two capital letters")
            String countryCode,

            @DecimalMin("-90") @DecimalMax("90") double south,
            @DecimalMin("-180") @DecimalMax("180") double west,
            @DecimalMin("-90") @DecimalMax("90") double north,
            @DecimalMin("-180") @DecimalMax("180") double east,
            boolean demo) {}

    @ApplicationScoped
    static class Regions implements PanacheRepositoryBase<Region, UUID> {}

    private final Regions regions;
    private final Clock clock;

    RegionService(Regions regions, Clock clock) {
        this.regions = regions;
        this.clock = clock;
    }

    /** The region, or empty on a server that has not been told its own. */
    @Transactional
    public Optional<Region> findRegion() {
        return regions.findAll().firstResultOptional();
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
        Region region = findRegion().orElseGet(Region::new);
        @Nullable UUID known = region.id;
        if (known != null && region.demo != wanted.demo()) {
            throw InvalidException.of(
                    "demo", "Whether a region is invented never changes.", Boolean.toString(region.demo));
        }
        region.name = wanted.name();
        region.timeZone = wanted.timeZone();
        region.countryCode = wanted.countryCode();
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
