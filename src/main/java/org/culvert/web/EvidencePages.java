package org.culvert.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.OpenEvidence;
import org.culvert.hotspot.card.StretchCardService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.web.words.RoadWords;

/** Lays cards of hotspots out, for the screen and for paper. */
@ApplicationScoped
class EvidencePages {
    private final StretchCardService cards;
    private final OpenEvidence evidence;
    private final RoadService roads;
    private final Languages languages;

    EvidencePages(StretchCardService cards, OpenEvidence evidence, RoadService roads, Languages languages) {
        this.cards = cards;
        this.evidence = evidence;
        this.roads = roads;
        this.languages = languages;
    }

    /** The card of a rank, where the report has it. */
    Optional<StretchCardPage> card(HotspotReport report, int rank) {
        return StretchCardService.find(report, rank).map(stretch -> card(report, stretch));
    }

    /** The cards of the first hotspots. */
    List<StretchCardPage> cards(HotspotReport report, int most) {
        return report.hotspots().stream()
                .limit(most)
                .map(stretch -> card(report, stretch))
                .toList();
    }

    private StretchCardPage card(HotspotReport report, HotspotReport.Stretch stretch) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        return StretchCardPage.of(
                cards.card(report, stretch),
                report,
                current,
                languages.ofPage(),
                languages.words(RoadWords.class),
                evidence.isOwn());
    }
}
