package org.culvert.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.culvert.animal.CaseView;
import org.culvert.care.clutch.ClutchEntries.EggsCame;
import org.culvert.care.clutch.ClutchEntries.FailureGrounds;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.clutch.ClutchViews.HatchWindowView;
import org.culvert.care.clutch.ClutchViews.SetUpView;
import org.culvert.care.incubation.TemperatureSeries;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a clutch.
 *
 * @param number of the mother's case
 * @param holder who holds it, as the roster calls them; empty where nobody is recorded
 * @param bed in what the eggs lie, a sentence
 * @param events what happened, the latest first
 */
public record ClutchPage(
        ClutchView told,
        long number,
        String vernacularName,
        String scientificName,
        boolean motherDead,
        String holder,
        @Nullable ClutchPicture picture,
        String windowWords,
        String bed,
        List<TallyRow> tally,
        List<EventRow> events) {
    /** One line of the sum. */
    public record TallyRow(String words, long eggs) {}

    /** @param withdrawn why it was taken back, or null */
    public record EventRow(
            String at, String words, @Nullable String withdrawn) {}

    private record Event(Instant at, String words, @Nullable String withdrawn) {}

    static ClutchPage of(
            ClutchView clutch, CaseView mother, String holder, TemperatureSeries series, Instant now, ZoneId zone) {
        Instant set = clutch.recoveries().stream()
                .filter(row -> row.withdrawnAt() == null && row.setToIncubate() > 0 && row.at() != null)
                .map(row -> java.util.Objects.requireNonNull(row.at()))
                .min(Comparator.naturalOrder())
                .orElse(null);
        return new ClutchPage(
                clutch,
                mother.number(),
                mother.animal().vernacularName(),
                mother.animal().scientificName(),
                mother.body() != null,
                holder,
                ClutchPicture.draw(clutch, series, set, now, zone),
                window(clutch.hatchWindow()),
                bed(clutch.setUps()),
                List.of(
                        new TallyRow("recovered", clutch.recovered()),
                        new TallyRow("of these laid", clutch.laid()),
                        new TallyRow("broken", clutch.broken()),
                        new TallyRow("discarded", clutch.discarded()),
                        new TallyRow("set to incubate", clutch.setToIncubate()),
                        new TallyRow("hatched", clutch.hatched()),
                        new TallyRow("failed, as somebody said", clutch.failed()),
                        new TallyRow("still incubating", clutch.stillIncubating())),
                events(clutch, zone));
    }

    static String window(HatchWindowView window) {
        if (window.earliest() == null && window.latest() == null) {
            return "When they may hatch cannot be told.";
        }
        return "They may hatch "
                + (window.earliest() == null ? "" : "from " + day(window.earliest()))
                + (window.latest() == null
                        ? "; no latest day is told."
                        : (window.earliest() == null ? "" : " ") + "to " + day(window.latest())
                                + (window.earliest() == null ? "; no earliest day is told." : "."));
    }

    private static String day(java.time.LocalDate day) {
        return day.format(DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH));
    }

    private static String bed(List<SetUpView> setUps) {
        return setUps.stream()
                .filter(one -> one.withdrawnAt() == null)
                .reduce((earlier, later) -> later)
                .map(ClutchPage::bed)
                .orElse("In what the eggs lie is not entered.");
    }

    private static String bed(SetUpView one) {
        return "In " + one.medium()
                + (one.waterParts() == null || one.mediumParts() == null
                        ? ", at a ratio that is not entered"
                        : ", water to medium " + parts(one.waterParts()) + " : " + parts(one.mediumParts())
                                + " by weight")
                + "; " + one.box() + "; "
                + switch (one.topMarked()) {
                    case "yes" -> "the upper sides are marked";
                    case "no" -> "the upper sides are not marked";
                    default -> "whether the upper sides are marked is not known";
                }
                + ".";
    }

    private static String parts(double parts) {
        return parts == Math.rint(parts) ? String.format(Locale.ROOT, "%.0f", parts) : Double.toString(parts);
    }

    private static List<EventRow> events(ClutchView clutch, ZoneId zone) {
        List<Event> events = new ArrayList<>();
        clutch.recoveries().stream()
                .filter(row -> row.at() != null)
                .forEach(row -> events.add(new Event(
                        row.at(),
                        row.recovered() + " recovered (" + came(row.how()) + "): " + row.setToIncubate() + " set, "
                                + row.broken() + " broken, " + row.discarded() + " discarded",
                        row.withdrawnBecause())));
        clutch.leftInside()
                .forEach(row -> events.add(new Event(
                        row.at(),
                        row.counted() + " left inside, said " + row.reader() + said(row.words()),
                        row.withdrawnBecause())));
        clutch.setUps()
                .forEach(row -> events.add(
                        new Event(row.at(), "set up by " + row.setUpBy() + said(row.words()), row.withdrawnBecause())));
        clutch.candlings()
                .forEach(row -> events.add(new Event(
                        row.at(),
                        "candled by " + row.candledBy() + ": " + row.developing() + " developing, "
                                + row.notDeveloping() + " without visible development, " + row.cannotTell()
                                + " not clear" + said(row.words()),
                        row.withdrawnBecause())));
        clutch.failures()
                .forEach(row -> events.add(new Event(
                        row.at(),
                        row.failed() + " failed, said " + row.saidBy() + ": " + grounds(row.grounds())
                                + said(row.words()),
                        row.withdrawnBecause())));
        clutch.hatchings().stream()
                .filter(row -> row.at() != null)
                .forEach(row -> events.add(new Event(row.at(), row.hatched() + " hatched", null)));
        clutch.temperatures()
                .forEach(row -> events.add(new Event(
                        row.firstAt(),
                        row.readings() == 1
                                ? String.format(
                                        Locale.ROOT, "1 temperature by %s: %.1f °C", row.source(), row.lowestCelsius())
                                : String.format(
                                        Locale.ROOT,
                                        "%d temperatures by %s: %.1f to %.1f °C",
                                        row.readings(),
                                        row.source(),
                                        row.lowestCelsius(),
                                        row.highestCelsius()),
                        row.withdrawnBecause())));
        Stream<Event> latestFirst =
                events.stream().sorted(Comparator.comparing(Event::at).reversed());
        DateTimeFormatter words =
                DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.ENGLISH).withZone(zone);
        return latestFirst
                .map(event -> new EventRow(words.format(event.at()), event.words(), event.withdrawn()))
                .toList();
    }

    private static String said(@Nullable String words) {
        return words == null ? "" : ": “" + words + "”";
    }

    private static String came(EggsCame how) {
        return switch (how) {
            case surgery -> "by surgery";
            case afterDeath -> "after her death";
            case induced -> "induced";
            case laidInCare -> "laid in care";
            case laidInTransit -> "laid in transit";
            case unknown -> "how is not entered";
        };
    }

    private static String grounds(FailureGrounds grounds) {
        return switch (grounds) {
            case collapsed -> "collapsed";
            case mouldy -> "mouldy";
            case noDevelopmentOnCandling -> "no development on candling";
            case openedDead -> "opened, dead";
            case broken -> "broken";
            case other -> "other grounds";
        };
    }
}
