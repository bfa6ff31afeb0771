package org.culvert.platform;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.culvert.animal.CaseService;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

/** What only reads has one transaction. How this server divides its work has no outside source. */
@QuarkusTest
class ReadTransactionResourceTest {
    @Inject
    ReadTransaction reading;

    @Inject
    EntityManager entities;

    @Inject
    SessionFactory sessions;

    @Inject
    CaseService cases;

    private final AtomicInteger asked = new AtomicInteger();

    private int ask() {
        return reading.once("asked", asked::incrementAndGet);
    }

    @Test
    void whatManyAskForIsReadOnceInOneReadingAndAnewInTheNext() {
        assertThat(reading.<Integer, RuntimeException>read(() -> ask() + ask())).isEqualTo(2);
        assertThat(reading.<Integer, RuntimeException>read(this::ask)).isEqualTo(2);
        assertThat(ask() + ask()).as("outside each asks for itself").isEqualTo(3 + 4);
        assertThat(QuarkusTransaction.requiringNew().call(() -> ask() + ask()))
                .as("what may change something, too")
                .isEqualTo(5 + 6);
    }

    @Test
    void aReadingWithinAReadingIsAPartOfIt() {
        int told = reading.<Integer, RuntimeException>read(
                () -> ask() + reading.<Integer, RuntimeException>read(this::ask));
        assertThat(told).isEqualTo(2);
        assertThat(QuarkusTransaction.isActive()).isFalse();
    }

    /** A page goes on where one of many services has nothing to show. */
    @Test
    void aServiceThatRefusesDoesNotSpoilTheRest() {
        String said = reading.read(() -> {
            try {
                cases.getCase(UUID.randomUUID());
                return "found";
            } catch (NotFoundException e) {
                return "not found, of "
                        + entities.createQuery("select count(r) from Region r", Long.class)
                                .getSingleResult();
            }
        });
        assertThat(said).startsWith("not found, of ");
        assertThat(QuarkusTransaction.isActive()).isFalse();
    }

    /**
     * Read each by each, the page of a case took 205 statements and 42 looks for changes, that of the settings 124 transactions;
     * now these are 64, 7 and 1. Jobs that happen to run are counted too.
     */
    @Test
    void pagesAreReadAtOnce() {
        World world = World.shared();
        String incident = World.call("Chelodina longicollis", 150.0512, "").getString("incidentId");
        String id = Api.make(Role.RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},
                         "foundAt":"2026-01-04T10:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
        Statistics ofACase = statistics("/cases/" + id);
        assertThat(ofACase.getPrepareStatementCount()).isLessThan(120);
        assertThat(ofACase.getFlushCount()).isLessThan(20);
        assertThat(statistics("/settings").getTransactionCount()).isLessThan(20);
    }

    private Statistics statistics(String path) {
        Api.as(Role.COORDINATOR).get(path).then().statusCode(200);
        Statistics statistics = sessions.getStatistics();
        statistics.setStatisticsEnabled(true);
        try {
            statistics.clear();
            Api.as(Role.COORDINATOR).get(path).then().statusCode(200);
        } finally {
            statistics.setStatisticsEnabled(false);
        }
        return statistics;
    }
}
