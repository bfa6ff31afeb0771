package org.culvert.release.rules;

import java.time.Instant;
import java.util.List;
import org.culvert.release.rules.Site.Consent;

/**
 * What a vet has signed of an animal before it may go back.
 *
 * @param at when it was looked at
 * @param items what was looked at
 * @param housedWithPets whether it was kept with pets of its kind or near it
 * @param seenAgainSince whether it was at a clinic after that, so that the signature no longer says how it is
 */
public record FitnessCheck(Instant at, List<Item> items, Consent housedWithPets, boolean seenAgainSince) {
    public FitnessCheck {
        items = List.copyOf(items);
    }

    /** One thing that was looked at, and whether it is as it should be. */
    public record Item(Aspect aspect, Answer answer) {}

    /** What is looked at before a release, after the British Wildlife Rehabilitation Council's guideline. */
    public enum Aspect {
        movement,
        senses,
        coat,
        condition,
        woundsHealed,
        feedsItself,
        knowsItsKind,
        fearsPeople,
        reproduction
    }

    /** How it was found. */
    public enum Answer {
        fit,
        notFit,
        notLookedAt,
        doesNotApply
    }
}
