package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.RegionService.RegionDescription;
import org.jspecify.annotations.Nullable;

/** Tells of collections and their features, as the asker may see them. */
@ApplicationScoped
class FeatureService {
    private final FeatureCatalogue catalogue;
    private final QueryReader reader;
    private final Extents extents;
    private final RegionService region;
    private final Clock clock;

    FeatureService(FeatureCatalogue catalogue, QueryReader reader, Extents extents, RegionService region, Clock clock) {
        this.catalogue = catalogue;
        this.reader = reader;
        this.extents = extents;
        this.region = region;
        this.clock = clock;
    }

    LandingPage landing(LinkMaker links) {
        List<WebLink> all = links.selfAndAlternate(WebLink.JSON);
        all.add(new WebLink(links.to("/api"), "service-desc", WebLink.OPENAPI, "What can be asked (OpenAPI 3.0)"));
        all.add(new WebLink(links.to("/api?f=html"), "service-doc", WebLink.HTML, "What can be asked"));
        all.add(new WebLink(links.to("/conformance"), "conformance", WebLink.JSON, "Standards that are kept"));
        all.add(new WebLink(links.to("/collections"), "data", WebLink.JSON, "Collections"));
        return new LandingPage(title(), "Road evidence and wildlife incidents as layers for GIS programs.", all);
    }

    String title() {
        return "Culvert"
                + region.findDescription()
                        .map(RegionDescription::name)
                        .map(name -> ": " + name)
                        .orElse("");
    }

    CollectionList collections(LinkMaker links) {
        return new CollectionList(
                links.selfAndAlternate(WebLink.JSON),
                catalogue.listOpen().stream()
                        .map(source -> describe(links, source))
                        .toList());
    }

    CollectionDescription describe(LinkMaker links, FeatureSource source) {
        return new CollectionDescription(
                source.id(),
                source.title(),
                source.description(),
                links.ofCollection(source),
                extents.of(source),
                "feature",
                List.of(CollectionDescription.CRS84));
    }

    FeaturePage items(LinkMaker links, FeatureSource source, Map<String, String> parameters) {
        int limit = QueryReader.limit(parameters.get("limit"));
        FeatureQuery query = reader.query(source, parameters);
        FeatureSource.Slice slice = source.page(query, limit, parameters.get("cursor"));
        List<WebLink> all = links.selfAndAlternate(WebLink.GEO_JSON);
        all.add(WebLink.of(links.to(LinkMaker.collection(source.id())), "collection", WebLink.JSON));
        if (slice.next() != null) {
            all.add(links.next(slice.next()));
        }
        return new FeaturePage(
                "FeatureCollection",
                clock.instant(),
                matched(source, query, slice, parameters.get("cursor")),
                slice.features().size(),
                all,
                slice.features());
    }

    /** A first page without another has them all. */
    private static long matched(
            FeatureSource source, FeatureQuery query, FeatureSource.Slice slice, @Nullable String cursor) {
        return cursor == null && slice.next() == null ? slice.features().size() : source.count(query);
    }

    MapFeature item(LinkMaker links, FeatureSource source, String id) {
        MapFeature found = source.find(id).orElseThrow(() -> new NotFoundException("feature of " + source.id(), id));
        List<WebLink> all = new ArrayList<>(links.selfAndAlternate(WebLink.GEO_JSON));
        all.add(WebLink.of(links.to(LinkMaker.collection(source.id())), "collection", WebLink.JSON));
        return found.linked(all);
    }
}
