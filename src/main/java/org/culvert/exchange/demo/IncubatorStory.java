package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import org.culvert.call.CallEntry;
import org.culvert.care.clutch.ClutchEntries;
import org.culvert.care.clutch.ClutchLog;
import org.culvert.care.clutch.TemperatureService;

/** What whoever runs the incubator keeps of a clutch in its first three weeks. */
@ApplicationScoped
class IncubatorStory {
    private static final String KEEPER = "the keeper of the incubator";
    private static final int DAYS = 20;

    private final ClutchLog log;
    private final TemperatureService temperatures;

    IncubatorStory(ClutchLog log, TemperatureService temperatures) {
        this.log = log;
        this.temperatures = temperatures;
    }

    void tell(UUID clutch, Instant set, Incident incident) {
        log.setUp(
                clutch,
                new ClutchEntries.SetUpEntry(
                        "vermiculite",
                        1.0,
                        1.0,
                        "box 2, upper shelf",
                        CallEntry.Answer.yes,
                        KEEPER,
                        "half buried, none touching another; the box weighed with its lid",
                        set.plus(Duration.ofHours(1))));
        temperatures.addFile(
                clutch,
                new ClutchEntries.LoggerFileEntry("logger in box 2", null, null, null),
                new ByteArrayInputStream(
                        file(set, new Dice(incident.number(), "incubator")).getBytes(StandardCharsets.UTF_8)));
        temperatures.add(
                clutch,
                new ClutchEntries.TemperatureEntry(
                        "glass thermometer, " + KEEPER,
                        29.5,
                        set.plus(Duration.ofDays(9)).plus(Duration.ofMinutes(20))));
        log.candle(
                clutch,
                new ClutchEntries.CandlingEntry(
                        6,
                        1,
                        1,
                        KEEPER,
                        "vessels in six; one clear, one too thick to see",
                        set.plus(Duration.ofDays(15))));
        log.fail(
                clutch,
                new ClutchEntries.FailedEggsEntry(
                        1,
                        ClutchEntries.FailureGrounds.collapsed,
                        KEEPER,
                        "the clear one; dented on both sides, and smells",
                        set.plus(Duration.ofDays(19))));
    }

    /** Every half hour, warmer by day, and one evening without current. */
    private static String file(Instant set, Dice dice) {
        var csv = new StringBuilder("time;substrate °C\n");
        for (int row = 0; row <= DAYS * 48; row++) {
            double day = row / 48.0;
            double dip = day > 11.3 && day < 11.6 ? -2.4 * (1 - Math.abs(day - 11.45) / 0.15) : 0;
            double celsius = 29.4 + 0.4 * Math.sin(2 * Math.PI * day) + dip + dice.between(-0.1, 0.1);
            csv.append(set.plus(Duration.ofMinutes(90 + 30L * row)))
                    .append(';')
                    .append(String.format(Locale.ROOT, "%.1f", celsius))
                    .append('\n');
        }
        return csv.toString();
    }
}
