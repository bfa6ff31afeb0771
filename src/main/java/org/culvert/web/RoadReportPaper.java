package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Objects;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.OpenEvidence;
import org.culvert.hotspot.RunView;
import org.culvert.platform.RegionService;
import org.culvert.road.RoadService;
import org.culvert.web.paper.Paper;

/** The report of a hotspot run on paper, as its pages tell it to whoever asks and in the same parts. */
@ApplicationScoped
public class RoadReportPaper {
    /** As many as have their road drawn. */
    static final int MOST_CARDS = 12;

    private final Template template;
    private final EvidencePages pages;
    private final OpenEvidence evidence;
    private final RoadService roads;
    private final RegionService regions;
    private final Languages languages;

    RoadReportPaper(
            @Location("road-report.html") Template template,
            EvidencePages pages,
            OpenEvidence evidence,
            RoadService roads,
            RegionService regions,
            Languages languages) {
        this.template = template;
        this.pages = pages;
        this.evidence = evidence;
        this.roads = roads;
        this.regions = regions;
        this.languages = languages;
    }

    /**
     * @param run that has ended
     * @return a PDF; the same report, on the same roads and records, is the same octets
     */
    public byte[] print(RunView run, HotspotReport report) {
        Instant madeAt = Objects.requireNonNull(run.finishedAt(), "a run with a report has ended");
        String page = template.data("run", RunSummary.of(run))
                .data("report", ReportPage.of(report, languages.ofPage()))
                .data("cards", pages.cards(report, MOST_CARDS))
                .data("map", RoadMap.of(report.hotspots(), roads.findCurrent().orElse(null)))
                .data("region", regions.findDescription().orElse(null))
                .data("digest", run.documentSha256())
                .data("own", evidence.isOwn())
                .data("paper", true)
                .render();
        return Paper.print(page, madeAt);
    }
}
