package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.culvert.release.rules.Site.Consent;
import org.jspecify.annotations.Nullable;

/**
 * Answers what may be asked of an animal's circumstances, by a rule or without one. What nobody knows is no pass.
 */
final class Answers {
    private final Subject subject;
    private final Site site;
    private final Circumstances known;
    private final Borders borders;

    /** The day on which it would go. */
    private final LocalDate day;

    Answers(Subject subject, Site site, Circumstances known, LocalDate day) {
        this.subject = subject;
        this.site = site;
        this.known = known;
        this.borders = new Borders(known.landsOf(Land.Kind.jurisdiction), site);
        this.day = day;
    }

    Answer landowner() {
        return switch (site.landownerConsent()) {
            case yes -> Answer.pass("Who owns the land has consented.");
            case no -> Answer.fail("Who owns the land has not consented.");
            case unknown -> approval(Approval.Of.landowner, "who owns the land");
        };
    }

    /** Whether the place is, or may be, on land of an owner that is on the maps. */
    boolean isOnProperty() {
        return known.landsOf(Land.Kind.property).stream().anyMatch(land -> land.siteIn() != Verdict.fail);
    }

    Answer park() {
        List<LandSaid> parks = known.landsOf(Land.Kind.protectedArea).stream()
                .filter(land -> land.siteIn() != Verdict.fail)
                .toList();
        if (parks.isEmpty()) {
            return Answer.pass(
                    "By the maps entered here the place is in no park or reserve. What nobody entered is not on them.");
        }
        Answer approval = approval(Approval.Of.protectedArea, "who keeps " + names(parks));
        boolean cameFromThere = parks.stream().allMatch(land -> land.originIn() == Verdict.pass);
        return new Answer(
                approval.verdict(),
                null,
                null,
                approval.words()
                        + (cameFromThere
                                ? " The animal came from there."
                                : " That the animal came from there cannot be told from its found place."));
    }

    Answer approval(Approval.Of of, String whose) {
        List<Approval> asked = known.approvals().stream()
                .filter(approval -> approval.of() == of)
                .toList();
        if (asked.stream().anyMatch(approval -> !approval.given())) {
            return Answer.fail("Asked, " + whose + " has refused.");
        }
        return asked.stream()
                .filter(approval -> approval.holdsOn(day))
                .findFirst()
                .map(approval -> Answer.pass("Approved by " + whose + "."))
                .orElseGet(() -> Answer.cantTell("No approval of " + whose + " that holds on the day is recorded."));
    }

    /** Whether the maps tell anything of where a jurisdiction ends. */
    boolean isMapped(String jurisdiction) {
        return borders.isMapped(jurisdiction);
    }

    /** Approval to cross a jurisdiction's border, unless the maps tell that none is crossed. */
    Answer border(String jurisdiction) {
        return borders.within(jurisdiction).orElseGet(() -> {
            Answer approval = approval(Approval.Of.border, "whoever may allow it across the border");
            return new Answer(approval.verdict(), null, null, borders.between(jurisdiction) + " " + approval.words());
        });
    }

    Optional<Answer> otherJurisdiction() {
        return borders.otherJurisdiction();
    }

    Answer sameCatchment() {
        List<LandSaid> catchments = known.landsOf(Land.Kind.catchment);
        List<LandSaid> both = catchments.stream()
                .filter(land -> land.originIn() == Verdict.pass && land.siteIn() == Verdict.pass)
                .toList();
        if (!both.isEmpty()) {
            return Answer.pass("Found place and site drain to the same water: " + names(both) + ".");
        }
        List<LandSaid> apart = catchments.stream()
                .filter(land -> land.originIn() == Verdict.pass && land.siteIn() == Verdict.fail)
                .toList();
        if (!apart.isEmpty()) {
            return Answer.fail("It comes from the catchment of " + names(apart) + ", and the site is not in it.");
        }
        return Answer.cantTell(
                "Whether found place and site drain to the same water cannot be told from the maps entered here.");
    }

    Answer waterWithin(double metres) {
        return nearestOf(Land.Kind.water)
                .map(water -> {
                    double least =
                            Math.max(0, water.metresFromSite() - site.at().uncertaintyMetres());
                    double most = water.metresFromSite() + site.at().uncertaintyMetres();
                    String words = String.format(
                            Locale.ROOT,
                            "%s is %s from the site, give or take %s; at most %s is asked for.",
                            water.name(),
                            metres(water.metresFromSite()),
                            metres(site.at().uncertaintyMetres()),
                            metres(metres));
                    Verdict verdict = most <= metres ? Verdict.pass : least > metres ? Verdict.fail : Verdict.cantTell;
                    return new Answer(verdict, null, metres, words);
                })
                .orElseGet(() -> new Answer(
                        Verdict.cantTell, null, metres, "No water near the site is on the maps entered here."));
    }

    private Optional<LandSaid> nearestOf(Land.Kind kind) {
        return known.landsOf(kind).stream()
                .min(Comparator.comparingDouble(LandSaid::metresFromSite).thenComparing(LandSaid::name));
    }

    Answer nestingGround() {
        return nearestOf(Land.Kind.nestingGround)
                .map(ground -> Answer.pass(String.format(
                        Locale.ROOT,
                        "The nearest nesting ground on the maps is %s away.",
                        metres(ground.metresFromSite()))))
                .orElseGet(() -> Answer.cantTell("No nesting ground near the site is on the maps entered here."));
    }

    Answer activePeriod() {
        SpeciesFact fact = known.findFact(SpeciesFact.Kind.activePeriod).orElse(null);
        SpeciesFact.ActivePeriod period = fact == null ? null : fact.activePeriod();
        if (fact == null || period == null) {
            return Answer.cantTell("When of the day its kind is about is not entered here.");
        }
        String about = "Its kind is about: " + words(period.name()) + " (" + fact.source() + ").";
        Conditions.Light light = known.conditions().light();
        if (light == null) {
            return Answer.cantTell(about + " When of the day it would go is not said.");
        }
        boolean fits =
                period == SpeciesFact.ActivePeriod.anyTime || period.name().equals(light.name());
        String said = " It would go by " + words(light.name()) + ".";
        return fits ? Answer.pass(about + said) : Answer.fail(about + said);
    }

    Answer weather() {
        Conditions.Weather weather = known.conditions().weather();
        if (weather == null) {
            return Answer.cantTell("Nothing is said of the weather.");
        }
        return weather == Conditions.Weather.fair
                ? Answer.pass("The weather is told to be fair.")
                : Answer.fail("The weather is told to be hard on it: wait.");
    }

    Answer daysInCare(int most) {
        String words = String.format(
                Locale.ROOT, "It was found %,d days before; at most %,d are asked for.", known.daysInCare(), most);
        return known.daysInCare() <= most ? Answer.pass(words) : Answer.fail(words);
    }

    Answer fitness() {
        FitnessCheck check = known.fitness();
        if (check == null) {
            return Answer.cantTell("No vet has signed that it is fit.");
        }
        String signed = "Signed for " + check.at().toString().substring(0, 10) + ". ";
        String unfit = aspects(check, FitnessCheck.Answer.notFit);
        if (!unfit.isEmpty()) {
            return Answer.fail(signed + "Not fit: " + unfit + ".");
        }
        if (check.seenAgainSince()) {
            return Answer.cantTell(signed + "It was at a clinic since, so somebody has to look again.");
        }
        String open = Arrays.stream(FitnessCheck.Aspect.values())
                .filter(aspect -> check.items().stream()
                        .noneMatch(item -> item.aspect() == aspect && item.answer() != FitnessCheck.Answer.notLookedAt))
                .map(aspect -> words(aspect.name()))
                .collect(Collectors.joining(", "));
        return open.isEmpty()
                ? Answer.pass(signed + "Everything that was looked at is as it should be.")
                : Answer.cantTell(signed + "Not looked at: " + open + ".");
    }

    private static String aspects(FitnessCheck check, FitnessCheck.Answer answer) {
        return check.items().stream()
                .filter(item -> item.answer() == answer)
                .map(item -> words(item.aspect().name()))
                .collect(Collectors.joining(", "));
    }

    Answer notWithPets() {
        FitnessCheck check = known.fitness();
        Consent housed = check == null ? Consent.unknown : check.housedWithPets();
        return switch (housed) {
            case no -> Answer.pass("It was not kept with pets.");
            case yes -> Answer.fail("It was kept with pets, and may carry what they carry: ask your licensed vet.");
            case unknown -> Answer.cantTell("Whether it was kept with pets is not recorded.");
        };
    }

    Answer matesGoToo() {
        return switch (known.conditions().matesGoToo()) {
            case yes -> Answer.pass("Those that it was raised with go with it, or it was raised alone.");
            case no -> Answer.fail("Those that it was raised with do not go with it.");
            case unknown -> Answer.cantTell("Whether those that it was raised with go with it is not said.");
        };
    }

    /** Burnt or under water, where it comes from or where it would go. */
    Answer groundIsOpen() {
        List<LandSaid> lands = known.landsOf(Land.Kind.burnt, Land.Kind.flooded);
        List<LandSaid> closed = lands.stream()
                .filter(land -> land.siteIn() == Verdict.pass || land.originIn() == Verdict.pass)
                .toList();
        if (!closed.isEmpty()) {
            return Answer.fail("Wait: " + closed(closed, " is ")
                    + ". When it has recovered and somebody has looked, end that entry.");
        }
        List<LandSaid> perhaps = lands.stream()
                .filter(land -> land.siteIn() == Verdict.cantTell || land.originIn() == Verdict.cantTell)
                .toList();
        if (!perhaps.isEmpty()) {
            return Answer.cantTell(
                    "Found place or site may lie in it: " + closed(perhaps, " is ") + ". Somebody has to look.");
        }
        return Answer.pass("By the maps entered here neither found place nor site is burnt or flooded.");
    }

    private static String closed(List<LandSaid> lands, String is) {
        return lands.stream()
                .map(land -> land.name()
                        + is
                        + words(land.kind().name())
                        + (land.until() == null ? "" : " until " + land.until()))
                .distinct()
                .collect(Collectors.joining("; "));
    }

    Answer notExcluded() {
        List<LandSaid> out = known.landsOf(Land.Kind.excluded).stream()
                .filter(land -> land.siteIn() != Verdict.fail)
                .toList();
        if (out.isEmpty()) {
            return Answer.pass("The site is on no land that was taken out.");
        }
        return out.stream().anyMatch(land -> land.siteIn() == Verdict.pass)
                ? Answer.fail("The site is on land that was taken out: " + names(out) + ".")
                : Answer.cantTell("The site may be on land that was taken out: " + names(out) + ".");
    }

    Answer movementRange(UncertainPosition origin, double metres) {
        Separation separation = origin.to(site.at());
        String words = String.format(
                Locale.ROOT,
                "It is %s from where the animal was found, give or take %s. An individual of its kind is told to use places %s apart: %s",
                metres(separation.distanceMetres()),
                metres(separation.doubtMetres()),
                metres(metres),
                known.facts().stream()
                        .filter(fact -> fact.kind() == SpeciesFact.Kind.movementRange)
                        .map(fact -> fact.words() + " (" + fact.source() + ")")
                        .collect(Collectors.joining("; ")));
        return new Answer(separation.atMost(metres), separation, metres, words);
    }

    Answer roadsBetween() {
        Barrier barrier = known.roadsBetween();
        if (barrier == null) {
            return Answer.cantTell("Which roads lie between is not known here.");
        }
        if (barrier.roads().isEmpty()) {
            return Answer.pass("No road of the network lies across the straight way between found place and site.");
        }
        return Answer.fail(
                (barrier.roads().size() == 1 ? "One road lies" : barrier.roads().size() + " roads lie")
                        + " across the straight way: "
                        + barrier.roads().stream().map(Answers::road).collect(Collectors.joining("; ")) + ".");
    }

    private static String road(Barrier.Crossed road) {
        return road.roadName() + " ("
                + (road.roadClass() == null ? "class unknown" : road.roadClass())
                + ", "
                + (road.speedLimitKmh() == null ? "speed limit unknown" : road.speedLimitKmh() + " km/h")
                + ", "
                + (road.aadt() == null
                        ? "traffic unknown"
                        : String.format(Locale.ROOT, "%,d vehicles a day", road.aadt()))
                + ")";
    }

    Answer hotspotsNear() {
        List<HotspotNear> hotspots = known.hotspots();
        if (hotspots == null) {
            return Answer.cantTell("No run for its group and the coming season is known here.");
        }
        if (hotspots.isEmpty()) {
            return Answer.pass(
                    "No collision hotspot of its group in the coming season is known within its reach. Where nobody looked, none is known.");
        }
        return Answer.fail(
                "Within its reach: " + hotspots.stream().map(Answers::hotspot).collect(Collectors.joining(" "))
                        + " That is advice to look for a better spot near by, and no reason by itself to take a resident animal farther.");
    }

    private static String hotspot(HotspotNear near) {
        return String.format(
                Locale.ROOT,
                "%s, km %.2f to %.2f, %s away, %d collisions (%s). %s",
                near.road(),
                near.fromChainageMetres() / 1000,
                near.toChainageMetres() / 1000,
                metres(near.metres()),
                near.incidents(),
                near.season(),
                near.claim());
    }

    boolean isAquatic() {
        return known.isAquatic();
    }

    private static String names(List<LandSaid> lands) {
        return lands.stream().map(LandSaid::name).distinct().collect(Collectors.joining(", "));
    }

    /** A name in code as words. */
    private static String words(String name) {
        return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%,.0f m", metres);
    }

    @Nullable
    UncertainPosition origin() {
        return subject.origin().at();
    }
}
