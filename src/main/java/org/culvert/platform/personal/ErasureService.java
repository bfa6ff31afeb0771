package org.culvert.platform.personal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.DailyJob;
import org.culvert.platform.Page;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Erases who is due, and says who was. */
@ApplicationScoped
public class ErasureService implements DailyJob {
    private static final Logger LOG = Logger.getLogger(ErasureService.class);

    /** Whoever is not erased yet and whose duty to be kept has ended. */
    private static final String DUE = """
            select p.id from (select id from personal.people where erased_at is null
                              union all select id from personal.members where erased_at is null) p,
                 lateral personal.retention_of(p.id, :day) r
            where r.due_on <= :day and exists (select 1 from retention_rules)
            order by p.id limit :most
            """;

    /**
     * How many one request erases: each takes a look through everything that people typed, and nobody waits long for an
     * answer. The nightly work goes on until nobody is left.
     */
    private static final int MOST_AT_ONCE = 5;

    /**
     * An erasure.
     *
     * @param kind {@code people} or {@code members}
     * @param requestedAt when the person asked for it; null where the duty to keep them just ended
     * @param ruleId the duty that had held longest; null where a list of erasures brought it about
     */
    public record ErasureView(
            UUID id,
            UUID personId,
            String kind,
            @Nullable Instant requestedAt,
            Instant erasedAt,
            @Nullable UUID ruleId) {}

    /**
     * What a round of erasing did.
     *
     * @param erased how many people
     * @param moreAreDue whether as many as one round takes were due
     */
    public record Erased(int erased, boolean moreAreDue) {}

    private final Query query;
    private final ErasureList list;
    private final Clock clock;

    ErasureService(Query query, ErasureList list, Clock clock) {
        this.query = query;
        this.list = list;
        this.clock = clock;
    }

    @Override
    public String name() {
        return "erase-who-is-due";
    }

    @Override
    public void run() {
        int erased = 0;
        List<UUID> due = QuarkusTransaction.requiringNew().call(this::listDue);
        while (!due.isEmpty()) {
            for (UUID id : due) {
                QuarkusTransaction.requiringNew().run(() -> erase(id));
                erased++;
            }
            due = QuarkusTransaction.requiringNew().call(this::listDue);
        }
        LOG.infof("%d people erased whose duty to be kept had ended", erased);
        addToList();
    }

    /** A file that this node writes knows of the erasures of others from its start on. */
    void start(@Observes StartupEvent event) {
        addToList();
    }

    private void addToList() {
        List<ErasureList.Entry> done = QuarkusTransaction.requiringNew()
                .call(() -> query.list(
                        "select happened_at, person_id from erasures order by happened_at, id",
                        Map.of(),
                        row -> new ErasureList.Entry(
                                row.when("happened_at"), ErasureList.What.erased, row.id("person_id"))));
        try {
            list.addMissing(done);
        } catch (IOException e) {
            LOG.error(
                    "The list of erasures cannot be written: nobody can be hidden or erased until CULVERT_ERASURES names"
                            + " a file that can be",
                    e);
        }
    }

    /** One round, for somebody who does not wait for the night. */
    @Transactional
    public Erased eraseDue() {
        List<UUID> due = listDue();
        due.forEach(this::erase);
        return new Erased(due.size(), due.size() == MOST_AT_ONCE);
    }

    private List<UUID> listDue() {
        LocalDate day = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        return query.list(DUE, Map.of("day", day, "most", MOST_AT_ONCE), row -> row.id("id"));
    }

    private void erase(UUID id) {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MICROS);
        query.list("select personal.erase(:id, :at) as done", Map.of("id", id, "at", at), row -> row.is("done"));
        list.append(new ErasureList.Entry(at, ErasureList.What.erased, id));
    }

    /** The latest first. */
    @Transactional
    public Page<ErasureView> listErasures(int limit, @Nullable UUID before) {
        List<ErasureView> rows = query.list(
                """
                select e.id, e.person_id, e.kind, e.requested_at, e.happened_at, e.rule_id from erasures e
                where cast(:before as uuid) is null
                   or (e.happened_at, e.id) < (select b.happened_at, b.id from erasures b where b.id = cast(:before as uuid))
                order by e.happened_at desc, e.id desc limit :most
                """,
                before == null ? nothingBefore(limit + 1) : Map.of("before", before.toString(), "most", limit + 1),
                row -> new ErasureView(
                        row.id("id"),
                        row.id("person_id"),
                        row.word("kind"),
                        row.instant("requested_at"),
                        row.when("happened_at"),
                        row.findId("rule_id")));
        return Page.of(rows, limit, row -> row, row -> row.id().toString());
    }

    private static Map<String, @Nullable Object> nothingBefore(int most) {
        Map<String, @Nullable Object> values = new java.util.HashMap<>();
        values.put("before", null);
        values.put("most", most);
        return values;
    }
}
