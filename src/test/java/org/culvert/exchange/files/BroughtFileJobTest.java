package org.culvert.exchange.files;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.Rows;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files whose reading was cut off by the end of a server, as the database then has them. */
@QuarkusTest
class BroughtFileJobTest {
    private final BroughtFileJob job;
    private final BroughtFileService files;
    private final EntityManager entities;

    BroughtFileJobTest(BroughtFileJob job, BroughtFileService files, EntityManager entities) {
        this.job = job;
        this.files = files;
        this.entities = entities;
    }

    @BeforeEach
    void layTheWorld() {
        World.shared();
    }

    /** A file that was begun so many times, and came to no end. */
    private UUID begun(int times, String name) {
        byte[] octets =
                ("{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"NAME\":\""
                                + name
                                + "\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[151,-31],[151.01,-31],"
                                + "[151.01,-31.01],[151,-31]]]}}]}")
                        .getBytes(StandardCharsets.UTF_8);
        UUID content = UUID.randomUUID();
        UUID id = UUID.randomUUID();
        QuarkusTransaction.requiringNew().run(() -> {
            run("insert into personal.brought_contents (id, keep_until) values (?1, current_date + 1)", content);
            run(
                    "insert into personal.brought_file_parts (content_id, number, octets) values (?1, 0, ?2)",
                    content,
                    octets);
            run(
                    "insert into brought_files (id, kind, file_name, octets, sha256, content_id, told, recorded_at, recorded_by)"
                            + " values (?1, 'landAreas', 'land.geojson', ?2, sha256(?3), ?4, cast(?5 as jsonb), now(),"
                            + " (select id from accounts where username = 'test-coordinator'))",
                    id,
                    octets.length,
                    octets,
                    content,
                    "{\"kind\":\"water\",\"nameAttribute\":\"NAME\",\"source\":\"made for a test\",\"from\":\"2024-01-01\"}");
            if (times > 0) {
                run(
                        "insert into brought_file_progress (brought_file_id, times_begun, begun_at, step)"
                                + " values (?1, ?2, now(), 'octets')",
                        id,
                        times);
            }
        });
        return id;
    }

    private void run(String statement, Object... values) {
        var query = entities.createNativeQuery(statement);
        for (int i = 0; i < values.length; i++) {
            query.setParameter(i + 1, values[i]);
        }
        query.executeUpdate();
    }

    private long entered(String name) {
        return Rows.column(
                        entities.createNativeQuery("select count(*) from land_areas where name = ?1")
                                .setParameter(1, name),
                        Number.class)
                .get(0)
                .longValue();
    }

    @Test
    void aFileThatWasCutOffIsTakenOnceHoweverOftenItIsBegun() {
        String name = "tarn " + UUID.randomUUID();
        UUID id = begun(1, name);
        job.run(id);
        job.run(id);
        assertThat(entered(name)).isEqualTo(1);
        BroughtFileView file = files.getFile(BroughtFileKind.landAreas, id);
        assertThat(file.state()).isEqualTo("taken");
        assertThat(file.octetsAreKept()).isFalse();
        assertThat(file.result().entered()).isEqualTo(1);
        assertThat(file.result().leftOut()).isEmpty();
    }

    @Test
    void aFileThatStopsTheServerIsNotReadForEver() {
        String name = "tarn " + UUID.randomUUID();
        UUID id = begun(5, name);
        job.run(id);
        BroughtFileView file = files.getFile(BroughtFileKind.landAreas, id);
        assertThat(file.state()).isEqualTo("failed");
        assertThat(file.failure().wrong().get(0).detail()).contains("The server stopped 5 times");
        assertThat(file.octetsAreKept()).isTrue();
        assertThat(entered(name)).isZero();
    }

    @Test
    void aFileThatWasCalledOffIsNotReadByAJobThatComesLater() {
        String name = "tarn " + UUID.randomUUID();
        UUID id = begun(0, name);
        UUID account = QuarkusTransaction.requiringNew()
                .call(() -> Rows.column(
                                entities.createNativeQuery("select recorded_by from brought_files where id = ?1")
                                        .setParameter(1, id),
                                UUID.class)
                        .get(0));
        Actor.actFor(account, () -> files.callOff(BroughtFileKind.landAreas, id));
        job.run(id);
        BroughtFileView file = files.getFile(BroughtFileKind.landAreas, id);
        assertThat(file.state()).isEqualTo("failed");
        assertThat(file.failure().wrong().get(0).detail()).contains("called off");
        assertThat(file.octetsAreKept()).isTrue();
        assertThat(entered(name)).isZero();
    }
}
