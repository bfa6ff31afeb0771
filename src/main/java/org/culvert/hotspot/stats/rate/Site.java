package org.culvert.hotspot.stats.rate;

/**
 * A piece of road with the incidents counted on it.
 *
 * @param id its name, by which ties are broken
 * @param lengthMetres above 0
 * @param years for which incidents were counted, above 0
 * @param aadt annual average daily traffic in vehicles a day, above 0; NaN where it is not known
 * @param roadClass class of road; an unknown class is a class of its own
 * @param incidents incidents in all those years
 * @param treated whether works against collisions stand on it, so that it tells nothing about roads without
 */
public record Site(
        String id, double lengthMetres, double years, double aadt, String roadClass, int incidents, boolean treated) {
    public Site {
        if (!(lengthMetres > 0 && Double.isFinite(lengthMetres)) || !(years > 0 && Double.isFinite(years))) {
            throw new IllegalArgumentException("site " + id + " needs a length and years above 0");
        }
        if (!Double.isNaN(aadt) && !(aadt > 0 && Double.isFinite(aadt))) {
            throw new IllegalArgumentException(
                    "traffic of site " + id + " is above 0, or NaN where it is not known, not " + aadt);
        }
        if (incidents < 0) {
            throw new IllegalArgumentException("incidents of site " + id + " are 0 or more");
        }
    }

    /** Whether its traffic is known. */
    public boolean hasTraffic() {
        return !Double.isNaN(aadt);
    }

    /** Kilometre-years. */
    public double kilometreYears() {
        return lengthMetres / 1000 * years;
    }

    /** What is counted, per kilometre and year. */
    public double perKilometreYear() {
        return incidents / kilometreYears();
    }
}
