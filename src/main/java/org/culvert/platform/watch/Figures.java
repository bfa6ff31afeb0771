package org.culvert.platform.watch;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.net.URI;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.culvert.platform.ProblemMapping;
import org.jspecify.annotations.Nullable;

/** The server's own figures, beside those that the framework and {@code @Timed} and {@code @Counted} keep. */
@ApplicationScoped
class Figures {
    private static final String WAITING = """
            select coalesce(extract(epoch from now() - min(execution_time)), 0) from scheduled_tasks
            where not picked and execution_time < now()
            """;

    private static final String FAILING = "select count(*) from scheduled_tasks where consecutive_failures > 0";
    private static final Pattern TYPE = Pattern.compile("[a-z-]{1,40}");

    private final MeterRegistry meters;
    private final DataSource database;
    private final Counter replays;

    Figures(MeterRegistry meters, DataSource database) {
        this.meters = meters;
        this.database = database;
        this.replays = Counter.builder("culvert.replays")
                .description("Requests that were answered with what the same key was answered before")
                .register(meters);
    }

    void register(@Observes StartupEvent event) {
        meters.gauge("culvert.jobs.waiting.seconds", this, figures -> figures.ask(WAITING));
        meters.gauge("culvert.jobs.failing", this, figures -> figures.ask(FAILING));
    }

    void countReplay() {
        replays.increment();
    }

    /** By its type, of which the code knows a few. */
    void countProblem(@Nullable URI type) {
        String address = String.valueOf(type);
        String name =
                address.startsWith(ProblemMapping.TYPES) ? address.substring(ProblemMapping.TYPES.length()) : "other";
        meters.counter("culvert.problems", "type", TYPE.matcher(name).matches() ? name : "other")
                .increment();
    }

    /** Asked at every reading of the figures; not a number while the database is away. */
    private double ask(String sql) {
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(sql);
                ResultSet rows = query.executeQuery()) {
            return rows.next() ? rows.getDouble(1) : Double.NaN;
        } catch (SQLException away) {
            return Double.NaN;
        }
    }
}
