package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Objects;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.RunView;
import org.culvert.platform.RegionService;
import org.culvert.road.RoadService;
import org.culvert.web.paper.Paper;

/** The report of a hotspot run on paper, as its page tells it to whoever asks. */
@ApplicationScoped
public class RoadReportPaper {
    private final Template template;
    private final RoadService roads;
    private final RegionService regions;

    RoadReportPaper(@Location("road-report.html") Template template, RoadService roads, RegionService regions) {
        this.template = template;
        this.roads = roads;
        this.regions = regions;
    }

    /**
     * @param run that has ended
     * @return a PDF; the same report, on the same roads, is the same octets
     */
    public byte[] print(RunView run, HotspotReport report) {
        Instant madeAt = Objects.requireNonNull(run.finishedAt(), "a run with a report has ended");
        String page = template.data("run", RunSummary.of(run))
                .data("report", ReportPage.of(report))
                .data("map", RoadMap.of(report.hotspots(), roads.findCurrent().orElse(null)))
                .data("region", regions.findDescription().orElse(null))
                .data("digest", run.documentSha256())
                .render();
        return Paper.print(page, madeAt);
    }
}
