package org.culvert.platform;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.hibernate.annotations.UuidGenerator;
import org.jspecify.annotations.Nullable;

/** The one region that this server serves, with its time zone; times are instants and meet the zone at the edges only. */
@Entity
@Table(name = "regions")
public class Region {
    @Id
    @UuidGenerator(style = UuidGenerator.Style.VERSION_7)
    UUID id;

    @Version
    int version;

    boolean singleton = true;
    String name;
    String timeZone;
    String countryCode;

    @Nullable
    String jurisdiction;

    double south;
    double west;
    double north;
    double east;
    boolean demo;
    Instant recordedAt;

    protected Region() {}

    public String name() {
        return name;
    }

    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }

    /** ISO 3166 code of the country, or of the part of it, whose law holds here; null where it was not told. */
    public @Nullable String jurisdiction() {
        return jurisdiction;
    }

    public String countryCode() {
        return countryCode;
    }

    public boolean demo() {
        return demo;
    }

    public double south() {
        return south;
    }

    public double west() {
        return west;
    }

    public double north() {
        return north;
    }

    public double east() {
        return east;
    }

    /** Whether the region lies south of the equator, by its middle. */
    public boolean southern() {
        return south + north < 0;
    }
}
