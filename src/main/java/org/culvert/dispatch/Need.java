package org.culvert.dispatch;

import java.time.Duration;
import java.time.Instant;

/**
 * Why an open incident needs somebody, the most pressing first: people before animals, the living before those of whom nobody
 * knows, these before the dead, and of the dead first those in whose pouch there may be somebody alive. Common practice, no source.
 */
public enum Need {
    peopleMayBeHurt,
    aliveNobodySent,
    perhapsAliveNobodySent,
    offerNotAnswered,
    deadPouchNotChecked,
    deadNobodySent,
    underway,
    /** Nothing was heard of it for days: it wants ending rather than somebody to go. */
    forgotten;

    /** An animal on a verge is no longer there after that, or no longer alive: common practice, no source. */
    static final Duration LONG = Duration.ofDays(3);

    /**
     * What is known of an open incident.
     *
     * @param alive whether a caller told of a living animal
     * @param perhapsAlive whether of one of which nobody knows
     * @param pouchOpen whether of a dead one with a pouch into which nobody has looked
     * @param heardAt when it was last heard of: the last call, or step of an attendance
     */
    record Facts(
            String progress,
            boolean peopleHurt,
            boolean alive,
            boolean perhapsAlive,
            boolean pouchOpen,
            Instant heardAt) {}

    static Need of(Facts facts, Instant now) {
        if (facts.heardAt().isBefore(now.minus(LONG))) {
            return forgotten;
        }
        if (facts.progress().equals("underway")) {
            return underway;
        }
        if (facts.peopleHurt()) {
            return peopleMayBeHurt;
        }
        if (facts.progress().equals("offered")) {
            return offerNotAnswered;
        }
        if (facts.alive()) {
            return aliveNobodySent;
        }
        if (facts.perhapsAlive()) {
            return perhapsAliveNobodySent;
        }
        return facts.pouchOpen() ? deadPouchNotChecked : deadNobodySent;
    }
}
