package org.culvert.road.traffic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Traffic at a place or along a stretch in a period; it happened when the period began. */
@Entity
@Table(name = "traffic_counts")
class TrafficCount extends Recorded {
    @Nullable
    String station;

    String road;

    @Nullable
    String carriageway;

    double fromChainageMetres;
    double toChainageMetres;
    int networkNumber;
    double decimalLatitude;
    double decimalLongitude;
    double offsetMetres;
    String verbatimPlace;
    double coordinateUncertaintyMetres;
    LocalDate fromDay;
    LocalDate toDay;
    double vehiclesPerDay;
    String measure;

    @Nullable
    Double standardError;

    @Nullable
    Integer daysCounted;

    String directions;

    @Nullable
    String direction;

    @Nullable
    Double heavyVehicleShare;

    String kind;
    String source;

    @Nullable
    String words;

    /** When it was taken back; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected TrafficCount() {}

    static TrafficCount of(TrafficFigures figures, CountedPlace place, ZoneId zone) {
        var count = new TrafficCount();
        count.station = figures.station();
        count.fromDay = figures.from();
        count.toDay = figures.to();
        count.vehiclesPerDay = figures.vehiclesPerDay();
        count.measure = figures.measure().name();
        count.standardError = figures.standardError();
        count.daysCounted = figures.daysCounted();
        count.directions = figures.directions().name();
        count.direction = figures.direction();
        count.heavyVehicleShare = figures.heavyVehicleShare();
        count.kind = figures.kind().name();
        count.source = figures.source();
        count.words = figures.words();
        count.lieAt(place);
        count.beginsIn(zone);
        return count;
    }

    void correct(TrafficCountService.TrafficCountCorrection correction, ZoneId zone) {
        station = Corrections.text("station", correction.station(), station, TrafficFigures.LONGEST_NAME);
        fromDay = correction.from().over("from", fromDay);
        toDay = correction.to().over("to", toDay);
        vehiclesPerDay = correction.vehiclesPerDay().over("vehiclesPerDay", vehiclesPerDay);
        measure = Corrections.name("measure", correction.measure(), measure);
        standardError = correction.standardError().over(standardError);
        daysCounted = correction.daysCounted().over(daysCounted);
        directions = Corrections.name("directions", correction.directions(), directions);
        direction = Corrections.text("direction", correction.direction(), direction, TrafficFigures.LONGEST_NAME);
        heavyVehicleShare = correction.heavyVehicleShare().over(heavyVehicleShare);
        kind = Corrections.name("kind", correction.kind(), kind);
        source = Corrections.words("source", correction.source(), source, TrafficFigures.LONGEST_WORDS);
        words = Corrections.text("words", correction.words(), words, TrafficFigures.LONGEST_WORDS);
        beginsIn(zone);
        revisedBecause(correction.reason());
    }

    void lieAt(CountedPlace place) {
        road = place.road();
        carriageway = place.carriageway();
        fromChainageMetres = place.fromChainageMetres();
        toChainageMetres = place.toChainageMetres();
        networkNumber = place.networkNumber();
        decimalLatitude = place.decimalLatitude();
        decimalLongitude = place.decimalLongitude();
        offsetMetres = place.offsetMetres();
        verbatimPlace = place.verbatim();
        coordinateUncertaintyMetres = place.uncertaintyMetres();
    }

    private void beginsIn(ZoneId zone) {
        happenedAt(fromDay.atStartOfDay(zone).toInstant());
    }

    TrafficFigures figures() {
        return new TrafficFigures(
                station,
                fromDay,
                toDay,
                vehiclesPerDay,
                TrafficMeasure.valueOf(measure),
                standardError,
                daysCounted,
                TrafficDirections.valueOf(directions),
                direction,
                heavyVehicleShare,
                TrafficCountKind.valueOf(kind),
                source,
                words);
    }

    boolean isStretch() {
        return toChainageMetres > fromChainageMetres;
    }

    /** The calendar year that it stands for: that of the middle of its period. */
    int year() {
        return fromDay.plusDays((toDay.toEpochDay() - fromDay.toEpochDay()) / 2).getYear();
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
