package org.culvert.call;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.road.PlaceUnderstood;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A place as reported beside as understood. */
@Entity
@Table(name = "places")
class Place extends Recorded {
    String givenAs;
    String verbatim;
    double decimalLatitude;
    double decimalLongitude;

    @Column(name = "coordinate_uncertainty_in_meters")
    double coordinateUncertaintyInMeters;

    @Nullable
    UUID roadLinkId;

    @Nullable
    String roadName;

    @Nullable
    String carriageway;

    @Nullable
    Double metresAlongLink;

    @Nullable
    Double chainageMetres;

    @Nullable
    Double chainagePrecisionMetres;

    @Nullable
    Double offsetMetres;

    @Nullable
    String side;

    boolean roadIsInDoubt;

    @JdbcTypeCode(SqlTypes.JSON)
    java.util.List<PlaceUnderstood.OnRoad> otherRoads;

    protected Place() {}

    static Place of(PlaceUnderstood understood) {
        var place = new Place();
        place.givenAs = understood.givenAs();
        place.verbatim = understood.verbatim();
        place.decimalLatitude = understood.decimalLatitude();
        place.decimalLongitude = understood.decimalLongitude();
        place.coordinateUncertaintyInMeters = understood.coordinateUncertaintyInMeters();
        PlaceUnderstood.OnRoad road = understood.onRoad();
        if (road != null) {
            place.roadLinkId = road.roadLinkId();
            place.roadName = road.roadName();
            place.carriageway = road.carriageway();
            place.metresAlongLink = road.metresAlongLink();
            place.chainageMetres = road.chainageMetres();
            place.chainagePrecisionMetres = road.chainagePrecisionMetres();
            place.offsetMetres = road.offsetMetres();
            place.side = road.side();
        }
        place.roadIsInDoubt = understood.roadInDoubt();
        place.otherRoads = understood.otherRoads();
        return place;
    }

    PlaceView view() {
        return new PlaceView(
                id(),
                givenAs,
                verbatim,
                decimalLatitude,
                decimalLongitude,
                coordinateUncertaintyInMeters,
                roadLinkId,
                roadName,
                carriageway,
                metresAlongLink,
                chainageMetres,
                chainagePrecisionMetres,
                offsetMetres,
                side,
                roadIsInDoubt,
                otherRoads);
    }
}
