package org.culvert.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.ConnectException;
import java.sql.SQLException;
import javax.transaction.xa.XAException;
import org.junit.jupiter.api.Test;

/** SQLSTATEs by PostgreSQL's documentation, appendix A. */
class DatabaseAwayTest {
    @Test
    void aLostConnectionIsFoundAmongTheCauses() {
        assertThat(DatabaseAway.isAway(new IllegalStateException(new ConnectException("refused"))))
                .isTrue();
        assertThat(DatabaseAway.isAway(new IllegalStateException(new SQLException("terminated", "57P01"))))
                .isTrue();
    }

    @Test
    void aCommitThatFailedTellsOfItAmongTheSuppressedAlone() {
        var commit = new XAException(XAException.XAER_RMFAIL);
        commit.initCause(new SQLException("terminating connection due to unexpected postmaster exit", "57P01"));
        var rolledBack = new IllegalStateException("rolled back");
        rolledBack.addSuppressed(commit);

        assertThat(DatabaseAway.isAway(new IllegalStateException(rolledBack))).isTrue();
    }

    @Test
    void whatTheDatabaseRefusesIsNotItsAbsence() {
        assertThat(DatabaseAway.isAway(new IllegalStateException(new SQLException("duplicate", "23505"))))
                .isFalse();
        assertThat(DatabaseAway.isAway(new SQLException("no state"))).isFalse();
    }

    @Test
    void failuresInACircleEnd() {
        var one = new IllegalStateException("one");
        one.addSuppressed(new IllegalStateException("other", one));

        assertThat(DatabaseAway.isAway(one)).isFalse();
    }
}
