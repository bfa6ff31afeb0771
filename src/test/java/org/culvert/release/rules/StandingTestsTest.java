package org.culvert.release.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.release.rules.Animals.DAY;
import static org.culvert.release.rules.Animals.FOUND;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.geo.Geodesy;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.release.rules.Site.Consent;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** The tests that stand without a rule, and rules that ask the same. Common practice, no source, unless one is named. */
class StandingTestsTest {
    private static final Instant LATELY = Instant.parse("2026-11-30T02:00:00Z");
    private static final UncertainPosition SITE =
            new UncertainPosition(Geodesy.WGS84.direct(FOUND.position(), 90, 600), 20);

    /** All that is known speaks for it. */
    private static final Circumstances GOOD = new Circumstances(
            List.of(),
            List.of(),
            signed(FitnessCheck.Answer.fit, false, Consent.no),
            List.of(
                    fact(SpeciesFact.Kind.movementRange, 757.0, null),
                    fact(SpeciesFact.Kind.aquatic, null, null),
                    fact(SpeciesFact.Kind.activePeriod, null, SpeciesFact.ActivePeriod.day)),
            List.of(said(Land.Kind.catchment, "the creek", Verdict.pass, Verdict.pass, 0)),
            Barrier.NONE,
            List.of(),
            40,
            new Conditions(Conditions.Light.day, Conditions.Weather.fair, Consent.yes));

    private static FitnessCheck signed(FitnessCheck.Answer answer, boolean seenSince, Consent pets) {
        return new FitnessCheck(
                LATELY,
                Arrays.stream(FitnessCheck.Aspect.values())
                        .map(aspect -> new FitnessCheck.Item(aspect, answer))
                        .toList(),
                pets,
                seenSince);
    }

    private static SpeciesFact fact(SpeciesFact.Kind kind, Double metres, SpeciesFact.ActivePeriod period) {
        return new SpeciesFact(
                kind, "Chelodina longicollis", metres, period, "as published", "a source", DAY, DAY.plusYears(1));
    }

    private static LandSaid said(Land.Kind kind, String name, Verdict origin, Verdict site, double metres) {
        return new LandSaid(kind, name, "a map", null, origin, site, metres);
    }

    private static Circumstances lands(LandSaid... lands) {
        return new Circumstances(
                GOOD.approvals(),
                GOOD.holds(),
                GOOD.fitness(),
                GOOD.facts(),
                List.of(lands),
                GOOD.roadsBetween(),
                GOOD.hotspots(),
                GOOD.daysInCare(),
                GOOD.conditions());
    }

    private static Circumstances held(Hold.Kind kind) {
        return new Circumstances(
                List.of(),
                List.of(new Hold(kind, LATELY)),
                GOOD.fitness(),
                GOOD.facts(),
                GOOD.lands(),
                GOOD.roadsBetween(),
                GOOD.hotspots(),
                GOOD.daysInCare(),
                GOOD.conditions());
    }

    private static Circumstances fitness(FitnessCheck check) {
        return new Circumstances(
                List.of(),
                List.of(),
                check,
                GOOD.facts(),
                GOOD.lands(),
                GOOD.roadsBetween(),
                GOOD.hotspots(),
                GOOD.daysInCare(),
                GOOD.conditions());
    }

    private static Circumstances approved(Approval... approvals) {
        return new Circumstances(
                List.of(approvals),
                List.of(),
                GOOD.fitness(),
                GOOD.facts(),
                List.of(said(Land.Kind.protectedArea, "the park", Verdict.fail, Verdict.cantTell, 3)),
                GOOD.roadsBetween(),
                GOOD.hotspots(),
                GOOD.daysInCare(),
                GOOD.conditions());
    }

    private static Circumstances roadsAndHotspots(Barrier barrier, List<HotspotNear> hotspots) {
        return new Circumstances(
                List.of(),
                List.of(),
                GOOD.fitness(),
                GOOD.facts(),
                GOOD.lands(),
                barrier,
                hotspots,
                GOOD.daysInCare(),
                GOOD.conditions());
    }

    private static Map<String, Finding> assess(Circumstances known, Rule... rules) {
        return Assessor.assessWhole(
                        Animals.turtle(FOUND), Animals.queensland(SITE), List.of(), List.of(rules), known, DAY)
                .stream()
                .collect(Collectors.toMap(Finding::test, Function.identity()));
    }

    @Test
    void whereAllIsKnownAndGoodOnlyTheMissingLawAsks() {
        Map<String, Finding> findings = assess(GOOD);
        assertThat(findings.values())
                .filteredOn(finding -> finding.verdict() != Verdict.pass)
                .extracting(Finding::test)
                .containsExactlyInAnyOrder("localRuleKnown", "nestingGround");
        assertThat(findings.get("movementRange").limitMetres()).isEqualTo(757);
    }

    /** What nobody knows is no pass anywhere, and nothing is left out. */
    @Test
    void whereNothingIsKnownNothingPassesButTheMapsThatAreEmpty() {
        Map<String, Finding> findings = assess(Circumstances.NOT_KNOWN);
        assertThat(findings.values())
                .filteredOn(finding -> finding.verdict() == Verdict.pass)
                .extracting(Finding::test)
                .containsExactlyInAnyOrder("groundIsOpen", "notExcluded", "parkApproval");
        assertThat(findings.get("fitness").stands()).isTrue();
        assertThat(Assessor.overall(List.copyOf(findings.values()))).isEqualTo(Verdict.cantTell);
    }

    @Test
    void nothingOverridesAHealthHold() {
        for (Hold.Kind kind : Hold.Kind.values()) {
            Finding hold = assess(held(kind)).get("healthHold." + kind);
            assertThat(hold.verdict()).isEqualTo(Verdict.fail);
            assertThat(hold.lifting()).isEqualTo(Lifting.byNothing);
        }
        // Australian Immunisation Handbook: wash at once, ring the public health unit; a vaccination changes nothing of
        // it
        assertThat(assess(held(Hold.Kind.exposure)).get("healthHold.exposure").words())
                .contains("washes at once", "public health unit");
    }

    @Test
    void aVetSignsEachAspectAndALaterVisitAsksAnew() {
        assertThat(assess(fitness(signed(FitnessCheck.Answer.fit, true, Consent.no)))
                        .get("fitness")
                        .verdict())
                .isEqualTo(Verdict.cantTell);
        assertThat(assess(fitness(signed(FitnessCheck.Answer.notFit, true, Consent.no)))
                        .get("fitness")
                        .verdict())
                .isEqualTo(Verdict.fail);
        var partly = new FitnessCheck(
                LATELY,
                List.of(new FitnessCheck.Item(FitnessCheck.Aspect.senses, FitnessCheck.Answer.fit)),
                Consent.unknown,
                false);
        Finding open = assess(fitness(partly)).get("fitness");
        assertThat(open.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(open.words()).contains("wounds healed").doesNotContain("senses");
        assertThat(assess(fitness(signed(FitnessCheck.Answer.doesNotApply, false, Consent.yes)))
                        .get("fitness")
                        .verdict())
                .isEqualTo(Verdict.pass);
    }

    /** Ontario turtle-hospital practice: one that was housed with pet turtles is not released. Here a rule row says so. */
    @Test
    void whatARuleAsksIsNotAskedASecondTime() {
        Circumstances pets = fitness(signed(FitnessCheck.Answer.fit, false, Consent.yes));
        assertThat(assess(pets).get("notWithPets").lifting()).isEqualTo(Lifting.notNeeded);
        Rule rule = Animals.rule(RuleKind.policy, Rule.Question.notWithPets).make();
        List<Finding> findings = Assessor.assessWhole(
                Animals.turtle(FOUND), Animals.queensland(SITE), List.of(), List.of(rule), pets, DAY);
        assertThat(findings)
                .filteredOn(finding -> finding.test().equals("notWithPets"))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.lifting()).isEqualTo(Lifting.byOverride);
                    assertThat(finding.verdict()).isEqualTo(Verdict.fail);
                });
    }

    @Test
    void aBurntOrFloodedOriginMeansWait() {
        Finding origin = assess(lands(said(Land.Kind.burnt, "the burn", Verdict.pass, Verdict.fail, 900)))
                .get("groundIsOpen");
        assertThat(origin.verdict()).isEqualTo(Verdict.fail);
        assertThat(origin.words()).contains("the burn is burnt");
        assertThat(assess(lands(said(Land.Kind.flooded, "the flat", Verdict.cantTell, Verdict.fail, 900)))
                        .get("groundIsOpen")
                        .verdict())
                .isEqualTo(Verdict.cantTell);
        assertThat(assess(lands(said(Land.Kind.flooded, "the flat", Verdict.fail, Verdict.fail, 900)))
                        .get("groundIsOpen")
                        .verdict())
                .isEqualTo(Verdict.pass);
    }

    /** Queensland's code, section 15 (2013): into a park only with approval beforehand, and only what came from it. */
    @Test
    void aParkWantsItsApproval() {
        assertThat(assess(approved()).get("parkApproval").verdict()).isEqualTo(Verdict.cantTell);
        assertThat(assess(approved()).get("parkApproval").lifting()).isEqualTo(Lifting.byPermit);
        Finding given = assess(approved(new Approval(Approval.Of.protectedArea, true, DAY, "letter 7")))
                .get("parkApproval");
        assertThat(given.verdict()).isEqualTo(Verdict.pass);
        assertThat(given.words()).contains("who keeps the park", "cannot be told");
        assertThat(assess(approved(new Approval(Approval.Of.protectedArea, true, DAY.minusDays(1), null)))
                        .get("parkApproval")
                        .verdict())
                .isEqualTo(Verdict.cantTell);
        assertThat(assess(approved(
                                new Approval(Approval.Of.protectedArea, true, DAY, null),
                                new Approval(Approval.Of.protectedArea, false, null, null)))
                        .get("parkApproval")
                        .verdict())
                .isEqualTo(Verdict.fail);
    }

    private static LandSaid law(String code, Verdict origin, Verdict site) {
        return said(Land.Kind.jurisdiction, code, origin, site, 0);
    }

    /** Code of Maryland Regulations 08.03.12.20: never across a state line without approval. */
    @Test
    void whetherABorderIsCrossedIsToldFromMaps() {
        assertThat(assess(GOOD)).doesNotContainKeys("borderApproval", "jurisdictionOnMap");
        Finding within =
                assess(lands(law("AU-QLD", Verdict.pass, Verdict.pass))).get("borderApproval");
        assertThat(within.verdict()).isEqualTo(Verdict.pass);
        Finding across = assess(
                        lands(law("AU-QLD", Verdict.fail, Verdict.pass), law("AU-NSW", Verdict.pass, Verdict.fail)))
                .get("borderApproval");
        assertThat(across.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(across.lifting()).isEqualTo(Lifting.byPermit);
        assertThat(across.words()).contains("the border of AU-QLD lies between found place and site");
        assertThat(assess(lands(law("AU-QLD", Verdict.cantTell, Verdict.pass)))
                        .get("borderApproval")
                        .words())
                .contains("cannot be told");
    }

    @Test
    void aRuleOfACountryAsksForTheCountrysBorder() {
        Rule statute = Animals.rule(RuleKind.statute, Rule.Question.borderApproval)
                .in("AU")
                .make();
        LandSaid from = law("AU-NSW", Verdict.pass, Verdict.fail);
        LandSaid to = law("AU-QLD", Verdict.fail, Verdict.pass);
        assertThat(assess(lands(from, to), statute).get("borderApproval").verdict())
                .isEqualTo(Verdict.pass);
        assertThat(assess(lands(to), statute).get("borderApproval").verdict()).isEqualTo(Verdict.cantTell);
        assertThat(assess(GOOD, statute).get("borderApproval").verdict()).isEqualTo(Verdict.cantTell);
        Circumstances approved = new Circumstances(
                List.of(new Approval(Approval.Of.border, true, DAY, "letter 9")),
                List.of(),
                GOOD.fitness(),
                GOOD.facts(),
                List.of(to),
                GOOD.roadsBetween(),
                GOOD.hotspots(),
                GOOD.daysInCare(),
                GOOD.conditions());
        assertThat(assess(approved, statute).get("borderApproval").verdict()).isEqualTo(Verdict.pass);
    }

    @Test
    void aSiteThatTheMapsPutElsewhereAsksForTheRulesOfThere() {
        Finding elsewhere =
                assess(lands(law("AU-NSW", Verdict.pass, Verdict.pass))).get("jurisdictionOnMap");
        assertThat(elsewhere.verdict()).isEqualTo(Verdict.fail);
        assertThat(elsewhere.stands()).isTrue();
        assertThat(elsewhere.words()).contains("entered as lying in AU-QLD", "lies in AU-NSW");
        assertThat(assess(lands(law("AU-NSW", Verdict.pass, Verdict.cantTell)))
                        .get("jurisdictionOnMap")
                        .verdict())
                .isEqualTo(Verdict.cantTell);
        assertThat(assess(lands(law("AU", Verdict.pass, Verdict.pass)))).doesNotContainKey("jurisdictionOnMap");
        // Of a part of what was entered the rules were not asked
        var site = new Site(SITE, "AU", Consent.unknown);
        assertThat(Assessor.assessWhole(
                        Animals.turtle(FOUND),
                        site,
                        List.of(),
                        List.of(),
                        lands(law("AU-QLD", Verdict.pass, Verdict.pass)),
                        DAY))
                .filteredOn(finding -> finding.test().equals("jurisdictionOnMap"))
                .extracting(Finding::verdict)
                .containsExactly(Verdict.fail);
    }

    @Test
    void landOfAnOwnerOnTheMapsWantsTheOwner() {
        assertThat(assess(GOOD)).doesNotContainKey("landownerConsent");
        Finding asked = assess(lands(said(Land.Kind.property, "the run", Verdict.fail, Verdict.cantTell, 5)))
                .get("landownerConsent");
        assertThat(asked.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(asked.lifting()).isEqualTo(Lifting.byOverride);
    }

    @Test
    void anAnimalOfTheWaterIsAskedForItsCatchmentAndItsWater() {
        Rule catchment =
                Animals.rule(RuleKind.statute, Rule.Question.sameCatchment).make();
        assertThat(assess(GOOD, catchment).get("sameCatchment").verdict()).isEqualTo(Verdict.pass);
        Circumstances elsewhere = lands(
                said(Land.Kind.catchment, "the creek", Verdict.pass, Verdict.fail, 10),
                said(Land.Kind.water, "the dam", Verdict.fail, Verdict.fail, 100));
        assertThat(assess(elsewhere, catchment).get("sameCatchment").verdict()).isEqualTo(Verdict.fail);
        Circumstances onTheRidge = lands(said(Land.Kind.catchment, "the creek", Verdict.cantTell, Verdict.pass, 0));
        assertThat(assess(onTheRidge, catchment).get("sameCatchment").verdict()).isEqualTo(Verdict.cantTell);

        // The site is known to 20 m, so 100 m of water are between 80 and 120
        for (Map.Entry<Double, Verdict> one : Map.of(
                        79.0, Verdict.fail, 81.0, Verdict.cantTell, 119.0, Verdict.cantTell, 120.0, Verdict.pass)
                .entrySet()) {
            Rule water = Animals.rule(RuleKind.code, Rule.Question.waterWithin)
                    .atMost(one.getKey())
                    .make();
            assertThat(assess(elsewhere, water).get("waterWithin").verdict()).isEqualTo(one.getValue());
        }
    }

    /** Washington State, WAC 220-450: 180 days. */
    @Test
    void theDaysInCareAreCountedToTheDay() {
        Rule days = Animals.rule(RuleKind.statute, Rule.Question.daysInCare)
                .days(40)
                .make();
        assertThat(assess(GOOD, days).get("daysInCare").verdict()).isEqualTo(Verdict.pass);
        Rule fewer = Animals.rule(RuleKind.statute, Rule.Question.daysInCare)
                .days(39)
                .make();
        assertThat(assess(GOOD, fewer).get("daysInCare").verdict()).isEqualTo(Verdict.fail);
        assertThat(assess(GOOD, fewer).get("daysInCare").lifting()).isEqualTo(Lifting.byPermit);
    }

    @Test
    void roadsAndHotspotsAreShownAndInNobodysWay() {
        var road = new Barrier(List.of(new Barrier.Crossed("Ridge Road", null, null, 4200, 310)));
        var near = new HotspotNear(
                UUID.randomUUID(),
                1,
                "Ridge Road",
                12_000,
                12_400,
                "October, November",
                9,
                "At 5 % against chance per kilometre.",
                350);
        Map<String, Finding> findings = assess(roadsAndHotspots(road, List.of(near)));
        Finding roads = findings.get("roadsBetween");
        assertThat(roads.verdict()).isEqualTo(Verdict.fail);
        assertThat(roads.words()).contains("Ridge Road (class unknown, speed limit unknown, 4,200 vehicles a day)");
        Finding hotspots = findings.get("hotspotsNear");
        assertThat(hotspots.verdict()).isEqualTo(Verdict.fail);
        assertThat(hotspots.words())
                .contains(
                        "km 12.00 to 12.40",
                        "350 m away",
                        "At 5 % against chance per kilometre.",
                        "no reason by itself");
        assertThat(hotspots.stands()).isFalse();
        assertThat(roads.stands()).isFalse();
        assertThat(assess(roadsAndHotspots(road, null)).get("hotspotsNear").verdict())
                .isEqualTo(Verdict.cantTell);
    }

    @Test
    void aHatchlingIsNeitherAdultNorOrphan() {
        var hatchling = new Subject(
                "Chelodina longicollis", "turtles", false, true, true, new Origin(Origin.OriginState.ofMother, FOUND));
        for (Rule.AppliesTo whom : Rule.AppliesTo.values()) {
            Rule rule = Animals.rule(RuleKind.code, Rule.Question.foundPlaceFirst)
                    .appliesTo(whom)
                    .make();
            assertThat(rule.isAbout(hatchling))
                    .as("%s", whom)
                    .isEqualTo(whom == Rule.AppliesTo.hatchling || whom == Rule.AppliesTo.any);
        }
    }

    /** A square of 1 km: inside, outside and across its border, with the doubt of a place counted. */
    @Test
    void landLiesToAPlaceAsFarAsThePlaceIsKnown() {
        LocalPlane plane = LocalPlane.around(FOUND.position());
        Coordinate[] corners = new Coordinate[5];
        double[][] square = {{-500, -500}, {500, -500}, {500, 500}, {-500, 500}, {-500, -500}};
        for (int i = 0; i < 5; i++) {
            Position corner = plane.inverse(square[i][0], square[i][1]);
            corners[i] = new Coordinate(corner.longitude(), corner.latitude());
        }
        var land = new Land(
                Land.Kind.property, "a square", new GeometryFactory().createPolygon(corners), "invented", null);
        var lands = new LandsAround(List.of(land), FOUND.position());
        assertThat(said(lands, plane, 470, 29).siteIn()).isEqualTo(Verdict.pass);
        assertThat(said(lands, plane, 470, 31).siteIn()).isEqualTo(Verdict.cantTell);
        assertThat(said(lands, plane, 530, 31).siteIn()).isEqualTo(Verdict.cantTell);
        assertThat(said(lands, plane, 530, 29).siteIn()).isEqualTo(Verdict.fail);
        assertThat(said(lands, plane, 530, 29).metresFromSite()).isBetween(29.9, 30.1);
        assertThat(said(lands, plane, 470, 0).metresFromSite()).isZero();
        assertThat(said(lands, plane, 470, 29).originIn()).isEqualTo(Verdict.pass);
        assertThat(lands.said(null, new UncertainPosition(FOUND.position(), 1))
                        .get(0)
                        .originIn())
                .isEqualTo(Verdict.cantTell);
    }

    private static LandSaid said(LandsAround lands, LocalPlane plane, double east, double uncertainty) {
        return lands.said(
                        new UncertainPosition(plane.inverse(0, 0), 30),
                        new UncertainPosition(plane.inverse(east, 0), uncertainty))
                .get(0);
    }
}
