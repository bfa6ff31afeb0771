package org.culvert.web;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The bar of a page: {@code inject:bar}. */
@Named("bar")
@RequestScoped
public class Bar {
    private final Places places;

    @Nullable
    List<Places.Place> read;

    Bar(Places places) {
        this.places = places;
    }

    /** Places of whoever asks, at most four; the start page leads to the rest. */
    public List<Places.Place> getPlaces() {
        if (read == null) {
            read = places.bar();
        }
        return read;
    }
}
