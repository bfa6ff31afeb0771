package org.culvert.web.clutch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.web.HolderNames;
import org.jspecify.annotations.Nullable;

/** What happened to a clutch, a line each, the latest first. */
final class ClutchEvents {
    private record Event(
            @Nullable String kind,
            UUID recordId,
            @Nullable UUID entryId,
            Instant at,
            String words,
            @Nullable String withdrawn) {}

    private final ClutchTongue tongue;
    private final List<Event> events = new ArrayList<>();

    private ClutchEvents(ClutchTongue tongue) {
        this.tongue = tongue;
    }

    static List<ClutchPage.EventRow> of(ClutchView clutch, ClutchTongue tongue, HolderNames holders) {
        var told = new ClutchEvents(tongue);
        told.tell(clutch);
        clutch.custody().stream()
                .skip(1)
                .forEach(link -> told.add(
                        "custody-links",
                        link.id(),
                        null,
                        link.from(),
                        tongue.words().eventHandedOver(holders.of(link.holder())),
                        null));
        return told.events.stream()
                .sorted(Comparator.comparing(Event::at).reversed())
                .map(event -> new ClutchPage.EventRow(
                        event.kind(),
                        event.recordId(),
                        event.entryId(),
                        tongue.moment(event.at()),
                        event.words(),
                        event.withdrawn()))
                .toList();
    }

    private void tell(ClutchView clutch) {
        var words = tongue.words();
        clutch.recoveries()
                .forEach(row -> add(
                        "eggs",
                        row.id(),
                        row.id(),
                        row.at(),
                        words.eventRecovered(
                                row.recovered(),
                                words.came(row.how().name()),
                                row.setToIncubate(),
                                row.broken(),
                                row.discarded()),
                        row.withdrawnBecause()));
        clutch.leftInside()
                .forEach(row -> add(
                        null,
                        row.id(),
                        row.id(),
                        row.at(),
                        words.eventInside(row.counted(), row.reader()) + said(row.words()),
                        row.withdrawnBecause()));
        clutch.setUps()
                .forEach(row -> add(
                        null,
                        row.id(),
                        row.id(),
                        row.at(),
                        words.eventSetUp(row.setUpBy()) + said(row.words()),
                        row.withdrawnBecause()));
        clutch.candlings()
                .forEach(row -> add(
                        null,
                        row.id(),
                        row.id(),
                        row.at(),
                        words.eventCandled(row.candledBy(), row.developing(), row.notDeveloping(), row.cannotTell())
                                + said(row.words()),
                        row.withdrawnBecause()));
        clutch.failures()
                .forEach(row -> add(
                        "failed-eggs",
                        row.id(),
                        row.id(),
                        row.at(),
                        words.eventFailed(
                                        row.failed(),
                                        row.saidBy(),
                                        words.grounds(row.grounds().name()))
                                + said(row.words()),
                        row.withdrawnBecause()));
        clutch.hatchings()
                .forEach(row -> add("hatchings", row.id(), null, row.at(), words.eventHatched(row.hatched()), null));
        clutch.temperatures()
                .forEach(row -> add(
                        null,
                        row.id(),
                        row.id(),
                        row.firstAt(),
                        row.readings() == 1
                                ? words.eventOneTemperature(row.source(), tongue.number(row.lowestCelsius()))
                                : words.eventTemperatures(
                                        row.readings(),
                                        row.source(),
                                        tongue.number(row.lowestCelsius()),
                                        tongue.number(row.highestCelsius())),
                        row.withdrawnBecause()));
    }

    private void add(
            @Nullable String kind,
            UUID recordId,
            @Nullable UUID entryId,
            @Nullable Instant at,
            String words,
            @Nullable String withdrawn) {
        if (at != null) {
            events.add(new Event(kind, recordId, entryId, at, words, withdrawn));
        }
    }

    private static String said(@Nullable String words) {
        return words == null ? "" : ": “" + words + "”";
    }
}
