package org.culvert.care.schedule;

/** What is told when a task is done; {@code none}: only that it was done. */
public enum Measure {
    minutes,
    grams,
    degreesCelsius,
    millimetres,
    yesNo,
    photograph,
    none;

    /** Whether it is told as a number, in the unit that its name says. */
    public boolean isNumber() {
        return this == minutes || this == grams || this == degreesCelsius || this == millimetres;
    }

    /** Whether a value below zero can be meant. */
    public boolean goesBelowZero() {
        return this == degreesCelsius;
    }

    /** The unit as people write it, or nothing. Symbols of the SI Brochure, 9th edition, 2019. */
    public String unit() {
        return switch (this) {
            case minutes -> "min";
            case grams -> "g";
            case degreesCelsius -> "°C";
            case millimetres -> "mm";
            case yesNo, photograph, none -> "";
        };
    }
}
