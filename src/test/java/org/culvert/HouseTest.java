package org.culvert;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.persistence.Entity;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.List;
import org.culvert.platform.ledger.Ledgered;

/** The order of the house: which room may use which, and what the pure rooms may know. */
@AnalyzeClasses(packages = "org.culvert", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseTest {
    /** From the ground up; each room uses only those below it. */
    private static final List<String> ROOMS = List.of(
            "platform",
            "geo",
            "taxon",
            "road",
            "roster",
            "call",
            "animal",
            "dispatch",
            "hotspot",
            "clinic",
            "release",
            "care",
            "exchange",
            "web");

    /** Read with a textbook beside them: no server, no database, no clock. */
    private static final String[] PURE = {
        "org.culvert.geo..",
        "org.culvert.road.network..",
        "org.culvert.hotspot.stats..",
        "org.culvert.release.rules..",
        "org.culvert.care.schedule..",
        "org.culvert.care.health.alike..",
        "org.culvert.care.matching..",
        "org.culvert.roster.papers..",
        "org.culvert.care.incubation..",
        "org.culvert.care.growth.curve..",
        "org.culvert.care.clock.limit..",
        "org.culvert.exchange.annualreturn.tally..",
        "org.culvert.exchange.reading.."
    };

    @ArchTest
    static final ArchRule ARROWS_POINT_DOWN = classes()
            .that()
            .resideInAPackage("org.culvert..")
            .should(new ArchCondition<>("use only the rooms below theirs") {
                @Override
                public void check(JavaClass javaClass, ConditionEvents events) {
                    int here = level(javaClass);
                    if (here < 0) {
                        events.add(SimpleConditionEvent.violated(javaClass, javaClass.getName() + " is in no room"));
                    }
                    javaClass.getDirectDependenciesFromSelf().forEach(dependency -> {
                        int there = level(dependency.getTargetClass());
                        if (there > here) {
                            events.add(SimpleConditionEvent.violated(javaClass, dependency.getDescription()));
                        }
                    });
                }
            });

    @ArchTest
    static final ArchRule PURE_ROOMS_KNOW_MATHEMATICS_ALONE = classes()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "org.culvert.geo..",
                    "org.culvert.road.network..",
                    "org.culvert.hotspot.stats..",
                    "org.culvert.release.rules..",
                    "org.culvert.care.schedule..",
                    "org.culvert.care.health.alike..",
                    "org.culvert.roster.papers..",
                    "org.culvert.care.matching..",
                    "org.jgrapht..",
                    "org.culvert.care.incubation..",
                    "org.culvert.care.clock.limit..",
                    "org.culvert.care.growth.curve..",
                    "org.culvert.exchange.annualreturn.tally..",
                    "org.culvert.exchange.reading..",
                    "java.lang..",
                    "java.util..",
                    "java.math..",
                    "java.time..",
                    "java.text..",
                    "java.nio.charset..",
                    "java.security..",
                    "org.locationtech.jts..",
                    "org.geotools..",
                    "org.opengis..",
                    "net.sf.geographiclib..",
                    "org.shredzone.commons..",
                    "com.google.openlocationcode..",
                    "org.jgrapht..",
                    "org.apache.commons.statistics..",
                    "org.apache.commons.numbers..",
                    "org.apache.commons.rng..",
                    "org.jspecify..",
                    "");

    @ArchTest
    static final ArchRule GEOTOOLS_STAYS_IN_GEO = noClasses()
            .that()
            .resideOutsideOfPackage("org.culvert.geo..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.geotools..", "org.opengis..");

    @ArchTest
    static final ArchRule NOBODY_READS_THE_WALL_CLOCK = noClasses()
            .should()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(LocalDateTime.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.util.Date");

    @ArchTest
    static final ArchRule WHAT_IS_NEEDED_IS_IN_THE_CONSTRUCTOR =
            fields().should().notBeAnnotatedWith("jakarta.inject.Inject");

    @ArchTest
    static final ArchRule EVERY_ENDPOINT_SAYS_WHO_MAY_CALL_IT = methods()
            .that(new DescribedPredicate<>("are endpoints") {
                @Override
                public boolean test(com.tngtech.archunit.core.domain.JavaMethod method) {
                    return method.isAnnotatedWith(GET.class)
                            || method.isAnnotatedWith(POST.class)
                            || method.isAnnotatedWith(PUT.class)
                            || method.isAnnotatedWith(PATCH.class)
                            || method.isAnnotatedWith(DELETE.class);
                }
            })
            .should()
            .beAnnotatedWith(RolesAllowed.class)
            .orShould()
            .beAnnotatedWith(PermitAll.class)
            .orShould()
            .beDeclaredInClassesThat()
            .areAnnotatedWith(PermitAll.class);

    @ArchTest
    static final ArchRule EVERY_RESOURCE_OF_THE_API_IS_LEDGERED = classes()
            .that(new DescribedPredicate<>("answer under /api") {
                @Override
                public boolean test(JavaClass javaClass) {
                    return javaClass.isAnnotatedWith(Path.class)
                            && javaClass.getAnnotationOfType(Path.class).value().startsWith("/api");
                }
            })
            .should()
            .beAnnotatedWith(Ledgered.class);

    @ArchTest
    static final ArchRule RESOURCES_SPEAK_HTTP_AND_NOTHING_ELSE = noClasses()
            .that()
            .haveSimpleNameEndingWith("Resource")
            .should()
            .dependOnClassesThat()
            .areAnnotatedWith(Entity.class)
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("jakarta.persistence.EntityManager");

    @ArchTest
    static final ArchRule ONLY_RESOURCES_SPEAK_HTTP = noClasses()
            .that()
            .haveSimpleNameNotEndingWith("Resource")
            .and()
            .resideOutsideOfPackages("org.culvert.platform..", "org.culvert.web..")
            .and()
            .areTopLevelClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("jakarta.ws.rs..");

    @ArchTest
    static final ArchRule ENTITIES_STAY_IN_THEIR_ROOM = classes()
            .that()
            .areAnnotatedWith(Entity.class)
            .and()
            .resideOutsideOfPackage("org.culvert.platform..")
            .should()
            .notBePublic();

    /** Of the pages whose forms are made of bodies: forms, what may be done by them, records that are kept, settings. */
    @ArchTest
    static final ArchRule FORMS_OF_PAGES_POINT_DOWN_TOO = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("settings")
            .definedBy("org.culvert.web.settings..")
            .layer("kept")
            .definedBy("org.culvert.web.kept..")
            .layer("acts")
            .definedBy("org.culvert.web.acts..")
            .layer("forms")
            .definedBy("org.culvert.web.forms..")
            .whereLayer("settings")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("kept")
            .mayOnlyBeAccessedByLayers("settings")
            .whereLayer("acts")
            .mayOnlyBeAccessedByLayers("settings", "kept");

    @ArchTest
    static final ArchRule NOBODY_PRINTS = noClasses()
            .that()
            .resideOutsideOfPackage("org.culvert.exchange.demo..")
            .and()
            .resideOutsideOfPackage("org.culvert.platform..")
            .should()
            .accessField(System.class, "out");

    private static int level(JavaClass javaClass) {
        String name = javaClass.getPackageName();
        if (!name.startsWith("org.culvert.")) {
            return -1;
        }
        return ROOMS.indexOf(name.split("\\.")[2]);
    }
}
