package org.culvert.platform.personal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.personal.PersonalWorld.person;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Health data of people go with them: Regulation (EU) 2016/679, articles 9, 15 and 17, from memory. */
@QuarkusTest
@OnOldestDatabase
class ExposureErasureResourceTest {
    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeAWorld() {
        world = World.shared();
        PersonalWorld.endDuties();
    }

    @AfterEach
    void letOthersKeepTheirPeople() {
        PersonalWorld.endDuties();
    }

    private static String enter(String exposed) {
        return Api.make(RESCUER, "/api/exposures", """
                        {"kind":"bite","exposed":%s,"bodyPart":"left shinbone of marking","washed":"yes","washedMinutes":15,
                         "words":"markedly told","happenedAt":"2015-03-04T05:00:00Z",
                         "told":{"unit":"the unit of marking","by":"Marka Teller","at":"2015-03-04T06:00:00Z"}}
                        """.formatted(exposed)).getString("id");
    }

    @Test
    void anExposureIsErasedWithThePersonOnceItIsClosedAndTheLongestDutyEnds() throws SQLException {
        String id = enter("""
                {"name":"Exa Bittenhurst","phone":"0491 575 789","guardianName":"Gwen Bittenhurst","guardianPhone":"0491 576 398"}
                """);
        String path = "/api/exposures/" + id;
        Json whole = Api.get(COORDINATOR, path);
        String exposed = whole.getString("exposed.personId");
        String guardian = whole.getString("exposed.guardianPersonId");
        Api.correct(COORDINATOR, path, "{\"bodyPart\":\"right shinbone of marking\",\"reason\":\"asked again\"}")
                .statusCode(200);
        Json data = Api.get(COORDINATOR, person(exposed) + "/data");
        assertThat(data.getList("exposures.bodyPart")).containsExactly("right shinbone of marking");
        assertThat(data.getList("exposures.asGuardian")).containsExactly(false);
        Json ofGuardian = Api.get(COORDINATOR, person(guardian) + "/data");
        assertThat(ofGuardian.getList("exposures.exposureId")).containsExactly(id);
        assertThat(ofGuardian.prettify()).doesNotContain("shinbone");

        PersonalWorld.enterDuties("people");
        for (String one : List.of(exposed, guardian)) {
            assertThat(Api.get(COORDINATOR, person(one)).getString("dueOn")).isNull();
            assertThat(Api.get(COORDINATOR, person(one)).getString("why")).contains("an exposure of theirs");
        }
        PersonalWorld.eraseWhoIsDue();
        assertThat(Api.get(COORDINATOR, path).getString("exposed.name")).isEqualTo("Exa Bittenhurst");
        Api.change(
                        COORDINATOR,
                        path,
                        "/closing",
                        "{\"by\":\"the unit of marking\",\"outcome\":\"nothing of marking came of it\",\"at\":\"2015-04-01T00:00:00Z\"}")
                .statusCode(200);
        // 1 April 2015 and five years, the longer of three and five
        assertThat(Api.get(COORDINATOR, person(exposed)).getString("dueOn")).isEqualTo("2020-04-02");

        assertThat(PersonalWorld.whereItStands(database, List.of("shinbone of marking")))
                .containsKeys("personal.exposures shinbone of marking", "personal.revisions shinbone of marking");
        PersonalWorld.eraseWhoIsDue();
        assertThat(PersonalWorld.whereItStands(
                        database,
                        List.of(
                                "Bittenhurst",
                                "575 789",
                                "576 398",
                                "shinbone of marking",
                                "markedly told",
                                "of marking")))
                .isEmpty();
        Api.as(COORDINATOR).get(path).then().statusCode(404);
        assertThat(Api.get(COORDINATOR, person(exposed) + "/data").getList("exposures"))
                .isEmpty();
    }

    @Test
    void aMembersExposuresGoWithTheMember() throws SQLException {
        String member = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Mo Nippedworth","attends":true,"cares":false}
                        """.formatted(world.network, UUID.randomUUID()))
                .getString("id");
        String id = enter("{\"memberId\":\"" + member + "\"}");
        String who = Api.post(COORDINATOR, "/api/people/search", "{\"name\":\"Mo Nippedworth\"}")
                .statusCode(200)
                .extract()
                .jsonPath()
                .getString("[0].id");
        assertThat(Api.get(COORDINATOR, person(who) + "/data").getList("exposures.exposureId"))
                .containsExactly(id);
        Api.correct(ADMIN, "/api/members/" + member, "{\"leftOn\":\"2016-01-01\",\"reason\":\"moved\"}")
                .statusCode(200);
        PersonalWorld.enterDuties("members");
        assertThat(Api.get(COORDINATOR, person(who)).getString("dueOn")).isNull();
        Api.change(
                        COORDINATOR,
                        "/api/exposures/" + id,
                        "/closing",
                        "{\"by\":\"the unit of marking\",\"outcome\":\"followed up\",\"at\":\"2017-02-03T12:00:00Z\"}")
                .statusCode(200);
        // The day of the last word on it comes after the leaving
        assertThat(Api.get(COORDINATOR, person(who)).getString("dueOn")).isEqualTo("2022-02-04");
        PersonalWorld.eraseWhoIsDue();
        assertThat(PersonalWorld.whereItStands(database, List.of("Nippedworth", "left shinbone of marking")))
                .isEmpty();
        Api.as(COORDINATOR).get("/api/exposures/" + id).then().statusCode(404);
    }
}
