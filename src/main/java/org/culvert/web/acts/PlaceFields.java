package org.culvert.web.acts;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.SaidPlaces;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.FieldShape.Kind;

/** Places in one line, read as the desk reads them, and put into bodies as the API takes them. */
@ApplicationScoped
public class PlaceFields {
    /** Of its own: the server's writes answers, in which whoever asks finds no more than they may see. */
    private static final ObjectMapper BODIES =
            new ObjectMapper().setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

    private final SaidPlaces said;
    private final PlaceReading places;

    PlaceFields(SaidPlaces said, PlaceReading places) {
        this.said = said;
        this.places = places;
    }

    /** What is not understood, or is on no road of the network, is told beside its field. */
    public void read(List<FieldShape> shapes, EntryBody told) {
        for (FieldShape shape : shapes) {
            if (shape.kind() == Kind.place) {
                told.readAs(shape.name(), text -> {
                    PlaceAsGiven place = said.read(text);
                    places.understand(place);
                    return BODIES.valueToTree(place);
                });
            }
        }
    }
}
