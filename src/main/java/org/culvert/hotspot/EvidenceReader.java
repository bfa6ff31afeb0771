package org.culvert.hotspot;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.call.CollisionReport;
import org.culvert.call.IncidentService;
import org.culvert.hotspot.Evidence.LeftOut;
import org.culvert.hotspot.beside.DatedEvent;
import org.culvert.hotspot.stats.Recording;
import org.culvert.hotspot.stats.RoadEvent;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.jspecify.annotations.Nullable;

/**
 * Gathers what a run counts: incidents whose cause is a collision, each once, whoever rang and however many animals were
 * struck, alive or dead.
 */
@ApplicationScoped
class EvidenceReader {
    /** A carcass lasts a day, by the median: Santos et al. 2016, PLoS ONE, doi 10.1371/journal.pone.0165608. */
    private static final Duration LONGEST_DOUBT = Duration.ofDays(31);

    private final IncidentService incidents;
    private final RegionService regions;
    private final SurveyedGround surveyedGround;

    EvidenceReader(IncidentService incidents, RegionService regions, SurveyedGround surveyedGround) {
        this.incidents = incidents;
        this.regions = regions;
        this.surveyedGround = surveyedGround;
    }

    Evidence read(RunSettings settings, CurrentRoads roads) {
        ZoneId zone = regions.zone();
        List<CollisionReport> reports = incidents.listCollisionReports(
                settings.periodFrom().atStartOfDay(zone).toInstant(),
                settings.periodTo().plusDays(1).atStartOfDay(zone).toInstant());
        var tally =
                new Tally(settings, new RoadDoubt(roads.network().graph(), roads::findLink), surveys(settings, roads));
        for (CollisionReport report : reports) {
            tally.take(report, zone, roads);
        }
        return tally.evidence(reports.size(), roads);
    }

    /** The surveys of the season that a run counts on; null where it counts whatever was reported. */
    private SurveyedGround.@Nullable Surveys surveys(RunSettings settings, CurrentRoads roads) {
        if (!settings.chance().equals(ChanceKind.PER_SURVEY_EFFORT.key())) {
            return null;
        }
        return surveyedGround
                .find(settings.periodFrom(), settings.periodTo(), settings.taxonGroup(), roads)
                .begunOn(settings::has);
    }

    private static final class Tally {
        private final RunSettings settings;
        private final RoadDoubt doubt;
        private final SurveyedGround.@Nullable Surveys surveys;
        private final Map<LeftOut, Integer> leftOut = new EnumMap<>(LeftOut.class);
        private final List<DatedEvent> group = new ArrayList<>();
        private final List<DatedEvent> all = new ArrayList<>();
        private final List<DatedEvent> wholeYear = new ArrayList<>();
        private final SortedMap<Integer, Integer> incidentsByYear = new TreeMap<>();
        private final boolean comparesSeasons;
        private final int[] months = new int[12];
        private int timedByReport;
        private int placedByJunction;

        Tally(RunSettings settings, RoadDoubt doubt, SurveyedGround.@Nullable Surveys surveys) {
            this.settings = settings;
            this.doubt = doubt;
            this.surveys = surveys;
            this.comparesSeasons = settings.chance().equals(ChanceKind.PER_OTHER_SEASONS.key());
            for (LeftOut reason : surveys == null ? LeftOut.WITHOUT_SURVEYS : EnumSet.allOf(LeftOut.class)) {
                leftOut.put(reason, 0);
            }
        }

        void take(CollisionReport report, ZoneId zone, CurrentRoads roads) {
            if (!report.joined()) {
                Instant counts = Objects.requireNonNullElse(report.happenedAt(), report.reportedAt());
                incidentsByYear.merge(day(counts, zone).getYear(), 1, Integer::sum);
            }
            if (report.joined()) {
                count(LeftOut.JOINED);
            } else if (!report.collision()) {
                count(LeftOut.NOT_A_COLLISION);
            } else {
                takeCollision(report, zone, roads);
            }
        }

        private void takeCollision(CollisionReport report, ZoneId zone, CurrentRoads roads) {
            LocalDate day = dayOf(report, zone);
            if (day == null) {
                count(LeftOut.TIME_UNKNOWN);
                return;
            }
            boolean inSeason = settings.has(day);
            if (!inSeason) {
                count(LeftOut.OUT_OF_SEASON);
                if (!comparesSeasons) {
                    return;
                }
            }
            Placed placed = place(report, roads);
            RoadEvent event = placed.event();
            String wanted = settings.taxonGroup();
            boolean ofGroup = wanted == null || report.taxonGroups().contains(wanted);
            if (event != null && ofGroup && comparesSeasons && settings.inPeriod(day)) {
                wholeYear.add(new DatedEvent(day, event));
            }
            if (!inSeason) {
                return;
            }
            if (event == null) {
                count(Objects.requireNonNull(placed.reason()));
                return;
            }
            all.add(new DatedEvent(day, event));
            if (!ofGroup) {
                count(report.taxonGroups().isEmpty() ? LeftOut.KIND_UNKNOWN : LeftOut.OTHER_KIND);
                return;
            }
            if (surveys != null && !surveys.cover(day, event.link(), event.metres())) {
                count(LeftOut.NOT_SURVEYED);
                return;
            }
            group.add(new DatedEvent(day, event));
            months[day.getMonthValue() - 1]++;
            timedByReport += report.happenedAt() == null ? 1 : 0;
            placedByJunction += report.roadIsInDoubt() ? 1 : 0;
        }

        /** Where it counts, or why it does not. */
        private record Placed(
                @Nullable RoadEvent event, @Nullable LeftOut reason) {}

        private Placed place(CollisionReport report, CurrentRoads roads) {
            LeftOut reason = whyNotOnARoad(report, roads);
            if (reason != null) {
                return new Placed(null, reason);
            }
            double apart = doubt.metresBetweenRoads(report);
            if (Double.isInfinite(apart)) {
                return new Placed(null, LeftOut.ROAD_IN_DOUBT);
            }
            Recording recording = recording(report, apart);
            if (recording.spreadMetres() > settings.largestUncertaintyMetres()) {
                return new Placed(null, LeftOut.PLACE_UNSURE);
            }
            int link =
                    roads.findLink(Objects.requireNonNull(report.roadLinkId())).orElseThrow();
            return new Placed(
                    new RoadEvent(link, Objects.requireNonNullElse(report.metresAlongLink(), 0.0), recording), null);
        }

        /** The day that counts, or null where it may as well have been in the season as not. */
        private @Nullable LocalDate dayOf(CollisionReport report, ZoneId zone) {
            Instant happened = report.happenedAt();
            if (happened != null) {
                return day(happened, zone);
            }
            LocalDate reported = day(report.reportedAt(), zone);
            Instant notBefore = report.happenedNotBefore();
            if (notBefore == null) {
                return reported;
            }
            boolean sure = Duration.between(notBefore, report.reportedAt()).compareTo(LONGEST_DOUBT) <= 0
                    && settings.has(day(notBefore, zone)) == settings.has(reported);
            return sure ? reported : null;
        }

        private static LocalDate day(Instant instant, ZoneId zone) {
            return instant.atZone(zone).toLocalDate();
        }

        private static @Nullable LeftOut whyNotOnARoad(CollisionReport report, CurrentRoads roads) {
            if (!report.hasPlace()) {
                return LeftOut.NO_PLACE;
            }
            UUID link = report.roadLinkId();
            if (link == null) {
                return LeftOut.NO_ROAD;
            }
            return roads.findLink(link).isEmpty() ? LeftOut.OLDER_ROADS : null;
        }

        /**
         * A chainage that was said is rounded, and may lie half a step to either side; a position is spread alone, by a
         * junction as far as the other roads.
         */
        private static Recording recording(CollisionReport report, double metresBetweenRoads) {
            Double step = report.chainagePrecisionMetres();
            return step != null
                    ? new Recording(step, Math.max(step / 2, metresBetweenRoads))
                    : new Recording(
                            0,
                            Math.max(
                                    Objects.requireNonNullElse(report.coordinateUncertaintyInMeters(), 0.0),
                                    metresBetweenRoads));
        }

        private void count(LeftOut reason) {
            leftOut.merge(reason, 1, Integer::sum);
        }

        Evidence evidence(int incidentsInPeriod, CurrentRoads roads) {
            return new Evidence(
                    group,
                    all,
                    wholeYear,
                    Objects.requireNonNullElse(surveys, SurveyedGround.Surveys.NONE),
                    incidentsByYear,
                    incidentsInPeriod,
                    timedByReport,
                    placedByJunction,
                    leftOut,
                    months,
                    sha256(group, all, wholeYear, surveys, roads.number()));
        }
    }

    /** Over the events in an order of their own, so that it does not matter in which order the database gave them. */
    private static String sha256(
            List<DatedEvent> group,
            List<DatedEvent> all,
            List<DatedEvent> wholeYear,
            SurveyedGround.@Nullable Surveys surveys,
            int networkNumber) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(("network " + networkNumber + "\n").getBytes(StandardCharsets.UTF_8));
            addTo(digest, "group", group);
            addTo(digest, "all", all);
            addTo(digest, "year", wholeYear);
            if (surveys != null) {
                addTo(digest, surveys);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }

    private static void addTo(MessageDigest digest, String name, List<DatedEvent> events) {
        events.stream()
                .map(dated -> name + " " + dated.day() + " " + dated.event().link() + " "
                        + dated.event().metres() + " "
                        + dated.event().recording().roundingMetres() + " "
                        + dated.event().recording().spreadMetres() + "\n")
                .sorted()
                .forEach(line -> digest.update(line.getBytes(StandardCharsets.UTF_8)));
    }

    private static void addTo(MessageDigest digest, SurveyedGround.Surveys surveys) {
        surveys.all().stream()
                .map(survey -> "survey " + survey.firstDay() + " " + survey.lastDay() + " " + survey.spans() + "\n")
                .sorted()
                .forEach(line -> digest.update(line.getBytes(StandardCharsets.UTF_8)));
    }
}
