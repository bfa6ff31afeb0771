package org.culvert.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.roster.BoosterRule.Event.antibodyTest;
import static org.culvert.roster.BoosterRule.Event.booster;
import static org.culvert.roster.BoosterRule.Event.course;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Against the Australian Immunisation Handbook on bat lyssavirus (checked October 2024): a booster one year after the first
 * dose; then a test for antibodies every three years and a booster below 0.5 IU/mL, or a booster every three years without.
 */
class BoosterRuleTest {
    private static final BoosterRule HANDBOOK = new BoosterRule(12, 36, 0.5);

    private final List<BoosterRule.Dose> doses = new ArrayList<>();

    private BoosterRuleTest then(BoosterRule.Event event, String day, @Nullable Double found) {
        LocalDate given = LocalDate.parse(day);
        doses.add(new BoosterRule.Dose(
                event,
                given,
                found,
                HANDBOOK.currentUntil(event, given, found, List.copyOf(doses)).orElse(null)));
        return this;
    }

    private boolean isCurrent(String day) {
        return HANDBOOK.isCurrent(doses, LocalDate.parse(day));
    }

    @Test
    void theFirstBoosterIsDueAfterAYearAndTheDueDayStillCounts() {
        then(course, "2024-03-10", null);
        assertThat(isCurrent("2024-03-09")).isFalse();
        assertThat(isCurrent("2025-03-10")).isTrue();
        assertThat(isCurrent("2025-03-11")).isFalse();
    }

    @Test
    void aBoosterEveryThreeYears() {
        then(course, "2020-02-29", null).then(booster, "2021-02-28", null);
        assertThat(isCurrent("2024-02-28")).isTrue();
        assertThat(isCurrent("2024-02-29")).isFalse();
        then(booster, "2024-03-20", null);
        assertThat(isCurrent("2024-03-10")).isFalse();
        assertThat(isCurrent("2027-03-20")).isTrue();
    }

    @Test
    void aTestThatFindsEnoughCarriesOnForThreeYears() {
        then(course, "2020-01-01", null).then(booster, "2021-01-01", null).then(antibodyTest, "2023-12-20", 0.5);
        assertThat(isCurrent("2026-12-20")).isTrue();
        assertThat(isCurrent("2026-12-21")).isFalse();
    }

    @Test
    void aTestThatFindsTooLittleEndsItUntilTheBooster() {
        then(course, "2020-01-01", null).then(booster, "2021-01-01", null).then(antibodyTest, "2022-06-01", 0.49);
        assertThat(isCurrent("2022-05-31")).isTrue();
        assertThat(isCurrent("2022-06-01")).isFalse();
        then(booster, "2022-06-10", null);
        assertThat(isCurrent("2022-06-09")).isFalse();
        assertThat(isCurrent("2022-06-10")).isTrue();
    }

    @Test
    void aTestDoesNotStandForTheFirstBooster() {
        then(course, "2020-01-01", null).then(antibodyTest, "2020-02-20", 4.0);
        assertThat(isCurrent("2021-01-01")).isTrue();
        assertThat(isCurrent("2021-01-02")).isFalse();
        then(antibodyTest, "2022-01-01", 4.0);
        assertThat(isCurrent("2022-01-01")).isFalse();
    }

    @Test
    void aTestAloneShowsNothing() {
        then(antibodyTest, "2020-01-01", 9.0);
        assertThat(isCurrent("2020-01-01")).isFalse();
    }
}
