package org.culvert.geo;

import org.geotools.api.metadata.extent.GeographicBoundingBox;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.operation.CoordinateOperation;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.operation.AbstractCoordinateOperation;

/**
 * One coordinate reference system, to and from WGS 84. Easting (or longitude) always comes first. Immutable; safe for
 * several threads.
 *
 * <p>Where the datum is another than WGS 84 the register's transformation is applied, and {@link #datumShiftMetres} says
 * how exact the register calls it: 3 m between GDA94 or GDA2020 and WGS 84, for example.
 */
public final class Grid {
    private final String name;
    private final CoordinateReferenceSystem crs;
    private final MathTransform toWgs84;
    private final MathTransform fromWgs84;
    private final double datumShiftMetres;
    private final Bounds domain;

    Grid(String name, CoordinateReferenceSystem crs) {
        this.name = name;
        this.crs = crs;
        try {
            CoordinateOperation operation =
                    CRS.getCoordinateOperationFactory(true).createOperation(crs, DefaultGeographicCRS.WGS84);
            this.toWgs84 = operation.getMathTransform();
            this.fromWgs84 = toWgs84.inverse();
            double accuracy = AbstractCoordinateOperation.getAccuracy(operation);
            this.datumShiftMetres = Double.isNaN(accuracy) ? 0 : accuracy;
        } catch (FactoryException | NoninvertibleTransformException cannot) {
            throw new CoordinateException(
                    "epsg",
                    "no way is known between " + name + " and WGS 84",
                    "a reference system with a known relation to WGS 84",
                    null);
        }
        this.domain = domainOf(crs);
    }

    public String name() {
        return name;
    }

    /** Whether coordinates are degrees of longitude and latitude rather than eastings and northings. */
    public boolean isGeographic() {
        return crs instanceof GeographicCRS;
    }

    /** The area that the register gives for this system; the whole Earth where it gives none. */
    public Bounds domain() {
        return domain;
    }

    /** How exact the register calls the shift between this system's datum and WGS 84, in metres; 0 for the same datum. */
    public double datumShiftMetres() {
        return datumShiftMetres;
    }

    /** @throws CoordinateException if the position cannot be shown in this system */
    public EastingNorthing forward(Position position) {
        double[] point = through(fromWgs84, position.longitude(), position.latitude());
        return new EastingNorthing(point[0], point[1]);
    }

    /** @throws CoordinateException if there is no such position */
    public Position inverse(double easting, double northing) {
        double[] point = through(toWgs84, easting, northing);
        return new Position(point[1], point[0]);
    }

    /**
     * Projects latitude and longitude of this system's own datum, with no shift of datum: what national manuals tabulate.
     */
    public EastingNorthing forwardFromOwnDatum(double latitude, double longitude) {
        if (!(crs instanceof ProjectedCRS projected)) {
            return new EastingNorthing(longitude, latitude);
        }
        double[] point = through(projected.getConversionFromBase().getMathTransform(), longitude, latitude);
        return new EastingNorthing(point[0], point[1]);
    }

    private double[] through(MathTransform transform, double first, double second) {
        double[] point = {first, second};
        try {
            transform.transform(point, 0, point, 0, 1);
        } catch (TransformException | IllegalArgumentException cannot) {
            // Far outside, the projection wants to warn of an angle that its own formatter then refuses to write.
            throw notHere(first, second);
        }
        if (Double.isNaN(point[0]) || Double.isNaN(point[1]) || Double.isInfinite(point[0] + point[1])) {
            throw notHere(first, second);
        }
        return point;
    }

    private CoordinateException notHere(double first, double second) {
        return new CoordinateException(
                isGeographic() ? "decimalLatitude" : "easting",
                first + ", " + second + " cannot be placed in " + name,
                "coordinates inside the area of " + name,
                null);
    }

    private static Bounds domainOf(CoordinateReferenceSystem crs) {
        GeographicBoundingBox box = CRS.getGeographicBoundingBox(crs);
        if (box == null) {
            return new Bounds(-90, -180, 90, 180);
        }
        return new Bounds(
                box.getSouthBoundLatitude(),
                box.getWestBoundLongitude(),
                box.getNorthBoundLatitude(),
                box.getEastBoundLongitude());
    }
}
