package org.culvert.web.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.function.Function;
import org.culvert.call.CallReceipt;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.road.PlaceReading;
import org.culvert.road.PlaceUnderstood;
import org.culvert.road.RoadService;
import org.culvert.road.SaidPlaces;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** Reads a place while it is being typed; nothing is kept. */
@ApplicationScoped
public class DeskReading {
    /**
     * What there is to say of it so far.
     *
     * @param where null while nothing is understood
     * @param suggested how the line may go on
     */
    public record SoFar(@Nullable DeskWhere where, List<FieldError> errors, List<SaidPlaces.Suggestion> suggested) {}

    private static final int MOST_SUGGESTIONS = 12;

    private final SaidPlaces said;
    private final PlaceReading places;
    private final RoadService roads;

    DeskReading(SaidPlaces said, PlaceReading places, RoadService roads) {
        this.said = said;
        this.places = places;
        this.roads = roads;
    }

    /** @param near incidents that may be the same */
    public SoFar read(@Nullable String typed, Function<PlaceUnderstood, List<CallReceipt.Candidate>> near) {
        String text = Typed.given(typed);
        if (text == null) {
            return new SoFar(null, List.of(), List.of());
        }
        List<SaidPlaces.Suggestion> suggested = said.suggest(text, MOST_SUGGESTIONS);
        try {
            PlaceUnderstood at = places.understand(said.read(text));
            return new SoFar(DeskWhere.of(at, roads.findCurrent().orElse(null), near.apply(at)), List.of(), suggested);
        } catch (InvalidException notYet) {
            return new SoFar(null, notYet.errors(), suggested);
        }
    }
}
