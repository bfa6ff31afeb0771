package org.culvert.release.rules;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Where by the maps one law ends and the next begins. What no map tells is not taken for no border. */
final class Borders {
    private final List<LandSaid> jurisdictions;
    private final Site site;

    /** @param jurisdictions land of the kind {@link Land.Kind#jurisdiction} */
    Borders(List<LandSaid> jurisdictions, Site site) {
        this.jurisdictions = jurisdictions;
        this.site = site;
    }

    boolean isMapped(String jurisdiction) {
        return !mapped(jurisdiction).isEmpty();
    }

    /** A pass where found place and site certainly lie in it, so that none of its borders is crossed. */
    Optional<Answer> within(String jurisdiction) {
        boolean both = in(jurisdiction, LandSaid::originIn) == Verdict.pass
                && in(jurisdiction, LandSaid::siteIn) == Verdict.pass;
        return both
                ? Optional.of(Answer.pass("By the maps entered here found place and site both lie in " + jurisdiction
                        + ", so none of its borders is crossed."))
                : Optional.empty();
    }

    /** Whether its border lies between, in words, for a way that is not {@link #within} it. */
    String between(String jurisdiction) {
        Verdict originIn = in(jurisdiction, LandSaid::originIn);
        Verdict siteIn = in(jurisdiction, LandSaid::siteIn);
        boolean crossed = originIn == Verdict.pass && siteIn == Verdict.fail
                || originIn == Verdict.fail && siteIn == Verdict.pass;
        return crossed
                ? "By the maps entered here the border of " + jurisdiction + " lies between found place and site."
                : "Whether the border of " + jurisdiction + " lies between cannot be told from the maps entered here.";
    }

    /** Where the maps say that the site lies in another jurisdiction, or in a part of the one that was entered with it. */
    Optional<Answer> otherJurisdiction() {
        List<LandSaid> others = jurisdictions.stream()
                .filter(land -> land.siteIn() != Verdict.fail && !Rule.covers(land.name(), site.jurisdiction()))
                .toList();
        if (others.isEmpty()) {
            return Optional.empty();
        }
        String names = others.stream().map(LandSaid::name).distinct().collect(Collectors.joining(", "));
        String entered = "The site is entered as lying in " + site.jurisdiction() + ", whose rules were asked. ";
        return Optional.of(
                others.stream().anyMatch(land -> land.siteIn() == Verdict.pass)
                        ? Answer.fail(entered + "By the maps entered here it lies in " + names
                                + ": enter it as there, so that the rules of that place are asked.")
                        : Answer.cantTell(entered + "By the maps entered here it may lie in " + names + "."));
    }

    private List<LandSaid> mapped(String jurisdiction) {
        return jurisdictions.stream()
                .filter(land -> Rule.covers(jurisdiction, land.name()))
                .toList();
    }

    /** Whether a place lies in any of the pieces that a jurisdiction is mapped in; nobody knows where there are none. */
    private Verdict in(String jurisdiction, Function<LandSaid, Verdict> place) {
        List<Verdict> verdicts = mapped(jurisdiction).stream().map(place).toList();
        if (verdicts.contains(Verdict.pass)) {
            return Verdict.pass;
        }
        boolean inNone = !verdicts.isEmpty() && verdicts.stream().allMatch(verdict -> verdict == Verdict.fail);
        return inNone ? Verdict.fail : Verdict.cantTell;
    }
}
