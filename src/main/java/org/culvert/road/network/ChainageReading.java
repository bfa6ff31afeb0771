package org.culvert.road.network;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.geo.CoordinateException;

/**
 * A chainage as someone gave it, with the precision that its digits tell.
 *
 * <p>{@code 12.4}, {@code 12.4 km}, {@code km 12.4}: kilometres; the precision is one unit of the last digit (100 m).
 * {@code 12+400}: kilometres and metres; since the metres always have three digits, zeros at their end are read as rounding
 * (100 m). {@code 12400 m}: metres, with zeros at the end read likewise. The place is within half the precision: figures are
 * taken as rounded.
 *
 * @param metres chainage
 * @param precisionMetres the step to which it was given
 */
public record ChainageReading(double metres, double precisionMetres) {
    private static final Pattern KILOMETRES =
            Pattern.compile("(?:KM|K)?\\s*(\\d{1,5}(?:\\.\\d{1,6})?)\\s*(?:KM|K)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern STATION =
            Pattern.compile("(?:KM|K)?\\s*(\\d{1,5})\\s*\\+\\s*(\\d{3})\\s*(?:M)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern METRES = Pattern.compile("(\\d{1,8})\\s*M", Pattern.CASE_INSENSITIVE);

    /** @throws CoordinateException naming the field {@code chainageKm} if the text is not understood */
    public static ChainageReading read(String text) {
        String plain = text.strip().toUpperCase(Locale.ROOT);
        Matcher station = STATION.matcher(plain);
        if (station.matches()) {
            double metres = 1000.0 * Integer.parseInt(station.group(1)) + Integer.parseInt(station.group(2));
            return new ChainageReading(metres, Math.pow(10, zerosAtEnd(station.group(2))));
        }
        Matcher inMetres = METRES.matcher(plain);
        if (inMetres.matches()) {
            int zeros = Math.min(3, zerosAtEnd(inMetres.group(1)));
            return new ChainageReading(Double.parseDouble(inMetres.group(1)), Math.pow(10, zeros));
        }
        Matcher kilometres = KILOMETRES.matcher(plain);
        if (kilometres.matches()) {
            BigDecimal value = new BigDecimal(kilometres.group(1));
            return new ChainageReading(value.movePointRight(3).doubleValue(), Math.pow(10, 3 - value.scale()));
        }
        throw new CoordinateException(
                "chainageKm",
                "the chainage \"" + (text.length() > 40 ? text.substring(0, 40) : text) + "\" is not understood",
                "kilometres as on the marker, e.g. 12.4, or 12+400",
                null);
    }

    /** How far the place may be from the chainage, in metres. */
    public double uncertaintyMetres() {
        return precisionMetres / 2;
    }

    private static int zerosAtEnd(String digits) {
        int zeros = 0;
        while (zeros < digits.length() && digits.charAt(digits.length() - 1 - zeros) == '0') {
            zeros++;
        }
        return zeros;
    }
}
