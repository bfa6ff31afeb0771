package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.stats.rate.BeforeAfter.Note;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.road.traffic.PeriodTraffic;
import org.culvert.road.traffic.TrafficReader;
import org.jspecify.annotations.Nullable;

/** Says what works did, against what would have come without them. */
@ApplicationScoped
public class EffectService {
    private static final String SENSITIVE =
            "A species of this group is sensitive: what happened to it on a stretch is not"
                    + " told to you. Who keeps the network's records can be asked.";

    private final WorksService works;
    private final StandingWorks standing;
    private final CollisionReader collisions;
    private final SeasonReader seasons;
    private final TrafficReader traffic;
    private final RoadService roads;
    private final RegionService regions;
    private final AuthoritySight authority;
    private final Clock clock;

    EffectService(
            WorksService works,
            StandingWorks standing,
            CollisionReader collisions,
            SeasonReader seasons,
            TrafficReader traffic,
            RoadService roads,
            RegionService regions,
            AuthoritySight authority,
            Clock clock) {
        this.works = works;
        this.standing = standing;
        this.collisions = collisions;
        this.seasons = seasons;
        this.traffic = traffic;
        this.roads = roads;
        this.regions = regions;
        this.authority = authority;
        this.clock = clock;
    }

    /** What is asked for in texts and numbers; see {@link EffectQuestion}. */
    @Transactional
    public EffectView effect(
            UUID id,
            @Nullable String taxonGroup,
            @Nullable String months,
            @Nullable String seasonWindow,
            @Nullable Integer yearsBefore,
            @Nullable Integer yearsAfter,
            @Nullable Double beyondMetres,
            @Nullable Double windowMetres,
            List<String> comparison) {
        return effect(
                id,
                EffectQuestion.of(
                        taxonGroup,
                        months,
                        seasonWindow,
                        yearsBefore,
                        yearsAfter,
                        beyondMetres,
                        windowMetres,
                        comparison));
    }

    private EffectView effect(UUID id, EffectQuestion question) {
        Works one = works.require(id);
        LocalDate today = clock.instant().atZone(regions.zone()).toLocalDate();
        if (authority.smallestCount() != null) {
            question.comparison().forEach(stretch -> {
                StretchQuestionService.requireStep("comparison", stretch.from());
                StretchQuestionService.requireStep("comparison", stretch.to());
            });
        }
        RunSettings.Season season =
                seasons.read(question.taxonGroup(), question.months(), question.seasonWindow(), one.builtFrom);
        CurrentRoads current = roads.current();
        RoadPieces pieces = RoadPieces.of(current.network());
        List<RoadPieces.Part> inside = inside(one, pieces);
        EffectZones zones = EffectZones.of(inside, one.endsMetres, question.beyondMetres());
        var writer = new EffectWriter(one, question, season, zones, notes(one), authority.smallestCount());
        EffectPeriods asked = EffectPeriods.of(one, question.yearsBefore(), question.yearsAfter(), today);
        if (authority.withholdsPlacesOf(question.taxonGroup())) {
            return writer.withheld(asked, SENSITIVE);
        }
        LocalDate last = asked.after().isEmpty() ? one.builtFrom : asked.afterTo();
        Collisions read = collisions.read(asked.beforeFrom(), last, season, question.taxonGroup(), current);
        EffectPeriods periods = asked.from(read.firstReport());
        List<String> cautions = cautions(one, current, asked, periods);
        if (!periods.canBeCompared()) {
            return writer.tooEarly(periods, read, current.number(), cautions);
        }
        StandingWorks.Places others = standing.find(pieces, periods.beforeFrom(), periods.afterTo(), id);
        cautions.addAll(others.notPlaced());
        if (others.touch(zones.roads())) {
            cautions.add("Other works stood on some of this stretch in these years: what they did counts here too.");
        }
        PeriodTraffic before = traffic.find(
                current, periods.beforeFrom().getYear(), periods.beforeTo().getYear());
        PeriodTraffic after = traffic.find(
                current, periods.afterFrom().getYear(), periods.afterTo().getYear());
        RoadPieces ofBefore = RoadPieces.of(current.network(), before.links()::vehiclesPerDay);
        var change = new TrafficChange(before.links(), after.links());
        Set<String> classes = new TreeSet<>();
        zones.roads().forEach(part -> classes.addAll(pieces.classes(part)));
        List<RoadPieces.Part> treated = new ArrayList<>(zones.roads());
        treated.addAll(others.parts());
        List<Collisions.Placed> collisionsBefore = read.ofGroup().stream()
                .filter(placed -> periods.isBefore(placed.day()))
                .toList();
        RoadModel model = RoadModel.of(
                        ofBefore,
                        collisionsBefore,
                        treated,
                        classes,
                        question.windowMetres(),
                        periods.before().size())
                .later(RoadPieces.of(current.network(), change::vehiclesPerDayAfter));
        cautions.addAll(change.words(model, pieces, zones.roads()));
        List<RoadPieces.Part> compared = compared(pieces, question.comparison(), treated);
        var study = new EffectStudy(pieces, zones, periods, model, compared, notes(one));
        return writer.told(
                periods,
                study.of(read),
                classes,
                study.reportsElsewhere(read),
                read.at(before),
                current.number(),
                cautions);
    }

    private static List<RoadPieces.Part> inside(Works works, RoadPieces pieces) {
        try {
            return pieces.requireStretch("", works.road, works.fromChainageMetres, works.toChainageMetres);
        } catch (InvalidException noLongerThere) {
            throw new ConflictException("These works have no place on the current roads: " + noLongerThere.getMessage()
                    + " Correct their road and chainages first.");
        }
    }

    private static List<RoadPieces.Part> compared(
            RoadPieces pieces, List<EffectQuestion.Stretch> asked, List<RoadPieces.Part> treated) {
        List<RoadPieces.Part> compared = new ArrayList<>();
        for (EffectQuestion.Stretch stretch : asked) {
            List<RoadPieces.Part> parts;
            try {
                parts = pieces.requireStretch("", stretch.road(), stretch.from(), stretch.to());
            } catch (InvalidException e) {
                InvalidException.FieldError error = e.errors().get(0);
                throw InvalidException.of("comparison", stretch.road() + ": " + error.detail(), error.wanted());
            }
            if (new StandingWorks.Places(treated, List.of()).touch(parts)) {
                throw InvalidException.of(
                        "comparison",
                        "Works stand on " + stretch.road() + " there, or animals may have been moved there.",
                        "stretches without works, away from these");
            }
            compared.addAll(parts);
        }
        return compared;
    }

    private static List<Note> notes(Works works) {
        List<Note> notes = new ArrayList<>();
        String source = "the record of the works";
        if (works.effortChange != null) {
            notes.add(new Note(Note.Kind.EFFORT, null, null, works.effortChange, source));
        }
        if (works.publicityChange != null) {
            notes.add(new Note(Note.Kind.PUBLICITY, null, null, works.publicityChange, source));
        }
        return notes;
    }

    private static List<String> cautions(
            Works works, CurrentRoads current, EffectPeriods asked, EffectPeriods periods) {
        List<String> cautions = new ArrayList<>();
        if (works.networkNumber != current.number()) {
            cautions.add("The works were entered on version " + works.networkNumber
                    + " of the roads; their chainages are" + " read on version " + current.number() + ".");
        }
        if (periods.before().size() < asked.before().size()) {
            cautions.add("Nothing at all was reported in the first "
                    + (asked.before().size() - periods.before().size())
                    + " of the years before: the records may begin later, so these years are left out.");
        }
        return cautions;
    }
}
