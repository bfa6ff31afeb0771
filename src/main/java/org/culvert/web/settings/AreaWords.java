package org.culvert.web.settings;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.PlaceUnderstood;
import org.culvert.web.Languages;
import org.culvert.web.words.SettingsWords;

/** An area as people can find it: the middle of its box, how far it reaches from there, and the road that is near. */
@ApplicationScoped
class AreaWords {
    private final PlaceReading places;
    private final Languages languages;

    AreaWords(PlaceReading places, Languages languages) {
        this.places = places;
        this.languages = languages;
    }

    /** @param geometry of GeoJSON (RFC 7946): longitude stands before latitude */
    String said(JsonNode geometry) {
        List<Position> corners = new ArrayList<>();
        collect(geometry.path("coordinates"), corners);
        if (corners.isEmpty()) {
            return "";
        }
        double south = corners.stream().mapToDouble(Position::latitude).min().orElseThrow();
        double north = corners.stream().mapToDouble(Position::latitude).max().orElseThrow();
        double west = corners.stream().mapToDouble(Position::longitude).min().orElseThrow();
        double east = corners.stream().mapToDouble(Position::longitude).max().orElseThrow();
        Position middle = new Position((south + north) / 2, (west + east) / 2);
        double reach = corners.stream()
                .mapToDouble(corner -> Geodesy.metresBetween(middle, corner))
                .max()
                .orElseThrow();
        SettingsWords words = languages.words(SettingsWords.class);
        String area = words.areaWithin(
                Math.round(reach), String.format(Locale.ROOT, "%.4f, %.4f", middle.latitude(), middle.longitude()));
        String road = road(middle);
        return road.isEmpty() ? area : area + "; " + words.areaNear(road);
    }

    private static void collect(JsonNode node, List<Position> corners) {
        if (node.size() >= 2 && node.get(0).isNumber()) {
            corners.add(new Position(node.get(1).asDouble(), node.get(0).asDouble()));
        } else {
            node.forEach(part -> collect(part, corners));
        }
    }

    /** Empty where no road is near, or the place is outside of the region. */
    private String road(Position middle) {
        try {
            PlaceUnderstood.OnRoad near = places.understand(
                            PlaceAsGiven.at(middle.latitude(), middle.longitude(), null, null))
                    .onRoad();
            return near == null
                    ? ""
                    : near.roadName() + ", km " + String.format(Locale.ROOT, "%.1f", near.chainageMetres() / 1000);
        } catch (InvalidException outside) {
            return "";
        }
    }
}
