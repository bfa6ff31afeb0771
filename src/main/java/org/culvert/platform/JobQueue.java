package org.culvert.platform;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The queue of work that any node may take up, kept in the database. Work of a node that dies is begun anew on another;
 * work that fails is tried again a few times, each time later.
 */
@ApplicationScoped
public class JobQueue {
    private static final Logger LOG = Logger.getLogger(JobQueue.class);
    private static final int ATTEMPTS = 4;
    private static final Duration POLLING = Duration.ofSeconds(1);
    private static final Duration HEARTBEAT = Duration.ofSeconds(5);
    private static final int HEARTBEATS_MISSED_BY_THE_DEAD = 4;
    private static final Duration RETRY_AFTER = Duration.ofSeconds(5);
    private static final Duration PATIENCE_AT_SHUTDOWN = Duration.ofSeconds(2);

    private final DataSource database;
    private final Instance<Job> jobs;
    private final Instance<DailyJob> dailyJobs;
    private final Clock clock;
    private final MeterRegistry meters;
    private final TransactionSynchronizationRegistry transaction;
    private final Map<String, OneTimeTask<Void>> tasks = new HashMap<>();
    private @Nullable Scheduler scheduler;

    JobQueue(
            DataSource database,
            Instance<Job> jobs,
            Instance<DailyJob> dailyJobs,
            Clock clock,
            MeterRegistry meters,
            TransactionSynchronizationRegistry transaction) {
        this.database = database;
        this.jobs = jobs;
        this.dailyJobs = dailyJobs;
        this.clock = clock;
        this.meters = meters;
        this.transaction = transaction;
    }

    /** Puts work into the queue, as part of the caller's transaction where there is one; this node looks at it right after. */
    public void enqueue(String jobName, UUID id) {
        OneTimeTask<Void> task = tasks.get(jobName);
        if (task == null || scheduler == null) {
            throw new IllegalStateException("there is no job " + jobName);
        }
        scheduler.scheduleIfNotExists(task.instance(id.toString()), clock.instant());
        if (transaction.getTransactionKey() == null) {
            look();
        } else {
            transaction.registerInterposedSynchronization(new Synchronization() {
                @Override
                public void beforeCompletion() {}

                @Override
                public void afterCompletion(int status) {
                    look();
                }
            });
        }
    }

    private void look() {
        if (scheduler != null) {
            scheduler.triggerCheckForDueExecutions();
        }
    }

    void start(@Observes @Priority(2000) StartupEvent event) {
        jobs.forEach(job -> tasks.put(job.name(), task(job)));
        List<Task<?>> known = List.copyOf(tasks.values());
        List<RecurringTask<Void>> daily = dailyJobs.stream()
                .map(job ->
                        Tasks.recurring(job.name(), FixedDelay.ofHours(24)).execute((instance, context) -> job.run()))
                .toList();
        scheduler = Scheduler.create(database, known)
                .startTasks(daily)
                .threads(1)
                .pollingInterval(POLLING)
                .heartbeatInterval(HEARTBEAT)
                .missedHeartbeatsLimit(HEARTBEATS_MISSED_BY_THE_DEAD)
                .shutdownMaxWait(PATIENCE_AT_SHUTDOWN)
                .build();
        scheduler.start();
    }

    void stop(@Observes ShutdownEvent event) {
        if (scheduler != null) {
            scheduler.stop();
        }
    }

    private OneTimeTask<Void> task(Job job) {
        FailureHandler<Void> later = (complete, operations) -> {
            if (complete.getExecution().consecutiveFailures + 1 >= ATTEMPTS) {
                String id = complete.getExecution().taskInstance.getId();
                LOG.errorf(complete.getCause().orElse(null), "Job %s %s is given up", job.name(), id);
                meters.counter("culvert.jobs.given.up", "job", job.name()).increment();
                job.gaveUp(UUID.fromString(id), "It failed " + ATTEMPTS + " times; the server's log says why.");
                operations.stop();
            } else {
                int before = complete.getExecution().consecutiveFailures;
                operations.reschedule(complete, clock.instant().plus(RETRY_AFTER.multipliedBy(1L << before)));
            }
        };
        return Tasks.oneTime(job.name())
                .onFailure(later)
                .onDeadExecutionRevive()
                .execute((instance, context) -> job.run(UUID.fromString(instance.getId())));
    }
}
