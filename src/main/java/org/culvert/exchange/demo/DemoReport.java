package org.culvert.exchange.demo;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.HotspotRunService;
import org.culvert.hotspot.RunEntry;
import org.culvert.hotspot.RunView;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.platform.Actor;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountService;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Once the demo's server is up, has the season's worst stretches computed as anybody would, and tells them. It is one
 * declared run: freshwater turtles at nesting time against all reports.
 */
@ApplicationScoped
class DemoReport {
    private static final Logger SAY = Logger.getLogger("culvert.demo");
    private static final String GROUP = "turtles";
    private static final String SEASON = "nesting";
    private static final String PLAN = "The demo's one declared run: freshwater turtles at nesting time.";
    private static final int TOLD = 5;

    private final HotspotRunService runs;
    private final AccountService accounts;
    private final boolean wanted;
    private final int port;
    private volatile @Nullable Thread teller;

    DemoReport(
            HotspotRunService runs,
            AccountService accounts,
            @ConfigProperty(name = "culvert.demo", defaultValue = "false") boolean wanted,
            @ConfigProperty(name = "quarkus.http.port") int port) {
        this.runs = runs;
        this.accounts = accounts;
        this.wanted = wanted;
        this.port = port;
    }

    /** After the queue of jobs, which takes the run. */
    void start(@Observes @Priority(3000) StartupEvent event) {
        if (!wanted) {
            return;
        }
        Thread thread = new Thread(this::tell, "demo report");
        thread.setDaemon(true);
        teller = thread;
        thread.start();
    }

    void stop(@Observes ShutdownEvent event) {
        Thread thread = teller;
        if (thread != null) {
            thread.interrupt();
        }
    }

    static void enterSeasons(SeasonWindowService seasons, LocalDate day, LocalDate from) {
        seasons.enter(new SeasonWindowService.WindowEntry(
                GROUP,
                SEASON,
                "southern",
                MonthDay.of(10, 1),
                MonthDay.of(1, 31),
                "Invented for the demo region; that road deaths of Chelodina longicollis peak in November is from Santori"
                        + " et al. 2018, Australian Journal of Zoology 66, 41-49.",
                day,
                from,
                null));
    }

    private void tell() {
        try {
            RunView run = runs.listRuns(100, null).items().stream()
                    .filter(each ->
                            each.declared() && GROUP.equals(each.settings().taxonGroup()))
                    .findFirst()
                    .orElseGet(this::ask);
            String state = run.state();
            while (state.equals("waiting") || state.equals("computing")) {
                Thread.sleep(500);
                state = runs.getRun(run.id()).state();
            }
            if (state.equals("done")) {
                say(run.id(), runs.getReport(run.id()));
            } else {
                SAY.errorf(
                        "The hotspot run %s came to nothing: %s",
                        run.id(), runs.getRun(run.id()).failure());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private RunView ask() {
        Settings settings = Settings.committed();
        SAY.info("Computing the season's worst stretches on the spot ...");
        return Actor.actFor(
                accounts.systemAccount(),
                () -> runs.start(new RunEntry(
                        settings.firstDay(),
                        settings.lastDay(),
                        null,
                        SEASON,
                        GROUP,
                        null,
                        300.0,
                        null,
                        null,
                        999,
                        1L,
                        null,
                        null,
                        null,
                        null,
                        new RunEntry.Declaration(1, PLAN),
                        null)));
    }

    private void say(UUID id, HotspotReport report) {
        StringBuilder words = new StringBuilder();
        words.append(String.format(
                Locale.ROOT,
                "%nThe season's worst stretches for freshwater turtles (nesting time, October to January, %s to %s), of %,d"
                        + " collisions:%n",
                report.settings().periodFrom(),
                report.settings().periodTo(),
                report.inputs().collisionsCounted()));
        List<HotspotReport.Stretch> worst =
                report.hotspots().stream().limit(TOLD).toList();
        for (HotspotReport.Stretch stretch : worst) {
            words.append(String.format(
                    Locale.ROOT,
                    "  %d. %s, km %.2f to %.2f (%s): %d struck, where chance would put %.1f; adjusted p = %.3f%n",
                    stretch.rank(),
                    stretch.road(),
                    stretch.fromChainageMetres() / 1000,
                    stretch.toChainageMetres() / 1000,
                    stretch.owner() == null ? "owner not known" : stretch.owner(),
                    stretch.incidents(),
                    stretch.expected(),
                    stretch.adjustedP()));
        }
        if (worst.isEmpty()) {
            words.append("  none\n");
        }
        words.append(report.errorRate().sentence())
                .append(String.format(
                        Locale.ROOT, "%nThe whole report with its map: http://localhost:%d/hotspots/%s%n", port, id))
                .append("(sign in as ")
                .append(Role.ROADS_AUTHORITY)
                .append(", password ")
                .append(DemoAccounts.PASSWORD)
                .append("; what was planted is in demo-data/truth.csv)\n");
        SAY.info(words);
    }
}
