package org.culvert.hotspot;

import java.time.LocalDate;
import java.util.List;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Tells in whose area a road lies: councils, and areas of roads authorities; implemented by the room that keeps land. */
public interface CouncilAreas {
    /** Those that are on record as holding on a day. */
    OnADay open(LocalDate day);

    /** Areas as they are on one day. */
    interface OnADay {
        /** Names of all, each once, in order. */
        List<String> names();

        /** Names of those in which a place lies or on whose edge, each once, in order; none where nobody entered one. */
        List<String> at(Position position);

        /**
         * The name of an area as it is kept, or null where none is asked for.
         *
         * @param asked in capitals or not
         * @throws InvalidException naming {@code council}, with all names, where there is no such area
         */
        default @Nullable String find(@Nullable String asked) {
            if (asked == null || asked.isBlank()) {
                return null;
            }
            return names().stream()
                    .filter(name -> name.equalsIgnoreCase(asked.strip()))
                    .findFirst()
                    .orElseThrow(() -> InvalidException.of(
                            "council",
                            "No council area is called so.",
                            names().isEmpty()
                                    ? "no council, or first land areas of the kind councilArea"
                                    : "one of: " + String.join(", ", names())));
        }
    }
}
