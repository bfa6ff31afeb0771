package org.culvert.call;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.List;
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
    List<PlaceUnderstood.OnRoad> otherRoads;

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
            place.put(road);
        }
        place.roadIsInDoubt = understood.roadInDoubt();
        place.otherRoads = understood.otherRoads();
        return place;
    }

    private void put(PlaceUnderstood.OnRoad road) {
        roadLinkId = road.roadLinkId();
        roadName = road.roadName();
        carriageway = road.carriageway();
        metresAlongLink = road.metresAlongLink();
        chainageMetres = road.chainageMetres();
        chainagePrecisionMetres = road.chainagePrecisionMetres();
        offsetMetres = road.offsetMetres();
        side = road.side();
    }

    /** Understands the same words on another version of the roads. */
    void move(PlaceUnderstood.OnRoad road, boolean inDoubt, List<PlaceUnderstood.OnRoad> otherRoads, String because) {
        put(road);
        this.roadIsInDoubt = inDoubt;
        this.otherRoads = otherRoads;
        revisedBecause(because);
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
