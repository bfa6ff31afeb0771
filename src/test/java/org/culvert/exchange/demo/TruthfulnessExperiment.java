package org.culvert.exchange.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.assertj.core.api.SoftAssertions;
import org.culvert.hotspot.stats.RoadKernel;
import org.culvert.hotspot.stats.Truthfulness;
import org.culvert.hotspot.stats.Truthfulness.Alarms;
import org.culvert.hotspot.stats.Truthfulness.Flaw;
import org.culvert.hotspot.stats.Truthfulness.Power;
import org.junit.jupiter.api.Test;

/**
 * Whether the stated error rate is true, and what is found at it, on the demo network: {@code mvn -Pexperiments test} writes
 * target/experiments/truthfulness.md with its picture. As many sets a case as {@code experiments.sets} says, or 2,000.
 */
class TruthfulnessExperiment {
    private static final int SETS = Integer.getInteger("experiments.sets", 2000);
    private static final int THREADS = Runtime.getRuntime().availableProcessors();
    private static final int[] EVENTS = {10, 34, 200, 2000};
    private static final double LEVEL = 0.05;
    private static final double BEARABLE = 0.08;

    private record Case(Flaw flaw, String chance) {}

    private static final List<Case> CASES = List.of(
            new Case(Flaw.NONE, "per-all-reports"),
            new Case(Flaw.NONE, "per-traffic-and-class"),
            new Case(Flaw.NONE, "per-kilometre"),
            new Case(Flaw.NONE, "per-kilometre-in-patches"),
            new Case(Flaw.ROUNDED, "per-all-reports"),
            new Case(Flaw.ROUNDED, "per-kilometre"),
            new Case(Flaw.ROUNDED_UNKNOWN, "per-all-reports"),
            new Case(Flaw.ROUNDED_UNKNOWN, "per-kilometre"),
            new Case(Flaw.DUPLICATES, "per-all-reports"),
            new Case(Flaw.DUPLICATES, "per-kilometre"),
            new Case(Flaw.TOWN, "per-all-reports"),
            new Case(Flaw.TOWN, "per-kilometre"),
            new Case(Flaw.TRAFFIC, "per-all-reports"),
            new Case(Flaw.TRAFFIC, "per-traffic-and-class"),
            new Case(Flaw.TRAFFIC, "per-kilometre"),
            new Case(Flaw.PATCHY, "per-all-reports"),
            new Case(Flaw.PATCHY, "per-kilometre"),
            new Case(Flaw.PATCHY, "per-kilometre-in-patches"),
            new Case(Flaw.VERY_PATCHY, "per-all-reports"),
            new Case(Flaw.VERY_PATCHY, "per-kilometre"),
            new Case(Flaw.VERY_PATCHY, "per-kilometre-in-patches"));

    @Test
    void theStatedErrorRateIsTrue() throws IOException {
        var network = new DrawnNetwork(DemoRegion.committed().roads());
        var truthfulness = new Truthfulness(network.graph(), network.chainage(), new RoadKernel.Epanechnikov(500), 50);
        var text = new StringBuilder();
        text.append("# How true the stated error rate is, and what is found at it\n\n");
        text.append(String.format(
                Locale.ROOT,
                "The demo network: %d links, %.0f km. %d sets a case without any cluster, each with 99 fresh simulations;"
                        + " reach 500 m, pieces of 50 m. The share of sets in which anything was named at 5 %%"
                        + " (standard error %.1f points).%n%n",
                network.graph().linkCount(),
                network.graph().totalLength() / 1000,
                SETS,
                100 * Math.sqrt(LEVEL * (1 - LEVEL) / SETS)));
        text.append("| flaw in the records | judged against | that kind of chance says it does not control it |");
        for (int events : EVENTS) {
            text.append(" n = ").append(events).append(": named | and claimed |");
        }
        text.append("\n|---|---|---|").append("---|---|".repeat(EVENTS.length)).append("\n");
        var held = new SoftAssertions();
        double noise = 3.1 * Math.sqrt(BEARABLE * (1 - BEARABLE) / SETS);
        for (Case one : CASES) {
            boolean declared = truthfulness.declares(one.flaw(), one.chance());
            var row = new StringBuilder("| ")
                    .append(one.flaw().words())
                    .append(" | ")
                    .append(one.chance())
                    .append(declared ? " | yes |" : " | no |");
            for (int events : EVENTS) {
                Alarms alarms = truthfulness.falseAlarms(one.flaw(), one.chance(), events, SETS, THREADS);
                row.append(String.format(
                        Locale.ROOT, " %.1f %% | %.1f %% |", 100 * alarms.named(), 100 * alarms.claimed()));
                held.assertThat(alarms.claimed())
                        .as("claimed and false: %s, %s, n = %d", one.flaw(), one.chance(), events)
                        .isLessThanOrEqualTo((one.flaw() == Flaw.NONE ? LEVEL : BEARABLE) + noise);
                if (one.flaw() == Flaw.NONE) {
                    held.assertThat(alarms.named())
                            .as("false: %s, n = %d", one.chance(), events)
                            .isLessThanOrEqualTo(LEVEL + noise);
                }
            }
            text.append(row).append("\n");
            System.out.println(row);
        }
        power(truthfulness, text, held);
        Path folder = Files.createDirectories(Path.of("target", "experiments"));
        Files.writeString(folder.resolve("truthfulness.md"), text.toString());
        held.assertAll();
    }

    private static void power(Truthfulness truthfulness, StringBuilder text, SoftAssertions held) throws IOException {
        text.append(
                "\n## What is found\n\nOne stretch of 300 m in each set, among 600 other collisions; judged per traffic");
        text.append(" and class. Expected inside is what was planted and what chance puts there.\n\n");
        text.append("| road | expected inside | by chance alone | found | false kilometres of all named |\n");
        text.append("|---|---|---|---|---|\n");
        List<List<Power>> curves = new ArrayList<>();
        for (boolean busy : new boolean[] {false, true}) {
            List<Power> curve = new ArrayList<>();
            for (double extra : new double[] {2, 3, 4, 5, 6, 8, 10, 12}) {
                Power power = truthfulness.power(extra, 600, 300, busy, Math.max(100, SETS / 5), THREADS);
                curve.add(power);
                text.append(String.format(
                        Locale.ROOT,
                        "| %s | %.1f | %.2f | %.0f %% | %.1f %% |%n",
                        busy ? "busy" : "quiet",
                        power.expectedInside(),
                        power.byChance(),
                        100 * power.found(),
                        100 * power.falseKilometres()));
                if (power.expectedInside() >= 10 && power.byChance() <= 2) {
                    held.assertThat(power.found()).as(power.toString()).isGreaterThanOrEqualTo(0.9);
                }
            }
            curves.add(curve);
        }
        text.append("\n![Share of planted stretches found, by collisions expected inside](power.svg)\n");
        Files.writeString(
                Files.createDirectories(Path.of("target", "experiments")).resolve("power.svg"), picture(curves));
    }

    private static String picture(List<List<Power>> curves) {
        var svg = new StringBuilder("""
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 420 260" font-family="sans-serif" font-size="11">
                <title>Share of planted stretches found, by collisions expected inside</title>
                <path d="M50 20V210H400" fill="none" stroke="#333"/>
                """);
        for (int percent = 0; percent <= 100; percent += 25) {
            svg.append(String.format(
                    Locale.ROOT,
                    "<text x=\"44\" y=\"%d\" text-anchor=\"end\">%d %%</text>%n",
                    y(percent / 100.0) + 4,
                    percent));
        }
        for (int count = 0; count <= 14; count += 2) {
            svg.append(String.format(
                    Locale.ROOT, "<text x=\"%d\" y=\"226\" text-anchor=\"middle\">%d</text>%n", x(count), count));
        }
        svg.append("<text x=\"225\" y=\"245\" text-anchor=\"middle\">collisions expected inside</text>\n");
        String[] names = {"quiet roads", "busy roads"};
        String[] dashes = {"none", "6 4"};
        for (int i = 0; i < curves.size(); i++) {
            var path = new StringBuilder();
            for (Power power : curves.get(i)) {
                path.append(path.isEmpty() ? 'M' : 'L')
                        .append(x(power.expectedInside()))
                        .append(' ')
                        .append(y(power.found()));
            }
            svg.append(String.format(
                    "<path d=\"%s\" fill=\"none\" stroke=\"#005a9c\" stroke-width=\"2\" stroke-dasharray=\"%s\"/>%n",
                    path, dashes[i]));
            svg.append(String.format(
                    "<path d=\"M290 %d h30\" stroke=\"#005a9c\" stroke-width=\"2\" stroke-dasharray=\"%s\"/>"
                            + "<text x=\"326\" y=\"%d\">%s</text>%n",
                    170 + 18 * i, dashes[i], 174 + 18 * i, names[i]));
        }
        return svg.append("</svg>\n").toString();
    }

    private static int x(double count) {
        return (int) Math.round(50 + 25 * count);
    }

    private static int y(double share) {
        return (int) Math.round(210 - 180 * share);
    }
}
